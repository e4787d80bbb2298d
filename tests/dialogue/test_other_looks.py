"""What came of another look than is asked for is taken as that look's, or asked, with an echo.

How people put it is common practice, no source.
"""

from __future__ import annotations

import pytest

from tests.dialogue.at_work import AtWork
from tests.dialogue.test_other_words import found
from troubleshoot.dialogue.prompts import Choose
from troubleshoot.knowledge.model import Knowledge

ASKED = "capacitance-out-of-circuit"


@pytest.mark.parametrize(
    ("said", "name", "outcome", "echo"),
    [
        ("filters are plugged solid", "air-filters", "loaded", "Filters: loaded"),
        ("contacts are pitted", "contactor-contacts", "pitted", "Look at the contacts: pitted"),
        ("blower wheel is caked with dirt", "blower-wheel", "dirty", "Blower wheel: dirty"),
        ("evap coil is iced up", "evaporator-coil-face", "iced", "underside: iced"),
        ("drain pan is full of water", "drain-pan", "standing-water", "slope: standing water"),
    ],
)
def test_one_that_can_be_seen_as_the_work_stands_is_taken(
    said: str, name: str, outcome: str, echo: str, shipped: Knowledge
) -> None:
    """Regression: it was asked whether all still stands, and what was seen was dropped."""
    visit = AtWork(shipped, "in")
    told = visit.types(said)
    assert found(visit) == [(name, (outcome,))]
    assert any(line.startswith("Taken: ") and f"{echo}." in line for line in told)
    assert visit.at == ASKED


def test_what_needs_another_state_of_work_is_a_note(shipped: Knowledge) -> None:
    visit = AtWork(shipped, "in")
    told = visit.types("flame rod is cracked")
    assert not found(visit) and visit.at == ASKED
    assert any(
        line.startswith("Not taken: Flame rod and its lead: cracked: first ") for line in told
    )
    assert any("flame rod is cracked" in note for note in visit.book.state.notes)


def test_what_happened_is_asked_of_first(shipped: Knowledge) -> None:
    visit = AtWork(shipped, "in")
    visit.types("mice chewed the control wiring")
    assert not found(visit) and isinstance(visit.prompt, Choose)
    assert "all still stand" in visit.prompt.question
    visit.types("y")
    assert found(visit) == [("control-wiring-look", ("gnawed-or-cut",))]


def test_what_is_sound_is_asked_about(shipped: Knowledge) -> None:
    visit = AtWork(shipped, "in")
    visit.types("evap coil is clean")
    assert not found(visit) and isinstance(visit.prompt, Choose)
    assert "underside: clean" in visit.prompt.question
    visit.types("y")
    assert found(visit) == [("evaporator-coil-face", ("clean",))]


@pytest.mark.parametrize(
    "said", ["filters are not plugged", "loaded", "is the blower wheel dirty?", "lock is loose"]
)
def test_a_denial_a_bare_word_and_a_question_are_of_no_look(said: str, shipped: Knowledge) -> None:
    visit = AtWork(shipped, "in")
    visit.types(said)
    assert not found(visit)
