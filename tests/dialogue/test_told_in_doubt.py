"""What is told of the unit as a guess, or picked so, is asked about before it counts."""

from __future__ import annotations

import pytest

from tests.cli.lines import Lines, book_of, held
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hedged import is_in_doubt, without_doubt
from troubleshoot.dialogue.picking import pick
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Talk
from troubleshoot.dialogue.unit_facts import ask_fact
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import Started

NAMES = ("Contactor coil open", "Run capacitor weak", "Contacts welded closed")
GUESSES = (
    ("heat", "maybe gas", "gas"),
    ("heat", "i think gas", "gas"),
    ("heat", "probably electric", "electric"),
    ("heat", "electric, not sure", "electric"),
    ("heat", "electric?", "electric"),
    ("metering", "txv i think", "txv"),
    ("fuel", "propane maybe", "propane"),
    ("circuits", "2 i think", "two-or-more"),
)


def told(shipped: Knowledge, fact: str, *typed: str) -> tuple[VisitBook, list[str]]:
    book, terminal = book_of(shipped, [Started(complaint="no-cooling")]), Lines(*typed)

    def part(voice: Voice) -> Talk[bool]:
        return (yield from ask_fact(book, voice, shipped.facts[fact]))

    held(shipped, terminal, part)
    return book, terminal.asked


def picked(shipped: Knowledge, *typed: str) -> tuple[int | None, int]:
    """What was picked, and how often it was asked."""
    book, terminal = book_of(shipped, [Started(complaint="no-cooling")]), Lines(*typed)
    found: list[int | None] = []

    def part(voice: Voice) -> Talk[None]:
        found.append((yield from pick(book, voice, "Which?", NAMES)))

    held(shipped, terminal, part)
    return found[0], len(terminal.asked)


@pytest.mark.parametrize(("fact", "said", "value"), GUESSES)
def test_a_guess_at_a_fact_is_taken_only_once_it_is_said_to_be_so(
    fact: str, said: str, value: str, shipped: Knowledge
) -> None:
    """Regression: all but two of them were taken without a word."""
    book, asked = told(shipped, fact, said, "y")
    assert book.state.unit.facts[fact] == value and len(asked) == 2
    book, asked = told(shipped, fact, said, "n", "")
    assert fact not in book.state.unit.facts and len(asked) == 3


@pytest.mark.parametrize("said", ["capacitor i think", "the capacitor?", "capacitor, not sure"])
def test_a_guess_at_a_pick_is_not_taken(said: str, shipped: Knowledge) -> None:
    """Regression: the first was taken for the capacitor."""
    assert picked(shipped, said, "2") == (1, 2)
    assert picked(shipped, said, "") == (None, 2)


def test_what_is_said_without_a_doubt_is_taken(shipped: Knowledge) -> None:
    assert picked(shipped, "capacitor") == (1, 1)
    book, asked = told(shipped, "metering", "txv")
    assert book.state.unit.facts["metering"] == "txv" and len(asked) == 1


def test_what_says_that_it_is_a_guess_is_left_out() -> None:
    assert without_doubt("electric, but i'm not sure") == "electric"
    assert without_doubt("the cap?") == "the cap"
    assert is_in_doubt("perhaps gas") and not is_in_doubt("gas, surely")
