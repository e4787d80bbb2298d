"""At an ending what has gone is heard or asked about, and comes before a repair.

29 CFR 1910.147(f)(3) and NFPA 70E 120.5, from memory: a repair stands on the lock as a test does.
"""

from __future__ import annotations

import pytest

from tests.dialogue.at_work import MOST, AtWork
from troubleshoot.dialogue.prompts import AtStop, Choose, DoStep, Settled
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import StateGone

TOLD = ("hung my lock on rtu 6 by mistake", "power came back while i was readin this")
DOUBTED = ("went to lunch and back", "took my lock along for a minute", "we have 208 again")
NOT_TOLD = ("lock is still on", "the other unit is running fine", "looks like the fan is bad")


def ended(knowledge: Knowledge) -> AtWork:
    """A visit at its shortlist, behind the lock, all that was asked having been skipped."""
    visit = AtWork(knowledge, "in")
    for _ in range(MOST):
        if isinstance(visit.prompt, Settled):
            return visit
        visit.types("s")
    raise AssertionError(visit.prompt)


@pytest.mark.parametrize("said", TOLD)
def test_it_is_heard_and_the_lock_is_next(said: str, shipped: Knowledge) -> None:
    visit = ended(shipped)
    visit.types(said)
    assert any(isinstance(event, StateGone) for event in visit.events)
    assert visit.book.state.work.power == "unsure"
    assert isinstance(visit.prompt, DoStep) and visit.at in ("stop-by-controls", "lockout")
    while visit.at != "lockout":
        visit.types("stopped")
    visit.types("locked")
    assert visit.book.state.work.power == "locked-out" and isinstance(visit.prompt, Settled)


def test_what_fails_each_time_leads_back_to_the_ending(shipped: Knowledge) -> None:
    visit = ended(shipped)
    visit.types(TOLD[1])
    for _ in range(MOST):
        if isinstance(visit.prompt, Settled):
            break
        visit.types({"stop-by-controls": "cannot stop"}.get(visit.at, "still live"))
    assert isinstance(visit.prompt, Settled | AtStop)


@pytest.mark.parametrize("said", DOUBTED)
def test_what_nobody_can_tell_is_asked_about(said: str, shipped: Knowledge) -> None:
    """Regression: only a test and a step asked; at an ending the words were lost."""
    for answer, voids in (("y", False), ("n", True)):
        visit = ended(shipped)
        visit.types(said)
        assert isinstance(visit.prompt, Choose) and "still stand" in visit.prompt.question
        visit.types(answer)
        assert any(isinstance(event, StateGone) for event in visit.events) is voids


def test_what_still_stands_is_not_asked_about(shipped: Knowledge) -> None:
    visit = ended(shipped)
    for said in NOT_TOLD:
        visit.types(said)
        is_asked = isinstance(visit.prompt, Choose) and "still stand" in visit.prompt.question
        assert not is_asked, said
