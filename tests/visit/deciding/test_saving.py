"""A test of one's own choice waits for what the power cut would lose, and is not lost itself."""

from __future__ import annotations

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import LOCKOUT
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Aimed, Event, Skipped, Started, StepDone, replay

START: Event = Started(unit={"heat": "gas"}, complaint="no-heat")
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
