"""At a STOP: it is told once and kept, taken afresh where that may lift it, else handed over."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

import pytest

from tests.cli.lines import Lines, book_of, held
from troubleshoot.cli import clock
from troubleshoot.dialogue.asides import takes_notes
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.prompts import Ended
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.stopped import stopped
from troubleshoot.dialogue.talk import DangerCalled, Leave, Talk
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.profiles import FULLY_QUALIFIED
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.safety.stops.outright import DEVICES
from troubleshoot.safety.stops.record import HandOverResult
from troubleshoot.visit.absence import stamp
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import (
    Answered,
    DangerReported,
    Event,
    Halted,
    Reopened,
    Resumed,
    Started,
    StepDone,
    TakenAfresh,
    VisitEnded,
)
from troubleshoot.visit.telling.whole_visit import stops_account

NOW = datetime.fromisoformat("2026-11-26T12:00:00+00:00")
UNIT = {"heat": "gas", "refrigerant": "R-410A", "duct-smoke-detector": "not-fitted"}
EVERYBODY = sorted(FULLY_QUALIFIED)
REPLACED, DONE = "2", "What it came from was repaired or replaced"
TOLD = "the combustion tech, the gas fitter and the supervisor were called just now"


@pytest.fixture(autouse=True)
def _noon(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(clock, "now", lambda: NOW)


@pytest.fixture(scope="module")
def decider(shipped: Knowledge) -> Decider:
    return Decider(shipped)


def visit(shipped: Knowledge, *events: Event, **start: Any) -> VisitBook:
    call = {"complaint": "no-heat", "unit": UNIT, "name": "RTU-7", "profiles": EVERYBODY}
    first = Started(**{**call, **start})
    return book_of(shipped, [replace(e, time=stamp(NOW)) for e in (first, *events)])


def answer(test: str, outcome: str) -> Answered:
    return Answered(test, outcomes=(outcome,))


CRACK = answer("heat-exchanger-look", "crack")
STUCK = answer("main-limit", "stuck")


def at_the_stop(decider: Decider, book: VisitBook, terminal: Lines) -> bool:
    """Whether the visit goes on after the STOP."""
    conclusions = conclude_visit(decider.reasoner, book.state)
    decision = decider.decide(book.state, conclusions)
    assert decision.kind == "stop"

    def here(voice: Voice) -> Talk[Ended | None]:
        takes_notes(book, voice)
        return stopped(book, voice, decision, conclusions)

    return held(decider.knowledge, terminal, here) is None


def kinds(book: VisitBook) -> list[str]:
    return [event.kind for event in book.events]


def test_a_stop_is_kept_with_its_finding_when_it_is_first_met(decider: Decider) -> None:
    book = visit(decider.knowledge, CRACK)
    terminal = Lines("over", TOLD)
    assert at_the_stop(decider, book, terminal) is False
    assert book.events[2] == Halted("heat-exchanger-breach", "heat-exchanger-look", time=stamp(NOW))
    assert book.events[3] == VisitEnded("stopped", TOLD, "2026-11-26 12:00", time=stamp(NOW))
    assert "DANGER - STOP" in terminal.text and "Do not start RTU-7." in terminal.text


def test_one_that_was_kept_is_not_kept_again_unless_something_was_answered_since(
    decider: Decider,
) -> None:
    stop = Halted("heat-exchanger-breach", CRACK.test)
    for since, number in (([], 1), ([answer("weather-pattern", "always")], 2)):
        book = visit(decider.knowledge, CRACK, stop, *since)
        with pytest.raises(Leave):
            at_the_stop(decider, book, Lines("q"))
        assert kinds(book).count("stop") == number
    book = visit(decider.knowledge, CRACK, stop)
    other_first = replace(stop, hazard="lightning", test="roof-conditions")
    twice = visit(decider.knowledge, CRACK, other_first, stop)
    with pytest.raises(Leave):
        at_the_stop(decider, twice, Lines("q"))
    assert kinds(twice).count("stop") == 2, "the last one is the one that counts"
    other = replace(stop, hazard="lightning", test="roof-conditions")
    book = visit(decider.knowledge, CRACK, other)
    with pytest.raises(Leave):
        at_the_stop(decider, book, Lines("Quit"))
    assert kinds(book).count("stop") == 2


def test_one_for_the_whole_job_is_only_handed_over(decider: Decider) -> None:
    book = visit(decider.knowledge, CRACK)
    terminal = Lines("again", "", "later", "OVER", TOLD)
    assert at_the_stop(decider, book, terminal) is False
    assert "No further test is offered. Type over to hand the job over." in terminal.text
    assert terminal.text.count("over, or q.") == 3 and "again, over" not in terminal.text
    assert kinds(book) == ["start", "answer", "stop", "end"]


def test_one_until_made_safe_may_be_taken_afresh(decider: Decider) -> None:
    book = visit(decider.knowledge, STUCK)
    terminal = Lines("", "Again", REPLACED, "y")
    assert at_the_stop(decider, book, terminal) is True
    name = decider.knowledge.tests["main-limit"].name
    assert f"Only a fresh finding lifts this: type again to do {name} once more" in terminal.text
    assert "again, over, or q." in terminal.said
    assert kinds(book)[2:] == ["stop", "take-afresh"]
    assert book.events[3] == TakenAfresh(
        "main-limit", None, done=DONE, said_yes_to=(DEVICES.question,), time=stamp(NOW)
    )


@pytest.mark.parametrize("typed", ["", "fixed it", "nobody did anything yet", "it is not fixed"])
def test_what_was_done_to_make_it_safe_is_said_before_it_is_taken_afresh(
    typed: str, decider: Decider
) -> None:
    """Regression: `again` lifted it at once, without anything having been done."""
    book = visit(decider.knowledge, STUCK)
    terminal = Lines("again", typed, REPLACED, "", "y")
    assert at_the_stop(decider, book, terminal) is True
    assert [asked for asked in terminal.asked if "made safe" in asked or "make it safe" in asked]
    assert book.state.stops[-1].done_here == DONE
    (stop,) = stops_account(decider.knowledge, book.state)
    assert stop["done_here"] == DONE and stop["made_safe"] is None


def test_whoever_has_done_nothing_leaves_with_the_stop_standing(decider: Decider) -> None:
    book = visit(decider.knowledge, STUCK)
    with pytest.raises(Leave):
        at_the_stop(decider, book, Lines("again", "q"))
    assert kinds(book)[2:] == ["stop"]


def test_what_a_reopening_has_told_is_not_asked_again(decider: Decider) -> None:
    result = HandOverResult("electrician", DONE, "limit opens at 190 F", "2026-11-26 11:59")
    over = [Halted("safety-does-not-open", "main-limit"),
            VisitEnded("stopped", TOLD, "2026-11-26 11:00"),
            Reopened("safety-does-not-open", result, "main-limit", None),
            Resumed(45, True)]  # fmt: skip
    book = visit(decider.knowledge, STUCK, *over)
    assert at_the_stop(decider, book, Lines("again")) is True


@pytest.mark.parametrize("typed", [("q",), ("?", "s", "note the boss is on his way", "Quit")])
@pytest.mark.parametrize("name", ["RTU-7", ""])
def test_nobody_is_trapped_at_who_was_told(
    name: str, typed: tuple[str, ...], decider: Decider
) -> None:
    """Regression: q was refused there, until somebody was named."""
    book = visit(decider.knowledge, CRACK, name=name)
    unit = () if name else ("RTU 9",)
    terminal = Lines("over", *unit, *typed)
    with pytest.raises(Leave):
        at_the_stop(decider, book, terminal)
    assert "end" not in kinds(book) and book.state.ended is None
    assert [met.hazard for met in book.state.stops] == ["heat-exchanger-breach"]
    assert conclude_visit(decider.reasoner, book.state).standing_stops
    assert list(book.state.notes) == ["the boss is on his way"] * (len(typed) > 1)


def test_at_the_stop_itself_there_is_help_and_a_note(decider: Decider) -> None:
    book = visit(decider.knowledge, STUCK)
    terminal = Lines("?", "w", "s", "note the limit was warm", "Q")
    with pytest.raises(Leave):
        at_the_stop(decider, book, terminal)
    assert book.state.notes == ("the limit was warm",)
    assert terminal.text.count("again, over, or q.") == 3
    assert "not skipped" in terminal.text


def test_what_is_beyond_whoever_asks_is_handed_over(decider: Decider) -> None:
    book = visit(decider.knowledge, STUCK, profiles=("technician",))
    terminal = Lines("again", "over", TOLD)
    assert at_the_stop(decider, book, terminal) is False
    name = decider.knowledge.tests["main-limit"].name
    assert f"Only {name}, taken afresh, lifts this, and that is beyond you: hand over to" in (
        terminal.text
    )
    assert "Type over to hand the job over." in terminal.text
    assert "over, or q." in terminal.text and "take-afresh" not in kinds(book)


def test_who_was_told_is_asked_until_it_is_said_and_the_unit_is_named(decider: Decider) -> None:
    shut = [StepDone(s, (o,))
            for s, o in (("roof-conditions", "safe"), ("gas-cock-shut", "shut"))]  # fmt: skip
    book = visit(decider.knowledge, *shut, CRACK, name="")
    terminal = Lines("over", "RTU 9", "", "nobody", TOLD)
    assert at_the_stop(decider, book, terminal) is False
    assert kinds(book)[-3:] == ["stop", "named", "end"]
    assert book.state.name == "RTU 9" and book.state.stops[-1].told == TOLD
    assert book.state.ended == "stopped"
    assert "  Still open on the unit: gas cock shut" in terminal.said
    assert "The visit is closed as stopped." in terminal.said
    assert "troubleshoot reopen 2026-11-26-1" in terminal.text


def test_a_unit_that_nobody_names_stays_without_a_name(decider: Decider) -> None:
    book = visit(decider.knowledge, CRACK, name="")
    assert at_the_stop(decider, book, Lines("over", "", TOLD)) is False
    assert "named" not in kinds(book)
    named = visit(decider.knowledge, CRACK)
    terminal = Lines("over", TOLD)
    at_the_stop(decider, named, terminal)
    assert "Which unit is it?" not in terminal.text


def test_another_danger_is_reported_at_once_and_the_same_one_is_not(decider: Decider) -> None:
    smell = decider.knowledge.hazards["gas-odour"].words[0]
    with pytest.raises(DangerCalled, match=smell):
        at_the_stop(decider, visit(decider.knowledge, CRACK), Lines(smell))
    gas = visit(decider.knowledge, complaint="gas-smell")
    terminal = Lines(smell, "over", TOLD)
    assert at_the_stop(decider, gas, terminal) is False
    assert "over, or q." in terminal.text


def test_a_night_at_the_stop_voids_what_others_could_change(
    decider: Decider, monkeypatch: pytest.MonkeyPatch
) -> None:
    roof = StepDone("roof-conditions", ("safe",))
    book = visit(decider.knowledge, roof, CRACK)
    at_the_stop(decider, book, Lines("over", TOLD))
    book = visit(decider.knowledge, roof, CRACK)
    monkeypatch.setattr(clock, "now", lambda: NOW + timedelta(hours=14))
    assert at_the_stop(decider, book, Lines("over", TOLD)) is False
    assert "resumed" in kinds(book) and book.state.work.roof == "not-checked"


def test_a_danger_that_somebody_reported_is_cleared_by_its_own_word(decider: Decider) -> None:
    clear = decider.knowledge.hazards["live-work"].all_clear
    danger = DangerReported("live-work", "sparks", test=clear)
    book = visit(decider.knowledge, danger)
    terminal = Lines("again", "1")
    assert at_the_stop(decider, book, terminal) is True
    assert kinds(book) == ["start", "danger", "take-afresh"]
    assert book.state.fresh == (clear, None)


def test_a_wait_is_not_shortened_by_those_who_met_the_stop(
    decider: Decider, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Regression: half an hour in the shade was over at the word of whoever wanted to go on."""
    danger = DangerReported("roof-heat", "dizzy", test="fit-to-go-on", time=stamp(NOW))
    book = visit(decider.knowledge, danger)
    monkeypatch.setattr(clock, "now", lambda: NOW + timedelta(minutes=29))
    terminal = Lines("again", "over", TOLD)
    assert at_the_stop(decider, book, terminal) is False
    assert "30 minutes have to pass on the clock" in terminal.text
    book = visit(decider.knowledge, danger)
    monkeypatch.setattr(clock, "now", lambda: NOW + timedelta(minutes=30))
    assert at_the_stop(decider, book, Lines("again", "1")) is True
