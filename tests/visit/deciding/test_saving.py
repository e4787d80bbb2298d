"""A test of one's own choice waits for what the power cut would lose, and is not lost itself."""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.places import spoken
from troubleshoot.safety.declared import CONFIRMED, STEPS
from troubleshoot.safety.steps import DEAD_TEST, LOCKOUT, METER_PROOF
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Aimed, Answered, Event, Skipped, Started, StepDone, replay

UNIT = {"heat": "gas", "line-volts-class": "208-to-240-volt"}
START: Event = Started(unit=UNIT, complaint="no-heat")
CHOSEN: Event = Aimed("air-filters", chosen=True)


LIVE: tuple[Event, ...] = (
    Skipped("walk-round"),
    Aimed("line-volts-idle", chosen=True),
)
"""On the way to a reading behind an open live panel."""


def test_skipping_what_was_to_be_saved_leaves_the_chosen_test(shipped: Knowledge) -> None:
    decider = Decider(shipped)
    events: list[Event] = [START, *LIVE]
    way(decider, events, "line-volts-idle")
    events.append(CHOSEN)
    asked = way(decider, events, "board-code", keeps=False)
    assert LOCKOUT not in asked, "the lock waits for what goes with the power"
    events.append(Skipped("board-code"))
    assert replay(shipped, events).aim == ("air-filters", None)
    asked = way(decider, events, "air-filters")
    assert LOCKOUT in asked and not {"board-code", "operating-sequence"} & {*asked}


@pytest.mark.parametrize("volts", ["208-to-240-volt", "480-volt"])
@pytest.mark.parametrize("chosen", ["wiring-burn-marks", "blower-belt"])
def test_a_dead_look_opens_nothing_live_and_calls_nothing_to_save_a_history(
    chosen: str, volts: str, shipped: Knowledge
) -> None:
    """Regression: a look at a torn belt led to a call without one, then to a live panel."""
    supply = {"heat": "gas", "line-volts-class": volts, "blower-drive": "belt"}
    events: list[Event] = [
        Started(unit=supply, complaint="no-air"),
        Aimed(chosen, chosen=True),
    ]
    asked = way(Decider(shipped), events, chosen)
    assert not {"board-code", "operating-sequence", "panels-off-energised", "call"} & {*asked}
    proved = asked.index(METER_PROOF)
    assert "walk-round" in asked[:proved]
    dead = asked.index(DEAD_TEST)
    assert {LOCKOUT} <= {*asked[proved:dead]} <= {*STEPS}


def test_a_meter_proved_before_other_tests_is_proved_again_for_the_test_for_dead(
    shipped: Knowledge,
) -> None:
    decider = Decider(shipped)
    events: list[Event] = [START, Skipped("walk-round"), Aimed("line-volts-idle", chosen=True)]
    assert METER_PROOF in way(decider, events, "line-volts-idle")
    events.append(Aimed("air-filters", chosen=True))
    asked = way(decider, events, DEAD_TEST)
    assert asked[-2:] == [METER_PROOF, DEAD_TEST]


def way(decider: Decider, events: list[Event], last: str, *, keeps: bool = True) -> list[str]:
    """What is asked up to a step or test, each done and sound; the last itself if `keeps`."""
    asked: list[str] = []
    while last not in asked:
        test = (decision := decider.decide(replay(decider.knowledge, events))).test
        assert test is not None and len(asked) < 40, asked
        if not keeps and test.id == last:
            return asked
        if decision.step is not None:
            events.append(StepDone.of(decision.step, (CONFIRMED[test.id],)))
        else:
            events.append(Answered(test.id, spoken(decision.at), (str(test.healthy),)))
        asked.append(test.id)
    return asked
