"""Reopening asks who it is and what came of the hand-over, says what stopped, and keeps it."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from typing import Any

import pytest

from tests.cli.lines import Lines, book_of, held
from troubleshoot.cli import clock
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hand_over_result import Result, ask_result
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.reopening import NOT_BY_AN_APPRENTICE, reopen
from troubleshoot.dialogue.talk import Leave
from troubleshoot.dialogue.who_was_told import ask_told
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.hearing.roles import ROLES
from troubleshoot.safety.stops.outright import DEVICES, SEEN
from troubleshoot.safety.stops.record import HandOverResult, StopMet
from troubleshoot.safety.stops.reopening import NotReopened, fitting_roles
from troubleshoot.visit.absence import stamp
from troubleshoot.visit.events import (
    Answered,
    DangerReported,
    Event,
    Halted,
    Reopened,
    Started,
    VisitEnded,
    replay,
)
from troubleshoot.visit.events.codec import event_of, record_of
from troubleshoot.visit.telling.whole_visit import stops_account

NOW = datetime.fromisoformat("2026-11-26T12:00:00+00:00")
EARLY = stamp(NOW.replace(hour=9))
DONE, READ = "1", "sound"
TOLD = ("The exchanger was replaced", "Heat exchanger from inside: sound")
"""What these come to, as it is kept."""
LOOK = "Heat exchanger from inside: how was it?"


@pytest.fixture(autouse=True)
def _noon(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(clock, "now", lambda: NOW)


@pytest.fixture(scope="module")
def reasoner(shipped: Knowledge) -> Reasoner:
    return Reasoner(shipped)


def over(shipped: Knowledge, name: str = "RTU-7", told: str = "the owner, 9:10") -> VisitBook:
    events: list[Event] = [
        Started(complaint="no-heat", unit={"heat": "gas"}, name=name),
        Answered("heat-exchanger-look", outcomes=("crack",)),
        Halted("heat-exchanger-breach", "heat-exchanger-look"),
        VisitEnded("stopped", told, "2026-11-26 09:10"),
    ]  # fmt: skip
    return book_of(shipped, [replace(event, time=EARLY) for event in events])


def reopened(reasoner: Reasoner, book: VisitBook, terminal: Lines) -> bool:
    return held(reasoner.knowledge, terminal, lambda voice: reopen(book, voice, reasoner))


def test_with_all_of_the_result_the_visit_goes_on(reasoner: Reasoner) -> None:
    shipped = reasoner.knowledge
    book = over(shipped)
    terminal = Lines("6", "1", DONE, "y", READ, "y", "11:30")
    assert reopened(reasoner, book, terminal) is True
    by = fitting_roles(shipped.hazards["heat-exchanger-breach"])[0]
    event = book.events[-1]
    assert isinstance(event, Reopened)
    assert (event.hazard, event.profiles) == ("heat-exchanger-breach", ("gas",))
    assert book.state.stops[-1].result == HandOverResult(by, *TOLD, "2026-11-26 11:30")
    text = terminal.text
    hazard = shipped.hazards["heat-exchanger-breach"]
    assert "Visit 2026-11-26-1, RTU-7, was stopped: heat exchanger breach." in text
    assert f"  It was for: {hazard.defer_to}." in terminal.said
    assert "  Told: the owner, 9:10" in terminal.said
    look = shipped.tests["heat-exchanger-look"].name
    assert f"Reopened. The STOP still stands: {look} comes first and decides." in text
    assert "States that others could have changed are asked again." in text
    assert "What came of it? q leaves the visit closed." in text


def test_what_stopped_it_is_said_first_and_strongly(reasoner: Reasoner) -> None:
    terminal = Lines()
    terminal.bold = True
    reopened(reasoner, over(reasoner.knowledge), terminal)
    assert "was stopped: heat exchanger breach." in terminal.said[0]
    assert terminal.said[0].startswith("\x1b[1m") and not terminal.said[1].startswith("\x1b[1m")


def test_of_several_stops_the_last_ones_word_is_told(reasoner: Reasoner) -> None:
    book = over(reasoner.knowledge)
    first = book.state.stops[-1]
    book.state = replace(book.state, stops=(replace(first, told="somebody before"), first))
    terminal = Lines()
    reopened(reasoner, book, terminal)
    assert "somebody before" not in terminal.text and "  Told: the owner, 9:10" in terminal.said


def test_a_reading_is_one_after_the_stop_of_the_journal(reasoner: Reasoner) -> None:
    book = over(reasoner.knowledge, told="the owner, 9:00")
    terminal = Lines("6", "1", DONE, "y", READ, "y", "08:59", "09:00", "09:01")
    assert reopened(reasoner, book, terminal) is True
    assert "That is not after 2026-11-26 09:00" in terminal.text


@pytest.mark.parametrize(
    ("told", "refused", "taken"),
    [
        ("the owner, 9:08", "9:05", "9:08"), ("the owner, 9:10", "9:09", "9:10"),
        ("the owner, just now", "9:09", "9:11"), ("the owner, 4 min ago", "9:05", "9:06"),
        ("the boss, 9:02; the gas company, 9:07", "9:06", "9:07"),
        ("the owner", "9:09", "9:10"),
    ],
)  # fmt: skip
def test_a_reading_is_none_from_before_the_hand_over(
    told: str, refused: str, taken: str, reasoner: Reasoner
) -> None:
    """Regression: what was read between the STOP and the hand-over reopened the visit."""
    terminal = Lines("6", "1", DONE, "y", READ, "y", refused, taken)
    book = over(reasoner.knowledge, told=told)
    assert reopened(reasoner, book, terminal) is True
    assert "That is before the hand-over of 2026-11-26 09:" in terminal.text
    result = book.state.stops[-1].result
    assert result is not None and result.when == f"2026-11-26 0{taken}"


def test_a_stop_that_an_old_journal_kept_no_record_of_is_reopened_too(reasoner: Reasoner) -> None:
    events = [event for event in over(reasoner.knowledge).events if event.kind != "stop"]
    book = book_of(reasoner.knowledge, events)
    assert reopened(reasoner, book, Lines("6", "1", DONE, "y", READ, "y", "00:01")) is True


def test_what_is_not_known_is_not_said(reasoner: Reasoner) -> None:
    terminal = Lines("")
    assert reopened(reasoner, over(reasoner.knowledge, "", ""), terminal) is False
    assert "Visit 2026-11-26-1 was stopped" in terminal.text and "Told:" not in terminal.text


@pytest.mark.parametrize("typed", [("6",), ("6", "1", DONE, ""), ()])
def test_without_all_of_it_the_visit_stays_closed(typed: Any, reasoner: Reasoner) -> None:
    book = over(reasoner.knowledge)
    terminal = Lines(*typed)
    assert reopened(reasoner, book, terminal) is False
    assert book.state.ended == "stopped"
    assert {event.kind for event in book.events[3:]} <= {"end", "given"}
    assert "The visit stays closed: it is reopened only with all of" in terminal.text
    assert "troubleshoot reopen 2026-11-26-1" in terminal.text


@pytest.mark.parametrize("typed", [("danger fire",), ("6", "danger fire"), ("6", "i see fire")])
def test_a_danger_opens_the_visit_and_stops_it_again(typed: Any, reasoner: Reasoner) -> None:
    """Regression: the visit stayed closed, and the danger was lost."""
    book = over(reasoner.knowledge)
    assert reopened(reasoner, book, Lines(*typed)) is True
    assert book.state.ended is None and book.state.stops[-1].hazard == "smoke-or-heat-now"


@pytest.mark.parametrize("who", ["1", "1 2", "1 6"])
def test_an_apprentice_takes_no_hand_over_back(who: str, reasoner: Reasoner) -> None:
    book = over(reasoner.knowledge)
    terminal = Lines(who, "1", DONE, "y", READ, "y", "11:30")
    assert reopened(reasoner, book, terminal) is False
    assert NOT_BY_AN_APPRENTICE in terminal.text and book.events[-1].kind == "end"
    assert NOT_BY_AN_APPRENTICE.startswith("The visit stays closed: an apprentice takes no hand")


def test_a_visit_that_was_not_stopped_is_refused_by_its_name(reasoner: Reasoner) -> None:
    book = book_of(reasoner.knowledge, [Started(complaint="no-heat", time=EARLY)])
    with pytest.raises(NotReopened, match="it is still open; go on with it by: troubleshoot"):
        reopened(reasoner, book, Lines())


MET = StopMet("heat-exchanger-breach", 1, time=EARLY)


def result_of(shipped: Knowledge, terminal: Lines, met: StopMet = MET) -> HandOverResult:
    return whole_result(shipped, terminal, met).told


def whole_result(shipped: Knowledge, terminal: Lines, met: StopMet) -> Result:
    book = book_of(shipped, ())
    return held(shipped, terminal, lambda voice: ask_result(book, voice, met))


def test_each_part_of_the_result_is_asked_until_it_is_understood(shipped: Knowledge) -> None:
    names = fitting_roles(shipped.hazards[MET.hazard])
    terminal = Lines("0", "2", "x", DONE, "y", "y z", READ, "y", "08:59", "13:00", "09:00", "09:01")
    result = result_of(shipped, terminal)
    assert result == HandOverResult(names[1], *TOLD, "2026-11-26 09:01")
    assert terminal.asked == [
        "Who made it safe?", "Who made it safe?",
        *["What did they do?"] * 2, f"{DEVICES.question} (y/n)",
        *[LOOK] * 2, f"{SEEN.question} (y/n)",
        *["When was that?"] * 4,
    ]  # fmt: skip
    listed = [f"  {n} {ROLES[name]}" for n, name in enumerate(names, 1)]
    assert listed == terminal.said[: len(names)]
    assert "That is not after 2026-11-26 09:00" in terminal.text


@pytest.mark.parametrize("missing", range(6))
def test_without_one_part_there_is_no_result_and_no_more_is_asked(
    missing: int, shipped: Knowledge
) -> None:
    typed = ["1", DONE, "y", READ, "y", "09:01"]
    terminal = Lines(*typed[:missing], "q", *typed[missing + 1 :])
    with pytest.raises(Leave):
        result_of(shipped, terminal)
    assert len(terminal.asked) == missing + 1


@pytest.mark.parametrize("missing", range(6))
def test_nothing_typed_throws_nothing_away(missing: int, shipped: Knowledge) -> None:
    """Regression: one Enter threw all that had been typed away."""
    typed = ["1", DONE, "y", READ, "y", "09:01"]
    typed.insert(missing, "")
    terminal = Lines(*typed)
    result = result_of(shipped, terminal)
    assert result is not None and (result.done, result.reading) == TOLD
    assert terminal.asked[missing] == terminal.asked[missing + 1]
    asked_outright = missing in (2, 4)
    assert ("y alone, or n." if asked_outright else "still missing") in terminal.text


def test_somebody_is_told_by_role(shipped: Knowledge) -> None:
    terminal = Lines("", "the cat at noon", "nobody", "no answer from the boss", "boss 11:10")
    book, boss = over(shipped), shipped.hazards["lightning"]
    found = held(shipped, terminal, lambda voice: ask_told(book, Listener(shipped, voice), boss))
    assert found == "boss 11:10" and len(terminal.asked) == 5


@pytest.mark.parametrize("given", range(1, 6))
def test_u_goes_back_to_the_part_before(given: int, shipped: Knowledge) -> None:
    typed = ["1", DONE, "y", READ, "y", "09:01"]
    terminal = Lines(*typed[:given], "u", *typed[given - 1 :])
    result = result_of(shipped, terminal)
    assert result is not None and (result.done, result.reading) == TOLD
    assert terminal.asked[given - 1] == terminal.asked[given + 1]


def test_at_the_first_part_there_is_nothing_to_go_back_to(shipped: Knowledge) -> None:
    terminal = Lines("u", "1", DONE, "y", READ, "y", "09:01")
    assert result_of(shipped, terminal) is not None
    assert "Nothing of the result has been told yet" in terminal.text


UNTOLD = "the supervisor, 9:05; not told yet: gas utility or fire service, then a gas fitter"


def test_who_by_the_record_was_not_told_is_asked_when_they_knew_of_it(shipped: Knowledge) -> None:
    """Regression: the fitter who had never been told of the STOP had made it safe."""
    met = StopMet("gas-odour", 1, time=EARLY, told=UNTOLD)
    terminal = Lines(
        "3", "", "nobody told him", "tomorrow", "8:50", "he came at 10:15",
        DONE, "y", "0 % LEL", "y", "10:10", "10:30",
    )  # fmt: skip
    result = whole_result(shipped, terminal, met)
    assert result.called == "2026-11-26 10:15" and result.told.when == "2026-11-26 10:30"
    assert "On record a licensed gas fitter was not told yet." in terminal.text
    assert terminal.asked.count("When were they told, or when did they come?") == 5
    assert "That is before the STOP of 2026-11-26 09:00" in terminal.text
    assert "That is not after 2026-11-26 10:15" in terminal.text


def test_u_goes_back_over_when_they_were_told(shipped: Knowledge) -> None:
    met = StopMet("gas-odour", 1, time=EARLY, told=UNTOLD)
    terminal = Lines("3", "u", "1", "10:15", "u", "10:20", DONE, "y", "0 % LEL", "y", "10:30")
    result = whole_result(shipped, terminal, met)
    assert (result.called, result.told.by) == ("2026-11-26 10:20", "fire-service")


@pytest.mark.parametrize("told", ["", "the supervisor, 9:05", "the gas company, 9:05"])
def test_who_is_not_on_record_as_untold_is_not_asked(told: str, shipped: Knowledge) -> None:
    met = StopMet("gas-odour", 1, time=EARLY, told=told)
    assert whole_result(shipped, Lines("3", DONE, "y", "0 % LEL", "y", "10:30"), met).called == ""


def test_when_they_were_told_is_kept_and_stands_in_the_report(reasoner: Reasoner) -> None:
    shipped = reasoner.knowledge
    events: list[Event] = [
        Started(complaint="no-heat", unit={"heat": "gas"}, name="RTU-7"),
        DangerReported("gas-odour", "i smell gas", test="combustible-gas-sweep"),
        VisitEnded("stopped", UNTOLD, "2026-11-26 09:10"),
    ]  # fmt: skip
    book = book_of(shipped, [replace(event, time=EARLY) for event in events])
    assert (
        reopened(reasoner, book, Lines("6", "3", "9:40", DONE, "y", "0 % LEL", "y", "11:30"))
        is True
    )
    (stop,) = stops_account(shipped, book.state)
    assert stop["called"] == "2026-11-26 09:40" and stop["reported"] == "i smell gas"
    again = replay(shipped, [event_of(record_of(event)) for event in book.events])
    assert again.stops == book.state.stops


def test_a_thunderstorm_is_waited_out_by_the_clock(
    reasoner: Reasoner, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Regression: the supervisor's word lifted it after a minute."""
    shipped = reasoner.knowledge
    events: list[Event] = [
        Started(complaint="no-heat", unit={"heat": "gas"}, name="RTU-7"),
        DangerReported("lightning", "thunder", test="thunder-waited-out"),
        VisitEnded("stopped", "the boss", "2026-11-26 09:00"),
    ]  # fmt: skip
    book = book_of(shipped, [replace(event, time=EARLY) for event in events])
    monkeypatch.setattr(clock, "now", lambda: NOW.replace(hour=9, minute=29))
    terminal = Lines("3", "1", "1", "waited", "09:28")
    assert reopened(reasoner, book, terminal) is False and not terminal.asked
    assert "30 minutes have to pass" in terminal.text
    assert "not before 2026-11-26 09:30" in terminal.text
    monkeypatch.setattr(clock, "now", lambda: NOW.replace(hour=9, minute=31))
    terminal = Lines("3", "1", "1", "waited", "09:29", "just now")
    assert reopened(reasoner, book, terminal) is True
    assert len([line for line in terminal.asked if line == "When was that?"]) == 2


