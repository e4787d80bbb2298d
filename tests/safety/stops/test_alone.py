"""Whoever said that nobody comes is proposed no live work, and is left to choose it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.building import base, case, test_of
from tests.safety.stops.little_rules import CRACK, ROOM, hazard, said
from troubleshoot.knowledge.model import Finding, Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.safety.steps import SECOND_PERSON
from troubleshoot.safety.stops.alone import alone, nobody_comes
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


ALONE = hazard(
    "alone", "this-step", Finding(SECOND_PERSON, ("alone",)), Finding("room", ("odd",))
)  # fmt: skip
HELP = test_of(SECOND_PERSON, "there", "alone", healthy="there", kind="step")
LITTLE = base([ROOM, HELP], hazards=[CRACK, ALONE])
THERE, NONE, ODD, BAD = (
    said(SECOND_PERSON, "there"), said(SECOND_PERSON, "alone"), said("room", "odd"),
    said("room", "bad"),
)  # fmt: skip


def after(*answers: Answer) -> Conclusions:
    return Reasoner(LITTLE).conclude(case(LITTLE, *answers))


@pytest.mark.parametrize(
    ("answers", "nobody"),
    [((), False), ((THERE,), False), ((NONE,), True), ((NONE, THERE), False),
     ((THERE, NONE), True), ((BAD,), False), ((NONE, BAD), True), ((THERE, BAD), False)],
)  # fmt: skip
def test_alone_is_who_last_said_that_nobody_comes_and_no_one_else(
    answers: tuple[Answer, ...], nobody: bool
) -> None:
    """Who takes a person on the way for one who is there does live work without a rescuer."""
    found = after(*answers)
    assert nobody_comes(found) == ((SECOND_PERSON,) if nobody else ())
    told = alone(found)
    assert (None if told is None else told.id) == ("alone" if nobody else None)


def test_what_was_said_last_counts_though_both_stand_on_record() -> None:
    (there,), (none,) = after(THERE).readings, after(NONE).readings
    both = after()
    assert nobody_comes(replace(both, readings=(there, none))) == (SECOND_PERSON,)
    assert nobody_comes(replace(both, readings=(none, there))) == ()


def test_who_is_not_alone_is_kept_from_nothing_by_another_trigger_of_that_danger() -> None:
    found = after(THERE, ODD)
    assert any(fired.hazard.id == "alone" and fired.found for fired in found.hazards)
    assert alone(found) is None


def test_only_a_danger_that_stands_and_speaks_of_it_keeps_a_person_alone_off() -> None:
    """Told of the crack instead, they would wait for a gas fitter and not for a second person."""
    found = after(NONE, BAD)
    assert {fired.hazard.id for fired in found.hazards} == {"alone", "crack"}
    for hazards in (found.hazards, found.hazards[::-1]):
        told = alone(replace(found, hazards=hazards))
        assert told is not None and told.id == "alone"
    likely = tuple(replace(fired, found=False) for fired in found.hazards)
    assert alone(replace(found, hazards=likely)) is None
    assert alone(replace(found, hazards=())) is None
