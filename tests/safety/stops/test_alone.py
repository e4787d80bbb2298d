"""Whoever said that nobody comes is proposed no live work, and is left to choose it."""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Conclusions, Reasoner
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.safety.stops.standing import Forbidden
from troubleshoot.visit.events import Answered, Event, Started, StepDone, replay

HIGH, LOW = (
    {"heat": "gas", "line-volts-class": f"{volts}-volt"} for volts in ("480", "208-to-240")
)
LIVE, DEAD = "line-volts-idle", "contactor-contacts"
NOBODY, SOMEBODY = (StepDone("second-person", (said,)) for said in ("alone", "there"))


def concluded(shipped: Knowledge, *events: Event, unit: dict[str, str] = HIGH) -> Conclusions:
    start = Started(complaint="no-cooling", unit=unit)
    return conclude_visit(Reasoner(shipped), replay(shipped, [start, *events]))


@pytest.mark.parametrize(
    ("events", "unit", "test", "by"),
    [
        ((NOBODY,), HIGH, LIVE, "working-alone"),
        ((NOBODY,), HIGH, DEAD, None),
        ((NOBODY,), LOW, LIVE, None),
        ((NOBODY,), {"heat": "gas"}, LIVE, "working-alone"),
        ((), HIGH, LIVE, None),
        ((NOBODY, SOMEBODY), HIGH, LIVE, None),
    ],
    ids=["alone", "dead work", "low volts", "volts not read", "not asked", "somebody came"],
)
def test_live_work_at_480_volts_is_kept_from_whoever_is_alone(
    events: tuple[Event, ...], unit: dict[str, str], test: str, by: str | None, shipped: Knowledge
) -> None:
    forbidden = Forbidden(concluded(shipped, *events, unit=unit))
    hazard = forbidden.by(shipped.tests[test], None)
    assert (None if hazard is None else hazard.id) == by
    assert forbidden.even_if_chosen(shipped.tests[test], None) is None


def test_another_danger_that_forbids_it_is_told_before_that(shipped: Knowledge) -> None:
    crack = Answered("heat-exchanger-look", outcomes=("crack",))
    hazard = Forbidden(concluded(shipped, NOBODY, crack)).by(shipped.tests[LIVE], None)
    assert hazard is not None and hazard.id == "heat-exchanger-breach"
    low = Forbidden(concluded(shipped, NOBODY, crack)).by(shipped.tests[DEAD], None)
    assert low is not None and low.id == "heat-exchanger-breach"
