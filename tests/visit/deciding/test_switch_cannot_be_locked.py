"""A unit whose switch cannot be opened and locked is not opened live: nothing kills it in a hurry.

By a mechanic of 35 years: after "cannot lock" the way led to the panel with the power on.
"""

from __future__ import annotations

from typing import Final

from tests.practice.playing import reasoner_of
from tests.visit.deciding.test_stops import start
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.needs import OPEN_LIVE, needs_of
from troubleshoot.safety.steps import LOCKOUT, PANELS_OFF_ENERGISED
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Event, Skipped, StepDone, replay

FROZEN: Final = StepDone(LOCKOUT, ("cannot-lock",))
LOCKED: Final = StepDone(LOCKOUT, ("locked",))
MOST: Final = 60


def shown_after(knowledge: Knowledge, *told: Event) -> list[str]:
    """The steps and tests that follow, each step confirmed and each test skipped."""
    events = [*start("no-cooling"), *told]
    decider, shown = Decider(knowledge, reasoner_of(knowledge)), []
    while len(shown) < MOST:
        state = replay(knowledge, events)
        decision = decider.decide(state)
        if decision.test is None:
            break
        shown.append(decision.test.id)
        if decision.step is not None:
            events.append(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
        else:
            is_live = needs_of(decision.test, None, state.at_work).energy in OPEN_LIVE
            shown.append("live" if is_live else "shut")
            events.append(Skipped.over(decision.test.id, decision.at))
    return shown


def test_what_cannot_be_locked_is_not_opened_live(shipped: Knowledge) -> None:
    shown = shown_after(shipped, FROZEN)
    assert "shut" in shown and "live" not in shown and PANELS_OFF_ENERGISED not in shown


def test_once_it_takes_a_lock_it_may_be_opened(shipped: Knowledge) -> None:
    assert "live" in shown_after(shipped, FROZEN, LOCKED)
