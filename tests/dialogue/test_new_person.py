"""Somebody new at the keyboard is asked who that is, and rests on no lock of another's.

29 CFR 1910.147(f)(4), change of shift; from memory.
"""

from __future__ import annotations

import pytest

from tests.dialogue.at_work import AtWork
from troubleshoot.dialogue.intake import WHO_IS_ASKING
from troubleshoot.dialogue.new_person import SOMEBODY_ELSE
from troubleshoot.dialogue.prompts import AtStop, Choose
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.hearing.new_people import tells_of_a_new_person

NEW = (
    "new shift, I am Lee",
    "I am a different tech",
    "Ana takes over from me now",
    "this is Ruben, I came up for Joe",
    "im the night guy",
    "my name is Kim, Bob went home",
    "taking over for Dan",
    "handed it over to me at noon",
)
NOT_NEW = (
    "new shift starts at three tomorrow",
    "a new crew is on the roof",
    "I came up for the gauges",
    "does somebody take over later?",
    "the economizer takes over when it is cool",
    "this is a different motor",
    "I am good",
    "next shift comes at four",
    "is this a shift change?",
)


@pytest.mark.parametrize("said", NEW)
@pytest.mark.parametrize("place", ["in", "verified-dead"])
def test_who_that_is_is_asked_and_the_lock_counts_no_more(
    said: str, place: str, shipped: Knowledge
) -> None:
    """Regression: new shift was "Put right before this visit, as told: shift"."""
    visit = AtWork(shipped, place)
    visit.types(said)
    assert visit.prompt == SOMEBODY_ELSE.prompt
    assert visit.book.state.notes == (f"told: {said}",)
    assert any("hang your own lock" in each for each in visit.types("y"))
    assert visit.prompt == WHO_IS_ASKING
    visit.types("")
    assert visit.at and not visit.dialogue.asks_aside, "it is done with, and asked of no further"
    state = visit.book.state
    assert [*state.profiles] == ["technician"]
    assert state.work.power != "locked-out" and state.work.dead == "not-shown"


@pytest.mark.parametrize("said", NOT_NEW)
def test_nobody_else_is_asked_about(said: str) -> None:
    assert not tells_of_a_new_person(said)


def test_a_no_goes_on_with_what_else_was_told(shipped: Knowledge) -> None:
    visit = AtWork(shipped, "in")
    visit.types("new shift, I am Lee")
    visit.types("n")
    assert isinstance(visit.prompt, Choose) and "still stand" in visit.prompt.question
    visit.types("y")
    assert visit.book.state.work == visit.work


@pytest.mark.parametrize("place", ["in", "verified-dead"])
def test_a_danger_told_with_it_comes_first(place: str, shipped: Knowledge) -> None:
    visit = AtWork(shipped, place)
    visit.types("new shift, I am Lee, and the panel is on fire")
    assert isinstance(visit.prompt, AtStop)


def test_whoever_tells_of_nobody_new_is_not_asked_who_that_is(shipped: Knowledge) -> None:
    assert "somebody else have this unit" in SOMEBODY_ELSE.question
    visit = AtWork(shipped, "in")
    visit.types("neon on the isolator is lit")
    assert isinstance(visit.prompt, Choose) and "still stand" in visit.prompt.question
