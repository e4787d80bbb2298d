"""What is told of a STOP part by part stands once it is typed, whatever breaks in; u takes it back.

Whoever is called away between two questions is not asked again for what they have said.
"""

from __future__ import annotations

import pytest

from tests.cli.lines import Lines, book_of, held
from tests.dialogue.test_hand_over_result import (
    BOSS,
    DONE,
    ELEVEN,
    FOR,
    GAS,
    NINE,
    NOW,
    READ,
    THEM_TOO,
    UTILITY,
    WHEN_TOLD,
    WHO,
)
from troubleshoot.cli import clock
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hand_over_result import NOTHING_TOLD, ask_result
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.who_was_told import ask_told
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.record import NOT_TOLD_YET, TOLD, HandOverResult, StopMet
from troubleshoot.visit.absence import stamp
from troubleshoot.visit.events import DangerReported, PartGiven, Started

WHO_MADE_IT_SAFE = "Who made it safe?"
FITTER = "gas-fitter"
TIGHT = "The joint that leaked was made tight, and tested under pressure"
REPLACED = "The valve, pipe or connector that leaked was replaced, and tested under pressure"


@pytest.fixture(autouse=True)
def _noon(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(clock, "now", lambda: NOW)


def stopped(shipped: Knowledge, *given: PartGiven) -> VisitBook:
    gas = DangerReported(GAS, "x", test="combustible-gas-sweep", time=NINE)
    return book_of(shipped, [Started(complaint="no-heat", name="RTU-7", time=NINE), gas, *given])


def told(book: VisitBook, *typed: str) -> tuple[Lines, str]:
    terminal, hazard = Lines(*typed), book.knowledge.hazards[GAS]
    kept = held(
        book.knowledge,
        terminal,
        lambda voice: ask_told(book, Listener(book.knowledge, voice, (GAS,)), hazard),
    )
    return terminal, kept


def parts_kept(book: VisitBook) -> list[tuple[str, str]]:
    """The parts that were put into the book from the first prompt on."""
    return [(e.part, e.words) for e in book.events if isinstance(e, PartGiven)]


def broken_off(words: str) -> str:
    return f"Given before it broke off: {words}. u takes it back."


def test_who_was_told_before_a_break_is_not_asked_again(shipped: Knowledge) -> None:
    """The part is called in the record as it was called in those of before."""
    book = stopped(shipped, PartGiven("who was told", UTILITY, time=stamp(NOW)))
    terminal, kept = told(book)
    assert kept == UTILITY and terminal.asked == []
    assert terminal.said == [broken_off(UTILITY), "Taken as: 11:15 am today."]
    assert parts_kept(book) == [(TOLD, UTILITY)]


def test_just_now_is_of_the_moment_at_which_it_was_said(shipped: Knowledge) -> None:
    """At noon it would be an hour that nobody has told of."""
    early = PartGiven(TOLD, "gas company just now", time=ELEVEN)
    terminal, kept = told(stopped(shipped, early))
    assert kept == "gas company just now" and terminal.asked == []


def test_the_time_alone_is_asked_where_it_was_the_part_that_broke_off(shipped: Knowledge) -> None:
    book = stopped(shipped, PartGiven(TOLD, "gas company", time=ELEVEN))
    terminal, kept = told(book, "11:15")
    assert kept == "gas company, 11:15" and terminal.asked == [WHEN_TOLD]
    assert parts_kept(book) == [(TOLD, "gas company")], "what stands is not kept twice"


def test_who_was_told_stands_before_the_time_is_asked(shipped: Knowledge) -> None:
    book = stopped(shipped)
    terminal, kept = told(book, "gas company", "11:15")
    assert kept == "gas company, 11:15" and terminal.asked == [WHO, WHEN_TOLD]
    assert parts_kept(book) == [(TOLD, "gas company")]


def test_u_at_the_time_takes_back_who_was_told_of_before(shipped: Knowledge) -> None:
    book = stopped(shipped, PartGiven(TOLD, "gas company", time=ELEVEN))
    terminal, kept = told(book, "u", UTILITY)
    assert kept == UTILITY and terminal.asked == [WHEN_TOLD, WHO]
    assert terminal.said.count(broken_off("gas company")) == 1
    assert parts_kept(book) == [(TOLD, "gas company"), (TOLD, "")]
    assert not book.state.given


def test_u_takes_nothing_back_where_nothing_is_kept(shipped: Knowledge) -> None:
    book = stopped(shipped, PartGiven("by", FITTER, time=ELEVEN))
    told(book, UTILITY)
    assert parts_kept(book) == [("by", FITTER)]


def test_whoever_else_was_told_stands_while_those_it_is_for_are_asked_after(
    shipped: Knowledge,
) -> None:
    book = stopped(shipped)
    terminal, kept = told(book, BOSS, "")
    assert kept == f"{BOSS}; {NOT_TOLD_YET}{FOR}" and terminal.asked == [WHO, THEM_TOO]
    assert parts_kept(book) == [(TOLD, BOSS)]


def result(book: VisitBook, *typed: str) -> tuple[Lines, HandOverResult]:
    terminal, met = Lines(*typed), StopMet(GAS, 1, time=NINE, told="")
    came = held(book.knowledge, terminal, lambda voice: ask_result(book, voice, met))
    return terminal, came.told


def test_of_a_result_only_what_is_missing_is_asked_and_all_of_it_is_kept(
    shipped: Knowledge,
) -> None:
    book = stopped(shipped, PartGiven("by", FITTER), PartGiven("done", TIGHT))
    book.add(PartGiven(TOLD, UTILITY))
    terminal, came = result(book, "y", READ, "y", "09:30")
    assert f"Given before it broke off: {FITTER}; {TIGHT}. u takes the last back." in terminal.said
    assert WHO_MADE_IT_SAFE not in " ".join(terminal.asked) and len(terminal.asked) == 4
    assert (came.by, came.done, came.reading, came.when) == (
        FITTER,
        TIGHT,
        READ,
        "2026-11-26 09:30",
    )
    parts = [part for part, _ in parts_kept(book)]
    assert parts == ["by", "done", TOLD, "of what was done", "reading", "of the reading", "when"]
    assert dict(parts_kept(book))["reading"] == READ


def test_what_was_told_in_words_to_rules_of_before_is_asked_again(shipped: Knowledge) -> None:
    book = stopped(shipped, PartGiven("by", FITTER), PartGiven("done", "patched it for now"))
    _, came = result(book, DONE, "y", READ, "y", "09:30")
    assert came.done == TIGHT


def test_u_takes_back_the_last_part_alone(shipped: Knowledge) -> None:
    book = stopped(shipped, PartGiven("by", FITTER), PartGiven("done", TIGHT))
    terminal, came = result(book, "u", "2", "y", READ, "y", "09:30")
    assert (came.by, came.done) == (FITTER, REPLACED)
    assert parts_kept(book)[2:4] == [("done", ""), ("done", REPLACED)]
    assert NOTHING_TOLD not in terminal.said


def test_nothing_is_said_of_a_break_where_there_was_none(shipped: Knowledge) -> None:
    terminal, _ = result(stopped(shipped), "u", "3", DONE, "y", READ, "y", "09:30")
    assert not [line for line in terminal.said if "broke off" in line]
    assert NOTHING_TOLD in terminal.said


@pytest.mark.parametrize(
    ("typed", "words"),
    [("3", ""), ("gas fitter", ""), ("the licensed gas fitter of the school", None)],
)
def test_who_made_it_safe_is_a_role_with_what_more_was_said_of_them(
    typed: str, words: str | None, shipped: Knowledge
) -> None:
    _, came = result(stopped(shipped), typed, DONE, "y", READ, "y", "09:30")
    assert came.by == FITTER and came.who == (typed if words is None else words)


@pytest.mark.parametrize(
    ("at", "typed"),
    [
        (1, "the joint was made tight at RTU-9"),
        (1, "union tightened yesterday"),
        (3, "0 % LEL at the union of RTU-9"),
    ],
)
def test_what_was_done_or_read_elsewhere_or_before_is_no_result(
    at: int, typed: str, shipped: Knowledge
) -> None:
    """Another unit made safe leaves this one as it stopped the job."""
    answers = ["3", DONE, "y", READ, "y", "09:30"]
    terminal, came = result(stopped(shipped), *answers[:at], typed, *answers[at:])
    assert (came.done, came.reading) == (TIGHT, READ)
    assert terminal.asked[at] == terminal.asked[at + 1]