THUNDER = DangerReported("lightning", "thunder", test="thunder-waited-out")


def stopped_since_nine(shipped: Knowledge, *came: tuple[int, Event]) -> VisitBook:
    """A visit of nine o'clock, what came of it at which minute, handed over at 9:26."""
    begun = Started(complaint="no-heat", unit={"heat": "gas"}, name="RTU-7")
    over = VisitEnded("stopped", "the boss", "2026-11-26 09:26")
    at: tuple[tuple[int, Event], ...] = ((0, begun), *came, (26, over))
    nine = NOW.replace(hour=9)
    return book_of(shipped, [replace(e, time=stamp(nine.replace(minute=m))) for m, e in at])


@pytest.mark.parametrize(
    ("again", "waits_until"),
    [
        (Halted("lightning", "thunder-waited-out"), ""),
        (THUNDER, "09:55"),
    ],
)
def test_a_storm_is_waited_out_from_the_last_thunder_and_not_from_another_stop(
    again: Event, waits_until: str, reasoner: Reasoner, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Told of anew it begins anew; met once more behind another STOP it stands since before."""
    gas = DangerReported("gas-odour", "i smell gas", test="combustible-gas-sweep")
    book = stopped_since_nine(reasoner.knowledge, (0, THUNDER), (20, gas), (25, again))
    monkeypatch.setattr(clock, "now", lambda: NOW.replace(hour=9, minute=40))
    terminal = Lines("q")
    assert reopened(reasoner, book, terminal) is False
    assert bool(terminal.asked) is not bool(waits_until)
    assert f"not before 2026-11-26 {waits_until}" in terminal.text or not waits_until


def test_what_stood_before_a_storm_does_not_shorten_its_wait(
    reasoner: Reasoner, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As a record of other rules may have it: the last STOP on it stands since before the storm."""
    limit = Halted("safety-does-not-open", "main-limit")
    stuck = Answered("main-limit", outcomes=("stuck",))
    came = ((0, stuck), (1, limit), (20, THUNDER), (25, limit))
    book = stopped_since_nine(reasoner.knowledge, *came)
    monkeypatch.setattr(clock, "now", lambda: NOW.replace(hour=9, minute=49))
    terminal = Lines("q")
    assert reopened(reasoner, book, terminal) is False and not terminal.asked
    assert "not before 2026-11-26 09:55" in terminal.text
