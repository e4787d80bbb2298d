"""Dangers told at a question of the nameplate in the words that people on a roof had for them.

On the first run of `met_on_roofs.txt` 12 of 62 dangers stopped, 8 of them as another one, 23 were
asked about and 27 missed; of the 56 harmless ones of `near_met_on_roofs.txt` 8 stopped and 3 were
asked about.
"""

from __future__ import annotations

from contextlib import suppress

import pytest

from tests.cli.lines import Lines, book_of, held
from tests.safety.hearing.test_spoken_dangers import lines
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.in_danger import IN_DANGER
from troubleshoot.dialogue.reporting_danger import report_danger
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import DangerCalled, Leave, Talk
from troubleshoot.dialogue.unit_facts import ask_fact
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import Started

START = Started(complaint="no-heat", profiles=("technician",))
MOST_ASKED_ABOUT = 5
"""Of the harmless ones: what fell or was hurt last week may be there, what collapsed a person."""


def told_at_a_fact(shipped: Knowledge, typed: str, fact: str = "metering") -> tuple[VisitBook, str]:
    """The visit after words at a question of the nameplate, and what was said and asked."""
    book, terminal = book_of(shipped, [START]), Lines(typed)

    def part(voice: Voice) -> Talk[None]:
        try:
            yield from ask_fact(book, voice, shipped.facts[fact])
        except DangerCalled as called:
            yield from report_danger(book, voice, "", str(called))

    with suppress(Leave):
        held(shipped, terminal, part)
    return book, "\n".join((*terminal.said, *terminal.asked))


def stops(book: VisitBook) -> list[str]:
    """The dangers that stand, the one that is told first in front."""
    return [stop.hazard for stop in reversed(book.state.stops)]


@pytest.mark.parametrize("line", lines("met_on_roofs.txt"))
def test_a_danger_met_on_a_roof_stops_as_what_it_is(line: str, shipped: Knowledge) -> None:
    hazards, typed = line.split(": ", 1)
    book, _ = told_at_a_fact(shipped, typed)
    assert {*hazards.split("|")} & {*stops(book)[:1]}, stops(book)


@pytest.mark.parametrize("typed", lines("near_met_on_roofs.txt"))
def test_what_is_near_to_it_does_not_stop(typed: str, shipped: Knowledge) -> None:
    book, _ = told_at_a_fact(shipped, typed)
    assert stops(book) == []


def test_hardly_any_of_it_is_asked_about(shipped: Knowledge) -> None:
    said = {typed: told_at_a_fact(shipped, typed)[1] for typed in lines("near_met_on_roofs.txt")}
    asked = [typed for typed, text in said.items() if IN_DANGER.question in text]
    assert len(asked) <= MOST_ASKED_ABOUT, asked


@pytest.mark.parametrize("typed", ["hissing", "i hear a hiss", "hissing at the pipe"])
def test_a_hiss_of_which_nobody_knows_may_be_either_gas(typed: str, shipped: Knowledge) -> None:
    book, _ = told_at_a_fact(shipped, typed)
    assert stops(book) == ["gas-odour", "refrigerant-escaping"]


@pytest.mark.parametrize(
    ("typed", "facts"),
    [
        (
            "gas, two fans, belt",
            {"heat": "gas", "condenser-fans": "several", "blower-drive": "belt"},
        ),
        ("208/3/60, gas, R-454B, TXV, one circuit, scroll, two fans, belt", {"heat": "gas"}),
        ("gas, belt, whatever", {}),
        ("spark, gas, whatever", {}),
        ("gas, dunno the rest", {}),
    ],
)
def test_gas_in_a_list_of_facts_is_a_fact(
    typed: str, facts: dict[str, str], shipped: Knowledge
) -> None:
    """Regression: fans, belt was heard as a fan belt, and then gas as a leak of it."""
    book, _ = told_at_a_fact(shipped, typed)
    assert stops(book) == [] and facts.items() <= book.state.unit.facts.items()


@pytest.mark.parametrize(
    "typed",
    [
        "gas, leaking", "gas, everywhere", "gas, help", "gas, belt, everybody out",
        "gas, two fans, i smell it", "gas, fire, belt", "gas, belt, hissing", "gas, belt, evacuate",
        "propane, two fans, its leaking", "gas, one circuit, strong smell",
    ],
)  # fmt: skip
def test_a_danger_told_in_such_a_list_is_one(typed: str, shipped: Knowledge) -> None:
    book, _ = told_at_a_fact(shipped, typed)
    assert stops(book)
