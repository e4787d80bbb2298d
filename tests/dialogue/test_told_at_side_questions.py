"""What is told at a question in between, with hands in, is asked about as it is at a test.

A nameplate, a list to choose from, a yes or no: what answers none of them was only refused there.
29 CFR 1910.333(b) and NFPA 70E 120.5, from memory: work stands on the lock and the test as shown;
who goes on after a break makes sure of both. The sentences are common practice, no source.
"""

from __future__ import annotations

import pytest

from tests.dialogue.at_work import AtWork
from troubleshoot.dialogue.prompts import AskPlate, Choose
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import StateGone

ASIDE = {
    "plate": "7.1",
    "list": "do compressor",
    "repair": "looks like somebody replaced the transformer before",
}
"""What is typed at the test with hands in, so that something else is asked before it."""
GONE = (
    "my tag blew away", "I put the wires back on the motor", "dropped the meter, screen is cracked",
    "my partner went down to the truck", "I swapped to my buddys meter",
    "leads are still off the capacitor", "cock got opened by the plumber",
    "fire watch left for lunch",
    "swapped meters", "changed meters", "meters swapped", "switched meters", "new meter",
    # of the same kind, written before it was mended
    "somebody moved my lock", "the clips slid off", "helper is back in the van",
)  # fmt: skip
ANSWERS = ("?", "maybe", "blah", "what was that again", "37,5 uf", "", "lock is still on")
"""Answers, mistyped ones and talk: asked about nowhere."""


def asked_aside(shipped: Knowledge, place: str) -> AtWork:
    """A visit with hands in at a question in between."""
    visit = AtWork(shipped, "in")
    visit.types(ASIDE[place])
    assert isinstance(visit.prompt, AskPlate | Choose), visit.prompt
    return visit


def asks_if_it_stands(visit: AtWork) -> bool:
    prompt = visit.prompt
    return isinstance(prompt, Choose) and (
        "still stand" in prompt.question or "in danger" in prompt.question
    )


def is_void(visit: AtWork) -> bool:
    return any(isinstance(event, StateGone) for event in visit.events)


@pytest.mark.parametrize("place", ["list", "repair"])
@pytest.mark.parametrize("said", GONE)
def test_what_may_tell_that_a_state_has_gone_is_asked_about(
    place: str, said: str, shipped: Knowledge
) -> None:
    """Regression: each was refused as no number of the list, and nothing was asked."""
    visit = asked_aside(shipped, place)
    visit.types(said)
    assert is_void(visit) or asks_if_it_stands(visit), visit.prompt


@pytest.mark.parametrize("place", ["list", "repair"])
def test_what_answers_or_tells_nothing_is_not_asked_about(place: str, shipped: Knowledge) -> None:
    for typed in ANSWERS:
        visit = asked_aside(shipped, place)
        visit.types(typed)
        assert not asks_if_it_stands(visit), typed


def at_a_plate(shipped: Knowledge) -> AtWork:
    """A visit with hands in at a value of the nameplate, behind another test."""
    visit = AtWork(shipped, "verified-dead")
    visit.goes_on_to("wiring-burn-marks")
    visit.types("clean")
    visit.types("do capacitance-out-of-circuit at capacitor condenser fan 1")
    visit.goes_on_to("")
    assert isinstance(visit.prompt, AskPlate)
    return visit


def test_at_a_nameplate_it_is_asked_about_and_a_number_is_not(shipped: Knowledge) -> None:
    visit = at_a_plate(shipped)
    for said in ("it says 45 over 5", "cant read it", "label is faded", "12 V"):
        visit.types(said)
        assert isinstance(visit.prompt, AskPlate), said
    for said in ("I put the wires back on the motor", "gas is back on"):
        visit.types(said)
        assert asks_if_it_stands(visit), said
        visit.types("y")
        assert isinstance(visit.prompt, AskPlate), said
    visit.types("my tag blew away")
    visit.types("n")
    assert is_void(visit) and visit.book.state.work.power != "locked-out"


def test_a_no_voids_all_and_leads_back_to_the_first_step(shipped: Knowledge) -> None:
    visit = asked_aside(shipped, "repair")
    visit.types("fire watch left for lunch")
    visit.types("n")
    work = visit.book.state.work
    assert work.power != "locked-out" and work.dead == "not-shown" and not work.discharged


def test_a_yes_leaves_all_and_puts_the_question_again(shipped: Knowledge) -> None:
    visit = asked_aside(shipped, "repair")
    before = visit.prompt
    for typed in ("fire watch left for lunch", "y"):
        visit.types(typed)
    assert visit.prompt == before and visit.book.state.work == visit.work
    assert "fire watch left for lunch" in " | ".join(visit.book.state.notes)
    visit.types("fire watch left for lunch")
    assert visit.prompt == before  # said to be nothing: not asked again
