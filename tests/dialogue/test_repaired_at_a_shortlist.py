"""At a shortlist `repaired` takes the only entry, or asks which of several is meant."""

from __future__ import annotations

import pytest

from tests.cli.lines import Lines, book_of, held
from troubleshoot.cli.screens.findings import show_ending
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.commands import NAME_IT, Commands
from troubleshoot.dialogue.prompts import Settled
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Talk
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.safety.before_repair import caution_before, caution_before_any
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Answered, Event, Started
from troubleshoot.visit.telling.account import (
    cause_to_repair,
    causes_to_repair,
    ending_of,
    listed_causes,
)
from troubleshoot.visit.telling.wording import who_repairs

SHORTLIST = Decision("ending", ending="shortlist")
ALONE = (
    Started(complaint="weak-airflow"),
    Answered("ducts-and-dampers", outcomes=("disconnected",)),
)
UNLIKELY = (
    Started(complaint="no-cooling"),
    Answered("thermostat-batteries", outcomes=("low",)),
)
SEVERAL = (Started(complaint="no-cooling"), Answered("contactor-contacts", outcomes=("clean",)))


def found(book: VisitBook) -> Conclusions:
    return conclude_visit(Decider(book.knowledge).reasoner, book.state)


def say_repaired(
    shipped: Knowledge, events: tuple[Event, ...], *typed: str
) -> tuple[VisitBook, str]:
    book, terminal = book_of(shipped, events), Lines(*typed)

    def part(voice: Voice) -> Talk[bool]:
        commands = Commands(book, voice, Decider(shipped))
        return (yield from commands.serve("repaired", SHORTLIST, found(book)))

    assert held(shipped, terminal, part)
    return book, terminal.text


def test_the_only_entry_is_taken(shipped: Knowledge) -> None:
    """Regression: the screen said to type repaired, and repaired was not understood."""
    (only,) = listed_causes(found(book_of(shipped, ALONE)))
    book, said = say_repaired(shipped, ALONE)
    assert book.state.repairs[-1].fault == only.fault.id
    assert f"Repaired: {only.fault.name}" in said


def test_of_several_it_asks_which(shipped: Knowledge) -> None:
    listed = listed_causes(found(book_of(shipped, SEVERAL)))
    assert len(listed) > 1
    book, _ = say_repaired(shipped, SEVERAL, "2")
    assert book.state.repairs[-1].fault == listed[1].fault.id
    book, _ = say_repaired(shipped, SEVERAL, "none")
    assert not book.state.repairs


def test_where_none_is_listed_it_says_how_to_name_one(
    shipped: Knowledge, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("troubleshoot.visit.telling.account.WORTH_LISTING", 1.1)
    book, said = say_repaired(shipped, SEVERAL)
    assert NAME_IT in said and not book.state.repairs


def test_the_only_entry_is_shown_with_its_repair(shipped: Knowledge) -> None:
    conclusions = found(book_of(shipped, ALONE))
    assert ending_of(conclusions) == "shortlist"
    terminal = Lines()
    show_ending(terminal, Settled(SHORTLIST, conclusions))
    for head in ("Repair: ", "Who: ", "Why it failed: ", "Proof: "):
        assert head in terminal.text
    unlikely = found(book_of(shipped, UNLIKELY))
    assert len(listed_causes(unlikely)) == 1 and cause_to_repair(unlikely) is None
    several = Lines()
    show_ending(several, Settled(SHORTLIST, found(book_of(shipped, SEVERAL))))
    assert "Repair: " not in several.text


def test_of_several_it_tells_who_may_repair_and_what_comes_first(shipped: Knowledge) -> None:
    """Regression: it said to type repaired, and nothing of a lock or of who may do it.

    What stands first is what each of them wants by itself (29 CFR 1910.147, NFPA 70E 120.5).
    """
    book, terminal = book_of(shipped, SEVERAL), Lines()
    conclusions = found(book)
    leading = causes_to_repair(conclusions)
    assert 1 < len(leading) <= len(listed_causes(conclusions))
    before = caution_before_any((cause.fault, None) for cause in leading)
    show_ending(terminal, Settled(SHORTLIST, conclusions, before))
    assert "locked and tagged" in before and before in terminal.text
    for number, cause in enumerate(leading, start=1):
        assert f"Who repairs {number}: {who_repairs(cause.fault)}" in terminal.text
        own = caution_before(cause.fault).removeprefix("WARNING - ").rstrip(".")
        assert all(part in before for each in own.split("; ") for part in each.split(", "))
