"""Whoever says repaired cap, where a capacitor leads, has repaired that one: no list is shown."""

from __future__ import annotations

import pytest

from tests.cli.lines import Lines, book_of, held
from tests.dialogue.test_repaired_at_a_shortlist import SHORTLIST, found
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.commands import Commands
from troubleshoot.dialogue.repairs_told import ask_repairs_told
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Talk
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Answered, Event, Started
from troubleshoot.visit.hearing.causes_by_words import LEADING, best_fitting

FAN_CAPACITOR = "condenser-fan-capacitor-weak"
LED = (
    Started(complaint="weak-cooling"),
    Answered("condenser-fan-turning", outcomes=("stopped",)),
    Answered("condenser-fan-hand-spin", outcomes=("free",)),
    Answered("capacitor-appearance", outcomes=("bulged",)),
)
OPEN = LED[:1]


def say(
    shipped: Knowledge, events: tuple[Event, ...], *typed: str, told: str = ""
) -> tuple[VisitBook, list[str]]:
    """The book, and what was asked, once a repair is said as a command, or `told` in a sentence."""
    book = book_of(shipped, events)
    terminal = Lines(*typed[1:])

    def part(voice: Voice) -> Talk[bool]:
        if told:
            return (yield from ask_repairs_told(book, voice, told, found(book)))
        return (
            yield from Commands(book, voice, Decider(shipped)).serve(
                typed[0], SHORTLIST, found(book)
            )
        )

    held(shipped, terminal, part)
    return book, terminal.asked


def test_what_fits_the_leading_cause_is_that_one(shipped: Knowledge) -> None:
    """Regression: with the fan's capacitor named, eight causes were asked about."""
    first = found(book_of(shipped, LED)).causes[0]
    assert first.fault.id == FAN_CAPACITOR and first.probability > LEADING
    book, asked = say(shipped, LED, "repaired cap")
    assert [r.fault for r in book.state.repairs] == [FAN_CAPACITOR] and not asked
    book, asked = say(shipped, LED, told="new cap is in")
    assert [r.fault for r in book.state.repairs] == [FAN_CAPACITOR] and not asked


@pytest.mark.parametrize(
    ("events", "said"),
    [(LED, "repaired blower cap"), (LED, "repaired coil"), (OPEN, "repaired cap")],
)
def test_what_fits_another_or_where_none_leads_is_asked(
    shipped: Knowledge, events: tuple[Event, ...], said: str
) -> None:
    book, asked = say(shipped, events, said, "none")
    assert FAN_CAPACITOR not in [repair.fault for repair in book.state.repairs]
    assert asked or book.state.repairs[0].fault.startswith("blower")


def test_a_repair_of_another_day_is_asked_about(shipped: Knowledge) -> None:
    book, asked = say(shipped, LED, "", "none", told="replaced the cap last year")
    assert asked and not book.state.repairs


def test_two_parts_of_one_repair_are_one(shipped: Knowledge) -> None:
    """Regression: the size of a new part, and the fuse beside its cable, were asked about anew."""
    for told in ("new cap and capacitor strap", "replaced the cap, new 7.5 mfd 440 volt"):
        book, asked = say(shipped, LED, told=told)
        assert [r.fault for r in book.state.repairs] == [FAN_CAPACITOR] and not asked


def test_what_the_words_fit_is_listed_first_then_the_likeliest(shipped: Knowledge) -> None:
    """Regression: coil cleaned listed the leading coil eighth, behind a flame rod."""
    causes = [("condenser-fan-stopped", 0.3), ("evaporator-coil-dirty", 0.25), ("low-charge", 0.2)]
    listed = best_fitting(shipped, causes, "coil cleaned")
    assert listed[0] == "evaporator-coil-dirty"
    washed = best_fitting(shipped, [("condenser-coil-dirty", 0.2)], "washed the condenser coil")
    assert washed[0] == "condenser-coil-dirty"
    assert best_fitting(shipped, [], "coil cleaned") == best_fitting(shipped, [], "coil cleaned")
