"""What is asked before a look is taken again: only where a STOP for a step wants it put right."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.cli.lines import Lines, book_of, held
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.looking_again import may_look_again
from troubleshoot.dialogue.stopped import WHAT_WAS_DONE
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.safety.stops.outright import DEVICES
from troubleshoot.visit.events import Answered, Started

ROUND, PANEL = "walk-round", "panel-missing"
REPLACED, DONE = "2", "What it came from was repaired or replaced"


def visit(knowledge: Knowledge, test: str, outcome: str) -> VisitBook:
    start = Started(complaint="no-heat", unit={"heat": "gas"})
    return book_of(knowledge, [start, Answered(test, outcomes=(outcome,))])


def looking_again(book: VisitBook, test: str, *typed: str) -> tuple[bool, Lines]:
    """Whether a test that somebody chose may be taken, and what was asked."""
    conclusions = conclude_visit(Reasoner(book.knowledge), book.state)
    terminal, chosen = Lines(*typed), book.knowledge.tests[test]
    may = held(
        book.knowledge, terminal, lambda voice: may_look_again(book, voice, conclusions, chosen)
    )
    return may, terminal


def test_what_was_done_and_the_devices_are_asked_and_both_are_noted(shipped: Knowledge) -> None:
    book = visit(shipped, ROUND, PANEL)
    may, terminal = looking_again(book, ROUND, REPLACED, "y")
    assert may and terminal.asked == [WHAT_WAS_DONE, f"{DEVICES.question} (y/n)"]
    (note,) = book.state.notes
    assert note == f"made safe here, cover missing: {DONE}; asked: {DEVICES.question} Said: yes"


def test_of_what_keeps_nothing_of_the_unit_off_only_what_was_done_is_asked(
    shipped: Knowledge,
) -> None:
    book = visit(shipped, ROUND, "nest")
    may, terminal = looking_again(book, ROUND, "1")
    assert may and terminal.asked == [WHAT_WAS_DONE]
    assert "asked:" not in book.state.notes[0]


@pytest.mark.parametrize(
    ("test", "outcome", "again"),
    [
        (ROUND, "clean", ROUND),
        (ROUND, PANEL, "drain-pan"),
        (ROUND, "scorch-marks", ROUND),
        ("condensate-float-switch", "closed-in-water", "condensate-float-switch"),
    ],
    ids=["nothing was found", "another look", "a look is its all-clear", "a reading"],
)
def test_whatever_else_is_taken_again_without_a_word(
    test: str, outcome: str, again: str, shipped: Knowledge
) -> None:
    book = visit(shipped, test, outcome)
    may, terminal = looking_again(book, again)
    assert may and terminal.asked == [] and book.state.notes == ()


def test_a_caution_that_stops_nothing_leaves_the_look_to_whoever_chose_it(
    shipped: Knowledge,
) -> None:
    cover = replace(shipped.hazards["cover-missing"], stop=None)
    knowledge = replace(shipped, hazards={**shipped.hazards, cover.id: cover})
    may, terminal = looking_again(visit(knowledge, ROUND, PANEL), ROUND)
    assert may and terminal.asked == []
