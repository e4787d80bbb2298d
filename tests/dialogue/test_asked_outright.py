"""What words could get past is asked outright, yes or no, and the yes stands on record."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from tests.cli.lines import Lines, book_of, held
from tests.dialogue.test_stopped import REPLACED, STUCK, at_the_stop, kinds, visit
from troubleshoot.cli import clock
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.reopening import reopen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.records.report import markdown_report
from troubleshoot.safety.stops.outright import (
    DEVICES,
    READ,
    READ_BY_ANOTHER,
    SEEN,
    asked_of_a_reading,
)
from troubleshoot.safety.stops.record import HandOverResult
from troubleshoot.visit.absence import stamp
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import DangerReported, Reopened, Started, VisitEnded
from troubleshoot.visit.events.codec import event_of, record_of
from troubleshoot.visit.telling.whole_visit import stops_account, visit_account

NOW = datetime.fromisoformat("2026-11-26T12:00:00+00:00")
EARLY = stamp(NOW - timedelta(hours=3))
SWEEP = "combustible-gas-sweep"
TOLD = ("6", "3", "1")


@pytest.fixture(autouse=True)
def _noon(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(clock, "now", lambda: NOW)


@pytest.fixture(scope="module")
def reasoner(shipped: Knowledge) -> Reasoner:
    return Reasoner(shipped)


@pytest.fixture(scope="module")
def decider(shipped: Knowledge) -> Decider:
    return Decider(shipped)


def over(shipped: Knowledge, hazard: str, all_clear: str) -> VisitBook:
    """A visit that a danger reported in words has stopped, handed over."""
    return book_of(
        shipped,
        [
            Started(complaint="no-heat", unit={"heat": "gas"}, name="RTU-7", time=EARLY),
            DangerReported(hazard, "x", test=all_clear, time=EARLY),
            VisitEnded("stopped", "the gas company, 9:10", "2026-11-26 09:10", time=EARLY),
        ],
    )


def given_back(reasoner: Reasoner, book: VisitBook, *typed: str) -> tuple[bool, Lines]:
    terminal = Lines(*typed)
    knowledge = reasoner.knowledge
    return held(knowledge, terminal, lambda voice: reopen(book, voice, reasoner)), terminal


def test_both_are_asked_once_and_their_yes_stands_in_the_report(reasoner: Reasoner) -> None:
    """Regression: a bridged switch, and the next unit's reading, reopened a STOP for gas."""
    shipped = reasoner.knowledge
    book = over(shipped, "gas-odour", SWEEP)
    is_open, terminal = given_back(reasoner, book, *TOLD, "y", "0 % LEL", "Yes.", "11:30")
    asked = [line for line in terminal.asked if line.endswith("(y/n)")]
    assert is_open and asked == [f"{DEVICES.question} (y/n)", f"{READ[SWEEP].question} (y/n)"]
    event = event_of(record_of(book.events[-1]))
    assert isinstance(event, Reopened)
    assert event.said_yes_to == (DEVICES.question, READ[SWEEP].question)
    stops = stops_account(shipped, book.state)
    assert stops[0]["said_yes_to"] == list(event.said_yes_to)
    plain = visit_account(shipped, book.state, reasoner.conclude(book.state.case))
    report = markdown_report(shipped, plain, {"stops": stops})
    assert f"asked: {DEVICES.question} Said: yes; asked: Was it read" in report


@pytest.mark.parametrize(
    ("typed", "missing"),
    [
        (("n",), DEVICES.missing), (("no, the rollout is bridged",), DEVICES.missing),
        (("y", "0 % LEL", "n"), READ[SWEEP].missing),
        (("y", "0 % LEL", "n, at unit 9"), READ[SWEEP].missing),
    ],
)  # fmt: skip
def test_a_no_reopens_nothing_and_says_what_is_missing(
    typed: tuple[str, ...], missing: str, reasoner: Reasoner
) -> None:
    book = over(reasoner.knowledge, "gas-odour", SWEEP)
    is_open, terminal = given_back(reasoner, book, *TOLD, *typed, "11:30")
    assert not is_open and book.state.ended == "stopped"
    assert "reopened" not in kinds(book) and missing not in str(book.state.given)
    refused = DEVICES if missing == DEVICES.missing else READ[SWEEP]
    assert refused.question not in {each.words for each in book.state.given}
    assert missing in terminal.said and "The visit stays closed" in terminal.text


