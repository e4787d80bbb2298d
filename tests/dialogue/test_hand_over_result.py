"""Handing a STOP over, question by question: who was told and when, and what came of it.

Every question is asked whole until it is answered, a danger is heard at each, and the record says
who does not know of the STOP yet.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

import pytest

from tests.cli.lines import Lines, book_of, held
from troubleshoot.cli import clock
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hand_over_result import MISSING, ask_remedy, ask_result
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.in_danger import IN_DANGER
from troubleshoot.dialogue.talk import DangerCalled
from troubleshoot.dialogue.who_was_told import ask_told
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.record import NOT_TOLD_YET, StopMet
from troubleshoot.safety.stops.remedies import remedies_of
from troubleshoot.visit.absence import stamp
from troubleshoot.visit.events import DangerReported, Started

NOW = datetime.fromisoformat("2026-11-26T12:00:00+00:00")
NINE, ELEVEN = (stamp(NOW.replace(hour=hour)) for hour in (9, 11))
GAS = "gas-odour"
WHO, THEM_TOO = "Who was told, and when?", "Who of them was told, and when? Enter if nobody yet >"
WHEN_TOLD = "When were they told?"
WHAT_SHOWS_IT = "What did they read, in % LEL or % LFL or ppm?"
BOSS, UTILITY = "the boss 11:10", "gas company 11:15"
DONE, READ = "1", "0 % LEL"
FIRE, HINT = "and i see fire", "the belt has his sleeve wound round the shaft"
FOR = "gas utility or fire service, then a licensed gas fitter"


@pytest.fixture(autouse=True)
def _noon(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(clock, "now", lambda: NOW)


def stopped(shipped: Knowledge, *later: str) -> VisitBook:
    """A visit that a smell of gas stopped at nine, and later other dangers at eleven."""
    dangers = [DangerReported(hazard, "x", time=ELEVEN) for hazard in later]
    gas = DangerReported(GAS, "x", test="combustible-gas-sweep", time=NINE)
    return book_of(shipped, [Started(complaint="no-heat", time=NINE), gas, *dangers])


def told(book: VisitBook, *typed: str) -> tuple[Lines, str]:
    """What somebody is asked, and what is kept, of who was told of the gas."""
    knowledge, terminal = book.knowledge, Lines(*typed)
    terminal.bold = True
    gas = knowledge.hazards[GAS]
    return terminal, held(
        knowledge, terminal, lambda voice: ask_told(book, Listener(knowledge, voice, (GAS,)), gas)
    )


def result(shipped: Knowledge, *typed: str, told: str = "") -> Lines:
    """What somebody is asked who reports what came of the gas."""
    met, terminal = StopMet(GAS, 1, time=NINE, told=told), Lines(*typed)
    book = book_of(shipped, ())
    held(shipped, terminal, lambda voice: ask_result(book, voice, met))
    return terminal


def test_whom_the_stop_is_for_being_told_is_enough(shipped: Knowledge) -> None:
    terminal, kept = told(stopped(shipped), UTILITY)
    assert kept == UTILITY and terminal.asked == [WHO]
    assert terminal.said == ["Taken as: 11:15 am today."]


def test_who_is_missing_among_those_told_is_asked_about(shipped: Knowledge) -> None:
    terminal, kept = told(stopped(shipped), BOSS, UTILITY)
    assert kept == f"{BOSS}; {UTILITY}" and terminal.asked == [WHO, THEM_TOO]
    assert terminal.said == [
        "Taken as: 11:10 am today.",
        f"\x1b[1mIt is for: {FOR}. Tell them too.\x1b[0m",
        "Taken as: 11:15 am today.",
    ]


@pytest.mark.parametrize("typed", ["", "q", "nobody", "the owner, 11:20", "no gas company yet"])
def test_the_record_says_who_does_not_know_yet(typed: str, shipped: Knowledge) -> None:
    """Whoever reopens it has to know that those who make it safe were never told."""
    terminal, kept = told(stopped(shipped), BOSS, typed)
    assert kept == f"{BOSS}; {NOT_TOLD_YET}{FOR}" and terminal.asked == [WHO, THEM_TOO]
    assert terminal.said[-1] == (
        "Tell them before you leave. The record says that they do not know yet."
    )


def test_a_time_that_is_not_said_is_asked_for_at_either_question(shipped: Knowledge) -> None:
    typed = ("the boss", "no idea", "11:10", "gas company", "1115")
    terminal, kept = told(stopped(shipped), *typed)
    assert kept == "the boss, 11:10; gas company, 1115"
    assert terminal.asked == [WHO, WHEN_TOLD, WHEN_TOLD, THEM_TOO, WHEN_TOLD]
    assert "Give the time as 14:30, 1430, 2:30 pm, just now or 10 min ago." in terminal.said[0]
    assert [line for line in terminal.said if line.startswith("Taken as")] == [
        "Taken as: 11:10 am today.",
        "Taken as: 11:15 am today.",
    ]


def test_who_is_still_to_be_told_is_nobody_told(shipped: Knowledge) -> None:
    typed = ("boss tomorrow", BOSS, "gas company tomorrow", UTILITY)
    terminal, kept = told(stopped(shipped), *typed)
    assert kept == f"{BOSS}; {UTILITY}" and terminal.asked == [WHO, WHO, THEM_TOO, THEM_TOO]
    assert sum("That is still to come" in line for line in terminal.said) == 2


def test_u_leads_back_to_who_was_told(shipped: Knowledge) -> None:
    typed = ("gas company", "u", "the boss", "undo", BOSS, "u", UTILITY)
    terminal, kept = told(stopped(shipped), *typed)
    assert kept == UTILITY
    assert terminal.asked == [WHO, WHEN_TOLD, WHO, WHEN_TOLD, WHO, THEM_TOO, WHO]


@pytest.mark.parametrize(
    "typed", [("gas company 10:30", UTILITY), ("gas company", "10:30", "11:15")]
)
def test_who_was_told_of_the_first_stop_knows_nothing_of_the_next(
    typed: tuple[str, ...], shipped: Knowledge
) -> None:
    terminal, kept = told(stopped(shipped, "lightning"), *typed)
    assert kept.endswith("11:15") and "10:30" not in kept
    assert "That is before the STOP of 2026-11-26 11:00" in terminal.text


def test_of_a_stop_that_is_not_on_record_any_hour_of_the_day_is_taken(shipped: Knowledge) -> None:
    assert told(book_of(shipped, ()), "gas company 0:10")[1] == "gas company 0:10"


def test_a_day_on_which_the_time_says_nothing_is_kept_and_not_read(shipped: Knowledge) -> None:
    """Which of its hours was understood is said only where one was."""
    terminal, kept = told(stopped(shipped), "gas company, as on friday", "11:15")
    assert kept == "gas company, as on friday, 11:15" and terminal.asked == [WHO, WHEN_TOLD]
    assert not [line for line in terminal.said if line.startswith("Taken as")]


@pytest.mark.parametrize(
    "typed",
    [(f"{UTILITY} {FIRE}",), (BOSS, f"{UTILITY} {FIRE}"), ("gas company", f"11:15 {FIRE}")],
)
def test_another_danger_is_heard_beside_who_was_told(
    typed: tuple[str, ...], shipped: Knowledge
) -> None:
    with pytest.raises(DangerCalled, match=FIRE):
        told(stopped(shipped), *typed)


@pytest.mark.parametrize(("at", "typed"), [(1, (f"{UTILITY}, {HINT}",)),
                                           (2, (BOSS, f"{UTILITY}, {HINT}"))])  # fmt: skip
def test_what_hints_at_a_danger_is_asked_about_before_it_is_taken(
    at: int, typed: tuple[str, ...], shipped: Knowledge
) -> None:
    asked, kept = told(stopped(shipped), *typed, "n")
    assert asked.asked[at] == f"{IN_DANGER.prompt.question}" and kept == "; ".join(typed)
    with pytest.raises(DangerCalled, match=HINT):
        told(stopped(shipped), *typed, "y")


@pytest.mark.parametrize("at", [1, 3])
def test_so_it_is_in_the_result(at: int, shipped: Knowledge) -> None:
    typed = ["3", DONE, "y", READ, "y", "09:30"]
    typed[at] += f", {HINT}"
    again = DONE if at == 1 else READ  # beside it no other words are taken
    asked = result(shipped, *typed[: at + 1], "n", again, *typed[at + 1 :]).asked
    assert asked[at + 1] == IN_DANGER.prompt.question and len(asked) == 8
    typed[at] = typed[at].replace(HINT, FIRE)
    with pytest.raises(DangerCalled, match=FIRE):
        result(shipped, *typed)


def test_where_none_of_it_was_done_the_stop_stands(shipped: Knowledge) -> None:
    terminal = Lines(str(len(remedies_of(shipped.hazards[GAS]))))
    done = held(
        shipped,
        terminal,
        lambda voice: ask_remedy(Listener(shipped, voice, (GAS,)), "Done?", shipped.hazards[GAS]),
    )
    assert not done and "Then the STOP stands: have it made safe first." in terminal.text


def test_the_danger_that_stopped_the_job_may_be_spoken_of(shipped: Knowledge) -> None:
    """Its own words in what came of it are no new STOP."""
    done = "found a gas leak, new union fitted, bubble tested"
    assert len(result(shipped, "3", done, DONE, "y", READ, "y", "09:30").asked) == 7


def test_the_times_that_were_understood_are_said_with_their_day(shipped: Knowledge) -> None:
    """An hour alone may be of either half of the day, and another is a reading of another day."""
    untold = f"{BOSS}; {NOT_TOLD_YET}{FOR}"
    terminal = result(shipped, "3", "10:15", DONE, "y", READ, "y", "10:30", told=untold)
    assert "On record a licensed gas fitter was not told yet." in terminal.said
    assert [line for line in terminal.said if line.startswith("Taken as")] == [
        "Taken as: 10:15 am today.",
        "Taken as: 10:30 am today.",
    ]


def test_of_what_is_missing_no_more_is_said_than_that(shipped: Knowledge) -> None:
    terminal = result(shipped, "3", DONE, "y", "", READ, "y", "09:30")
    assert terminal.said.count(MISSING) == 1 and terminal.said[-2:] == [
        MISSING, "Taken as: 9:30 am today.",
    ]  # fmt: skip
    assert terminal.asked.count(WHAT_SHOWS_IT) == 2


def test_u_at_a_later_part_says_nothing_of_the_first(shipped: Knowledge) -> None:
    said = result(shipped, "3", "u", "3", DONE, "y", READ, "y", "09:30").text
    assert "Nothing of the result has been told yet" not in said


def test_a_fresh_reading_is_one_after_they_came_not_after_the_stop(shipped: Knowledge) -> None:
    met = replace(StopMet(GAS, 1, time=ELEVEN), told=f"{NOT_TOLD_YET}{FOR}")
    terminal = Lines("3", "11:20", DONE, "y", READ, "y", "11:10", "11:20", "11:21")
    book = book_of(shipped, ())
    found = held(shipped, terminal, lambda voice: ask_result(book, voice, met))
    assert found.called == "2026-11-26 11:20" and found.told.when == "2026-11-26 11:21"
    assert "That is not after 2026-11-26 11:20" in terminal.text


@pytest.mark.parametrize(
    "alone", ["myself, apprentice, just now", "me, the apprentice, just now",
              "I am the supervisor, 11:10", "I, supervisor, 11:10", "ourselves, technician 11:10"],
)  # fmt: skip
def test_whoever_is_told_is_somebody_else(alone: str, shipped: Knowledge) -> None:
    """Regression: an apprentice handed a STOP over to himself."""
    terminal, kept = told(stopped(shipped), alone, BOSS, "me, a gas fitter, 11:12", UTILITY)
    assert kept == f"{BOSS}; {UTILITY}" and terminal.asked == [WHO, WHO, THEM_TOO, THEM_TOO]
    assert terminal.text.count("Somebody else has to know of it before you leave.") == 2


@pytest.mark.parametrize("typed", ["the apprentice's boss, told by me 11:10", "I told boss 11:10"])
def test_who_has_told_somebody_may_say_so(typed: str, shipped: Knowledge) -> None:
    _, kept = told(stopped(shipped), typed, UTILITY)
    assert kept == f"{typed}; {UTILITY}"


@pytest.mark.parametrize("who", ["gas guy", "the gas guys", "gas man", "gas tech", "the gas people",
                                 "gas fitter", "gas company", "GAS CREW"])  # fmt: skip
@pytest.mark.parametrize("hazard", ["carbon-monoxide-in-room", "smoke-or-heat-now"])
def test_who_is_called_after_the_gas_is_no_gas(who: str, hazard: str, shipped: Knowledge) -> None:
    """Regression: it was a STOP for a gas leak, which nothing takes back."""
    kept = told_of(shipped, hazard, f"{who}, 11:15", f"fire service 11:16; {who} 11:16")
    assert who in kept
    with pytest.raises(DangerCalled):
        told_of(shipped, hazard, f"{who} 11:15, gas is leaking at the union")


def told_of(shipped: Knowledge, hazard: str, *typed: str) -> str:
    """What is kept of who was told of a STOP for another danger than gas."""
    met, terminal = shipped.hazards[hazard], Lines(*typed)
    book = book_of(shipped, [Started(complaint="no-heat", time=NINE)])
    return held(
        shipped, terminal, lambda voice: ask_told(book, Listener(shipped, voice, (hazard,)), met)
    )


def test_so_it_is_in_what_they_did(shipped: Knowledge) -> None:
    met = StopMet("smoke-or-heat-now", 1, time=NINE)
    terminal = Lines("1", "gas guy made the lug new", "2", "y", "cleared", "y", "09:30")
    book = book_of(shipped, ())
    held(shipped, terminal, lambda voice: ask_result(book, voice, met))
    assert not terminal.typed
