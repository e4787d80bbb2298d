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


def test_skipping_what_was_to_be_saved_leaves_the_chosen_test(shipped: Knowledge) -> None:
    decider = Decider(shipped)
    events: list[Event] = [START, CHOSEN, Skipped("walk-round")]
    saved = []
    for _ in range(40):
        state = replay(shipped, events)
        assert state.aim == ("air-filters", None)
        decision = decider.decide(state)
        assert decision.test is not None
        if decision.kind == "ask" and not decision.saving:
            break
        if decision.kind == "ask":
            saved.append(decision.test.id)
            assert "wipes the code history" in decision.reason
            events.append(Skipped.over(decision.test.id, decision.at))
        elif decision.step is not None:
            locked = decision.step.id == LOCKOUT
            assert not locked or len(saved) == 2, "the lock waits for both"
            events.append(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
    assert decision.test.id == "air-filters"
    assert sorted(saved) == ["board-code", "operating-sequence"]


@pytest.mark.parametrize(
    ("volts", "saved"),
    [
        ("208-to-240-volt", {"board-code", "operating-sequence"}),
        ("480-volt", {"operating-sequence"}),
    ],
)
def test_from_the_proof_of_the_meter_to_the_test_for_dead_there_is_nothing_but_steps(
    volts: str, saved: set[str], shipped: Knowledge
) -> None:
    """Regression: the board was read between the two, and somebody was fetched for it."""
    decider = Decider(shipped)
    supply = {"heat": "gas", "line-volts-class": volts}
    events: list[Event] = [
        Started(unit=supply, complaint="no-cooling"),
        Aimed("wiring-burn-marks", chosen=True),
    ]
    asked = way(decider, events, DEAD_TEST)
    proved = asked.index(METER_PROOF)
    assert {"walk-round", *saved} <= set(asked[:proved])
    assert ("board-code" in asked) is ("board-code" in saved)
    assert {LOCKOUT, DEAD_TEST} <= {*asked[proved:]} <= {*STEPS}


def test_a_meter_proved_before_other_tests_is_proved_again_for_the_test_for_dead(
    shipped: Knowledge,
) -> None:
    decider = Decider(shipped)
    events: list[Event] = [START, Skipped("walk-round"), Aimed("line-volts-idle", chosen=True)]
    assert METER_PROOF in way(decider, events, "line-volts-idle")
    events.append(Aimed("air-filters", chosen=True))
    asked = way(decider, events, DEAD_TEST)
    assert asked[-2:] == [METER_PROOF, DEAD_TEST]


def way(decider: Decider, events: list[Event], last: str) -> list[str]:
    """What is asked up to a step or test, each done and sound."""
    asked: list[str] = []
    while last not in asked:
        test = (decision := decider.decide(replay(decider.knowledge, events))).test
        assert test is not None and len(asked) < 40, asked
        if decision.step is not None:
            events.append(StepDone.of(decision.step, (CONFIRMED[test.id],)))
        else:
            events.append(Answered(test.id, spoken(decision.at), (str(test.healthy),)))
        asked.append(test.id)
    return asked