@pytest.mark.parametrize("typed", ["", "ok", "y but one is out", "y, all but one"])
def test_only_y_or_n_alone_answers_it(typed: str, reasoner: Reasoner) -> None:
    book = over(reasoner.knowledge, "gas-odour", SWEEP)
    is_open, terminal = given_back(
        reasoner, book, *TOLD, typed, "y", "0 % LEL", typed, "y", "11:30"
    )
    assert is_open and terminal.text.count("y alone, or n.") == 2


@pytest.mark.parametrize(
    ("hazard", "wanted"),
    [
        ("gas-odour", ["gas on", "bumped today", "this unit", "after what was done"]),
        ("carbon-monoxide-in-room", ["bumped today", "rooms of this unit", "after what was done"]),
        ("flammable-refrigerant-alarm", ["bumped today", "this unit", "after what was done"]),
        ("unexplained-voltage", ["proved today", "this unit", "after what was done"]),
    ],
)
def test_what_is_asked_of_a_reading_is_the_dangers_own(
    hazard: str, wanted: list[str], shipped: Knowledge
) -> None:
    asked = asked_of_a_reading(shipped, shipped.hazards[hazard])
    assert asked is not None and all(word in asked.question for word in wanted)


def test_what_each_question_leaves_missing_is_said_and_that_the_stop_stands() -> None:
    for asked in (DEVICES, *READ.values(), READ_BY_ANOTHER, SEEN):
        assert asked.question.endswith("?") and asked.missing.endswith("The STOP stands.")
    for word in ("safety device", "bridged", "blocked", "set past its mark", "left out"):
        assert word in DEVICES.question
    assert "put back as it was made" in DEVICES.missing
    assert all("read again" in asked.missing for asked in (*READ.values(), READ_BY_ANOTHER))


def test_of_a_danger_without_an_all_clear_no_reading_is_asked_about(shipped: Knowledge) -> None:
    """A site may write one."""
    own = replace(shipped.hazards["gas-odour"], all_clear=None)
    assert asked_of_a_reading(shipped, own) is None


@pytest.mark.parametrize("hazard", ["heat-exchanger-breach", "smoke-or-heat-now", "somebody-hurt"])
def test_where_no_instrument_shows_it_the_look_is_asked_about(
    hazard: str, shipped: Knowledge
) -> None:
    """Regression: a glance at anything, at any time, lifted a STOP for smoke."""
    assert asked_of_a_reading(shipped, shipped.hazards[hazard]) == SEEN
    assert "on this unit, after what was done" in SEEN.question


@pytest.mark.parametrize("hazard", ["lightning", "overhead-line-near"])
def test_of_what_is_at_no_unit_nothing_is_asked_of_one(hazard: str, shipped: Knowledge) -> None:
    assert asked_of_a_reading(shipped, shipped.hazards[hazard]) is None


def test_until_made_safe_a_no_leaves_the_stop_as_it_stands(decider: Decider) -> None:
    book = visit(decider.knowledge, STUCK)
    terminal = Lines("again", REPLACED, "n", "again", REPLACED, "y")
    assert at_the_stop(decider, book, terminal) is True
    assert DEVICES.missing in terminal.said
    assert kinds(book)[2:] == ["stop", "take-afresh"]
    assert book.state.stops[-1].said_yes_to == (DEVICES.question,)


def test_what_keeps_nothing_of_a_unit_off_asks_nothing(reasoner: Reasoner) -> None:
    book = over(reasoner.knowledge, "lightning", "thunder-waited-out")
    typed = ("3", "1", "1", "waited", "11:30")
    is_open, terminal = given_back(reasoner, book, *typed)
    assert is_open and not [line for line in terminal.asked if line.endswith("(y/n)")]


def test_it_is_asked_afresh_at_each_reopening_and_a_journal_of_before_says_nothing_of_it(
    reasoner: Reasoner,
) -> None:
    book = over(reasoner.knowledge, "gas-odour", SWEEP)
    result = HandOverResult("gas-fitter", "union tightened", "0 % LEL", "2026-11-26 09:30")
    book.add(Reopened("gas-odour", result, SWEEP, None))
    assert "said_yes_to" not in record_of(book.events[-1])
    assert book.state.stops[-1].said_yes_to == () and book.state.ended is None
    book.add(VisitEnded("stopped", "the gas company, 9:40", "2026-11-26 09:40"))
    is_open, _ = given_back(reasoner, book, *TOLD, "y", "0 % LEL", "n")
    assert not is_open
