"""At a STOP: words besides the way on, a reply as data, and several STOPs of one visit."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tests.cli.lines import Lines, book_of, held
from tests.dialogue.test_standing import DAMAGED, Shelf
from tests.dialogue.test_stopped import CRACK, DONE, NOW, STUCK, TOLD, at_the_stop, kinds, visit
from troubleshoot.cli import clock
from troubleshoot.dialogue.prompts import AtStop, Ended
from troubleshoot.dialogue.reopening import reopen
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.stopped import stopped
from troubleshoot.dialogue.talk import Leave, Talk
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.hazard_words import also_stands
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.absence import stamp
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import (
    Answered,
    DangerReported,
    Reopened,
    Started,
    TakenAfresh,
    VisitEnded,
)

HEAT = DangerReported("roof-heat", "dizzy", test="fit-to-go-on")
NO_GLOVES = DangerReported("live-work", "no gloves", test="fit-for-live-work")
GAS = DangerReported("gas-odour", "gas", test="combustible-gas-sweep")
NINE, ELEVEN = (stamp(NOW.replace(hour=hour)) for hour in (9, 11))
WHICH_UNIT = "Which unit is it? Its name meets whoever comes next >"

REPLACED, SOUND = "1", "sound"


@pytest.fixture(autouse=True)
def _noon(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(clock, "now", lambda: NOW)


@pytest.fixture(scope="module")
def decider(shipped: Knowledge) -> Decider:
    return Decider(shipped)


@pytest.mark.parametrize("typed", ["u", "U", "undo"])
@pytest.mark.parametrize(("found", "ways"), [(CRACK, "over"), (STUCK, "again, over")])
def test_undo_is_refused_and_what_goes_on_is_said(
    typed: str, found: Answered, ways: str, decider: Decider
) -> None:
    """A STOP that could be taken back by a letter would be."""
    book, terminal = visit(decider.knowledge, found), Lines(typed, "q")
    with pytest.raises(Leave):
        at_the_stop(decider, book, terminal)
    assert f"Undo never reaches past a STOP. {ways}, or q." in terminal.said
    assert "undone" not in kinds(book)


@pytest.mark.parametrize("found", [CRACK, STUCK])
def test_u_behind_a_way_on_leads_back_to_the_stop(found: Answered, decider: Decider) -> None:
    ways = ("over",) if found is CRACK else ("over", "again")
    for way in ways:
        book, terminal = visit(decider.knowledge, found), Lines(way, "u", "q")
        with pytest.raises(Leave):
            at_the_stop(decider, book, terminal)
        assert f"{', '.join(reversed(ways))}, or q." in terminal.said
        assert kinds(book) == ["start", "answer", "stop"]


def test_the_unit_is_asked_for_whole_until_it_is_named_or_has_no_name(decider: Decider) -> None:
    book, terminal = visit(decider.knowledge, CRACK, name=""), Lines("over", "u", "RTU 9", TOLD)
    assert at_the_stop(decider, book, terminal) is False
    assert terminal.asked[1:3] == [WHICH_UNIT] * 2 and book.state.name == "RTU 9"
    refused = "Undo never reaches past a STOP. Give the name, or Enter for none."
    assert refused in terminal.said


def test_a_unit_that_is_named_only_at_the_hand_over_meets_what_stands_over_it(
    decider: Decider,
) -> None:
    book, terminal = visit(decider.knowledge, CRACK, name=""), Lines("over", "rtu 7", TOLD)
    conclusions = conclude_visit(decider.reasoner, book.state)
    decision = decider.decide(book.state, conclusions)
    shelf: Any = Shelf(decider.knowledge, DAMAGED)

    def here(voice: Voice) -> Talk[Ended | None]:
        return stopped(book, voice, decision, conclusions, shelf)

    held(decider.knowledge, terminal, here)
    assert terminal.said.index(DAMAGED.lines[0]) < terminal.said.index("Taken as: 12:00 pm today.")


def test_a_reply_that_is_data_already_is_kept_as_it_is(decider: Decider) -> None:
    """A door that has no keyboard answers a STOP with the event itself."""
    book = visit(decider.knowledge, STUCK)
    conclusions = conclude_visit(decider.reasoner, book.state)
    talk = stopped(book, Voice(), decider.decide(book.state, conclusions), conclusions)
    assert isinstance(next(talk), AtStop)
    with pytest.raises(StopIteration) as end:
        talk.send(TakenAfresh(STUCK.test, None, done=DONE))
    assert end.value.value is None and kinds(book)[2:] == ["stop", "take-afresh"]


@pytest.mark.parametrize(
    ("dangers", "goes_on"), [((HEAT, NO_GLOVES), True), ((NO_GLOVES, HEAT), False)]
)
def test_of_two_stops_the_one_that_is_told_decides_whether_there_is_a_wait(
    dangers: tuple[DangerReported, ...], goes_on: bool, decider: Decider
) -> None:
    book = visit(decider.knowledge, *dangers)
    terminal = Lines("again", "1", "q")
    if goes_on:
        assert at_the_stop(decider, book, terminal) is True
    else:
        with pytest.raises(Leave):
            at_the_stop(decider, book, terminal)
    assert ("30 minutes have to pass" not in terminal.text) is goes_on


def test_at_the_end_of_a_hand_over_all_that_stands_is_named_where_nobody_misses_it(
    decider: Decider,
) -> None:
    terminal = Lines("over", TOLD)
    terminal.bold, terminal.width = True, 1_000
    assert at_the_stop(decider, visit(decider.knowledge, GAS, CRACK), terminal) is False
    closed = terminal.said.index("The visit is closed as stopped.")
    other = also_stands(decider.knowledge.hazards[GAS.hazard])
    assert f"\x1b[1m{other}\x1b[0m" in terminal.said[closed:]


def test_a_reading_from_before_the_last_stop_reopens_nothing(shipped: Knowledge) -> None:
    """Whatever the hand-over was for, another danger has been met since."""
    over = VisitEnded("stopped", "gas company 11:30", "2026-11-26 11:30")
    events = [replace(event, time=NINE) for event in (Started(complaint="no-heat"), GAS)]
    later = [replace(event, time=ELEVEN) for event in (NO_GLOVES, over)]
    book = book_of(shipped, [*events, *later])
    terminal = Lines("6", "3", "1", "y", "0 % LEL", "y", "10:30", "11:45")
    assert held(shipped, terminal, lambda voice: reopen(book, voice, Reasoner(shipped)))
    assert "That is not after 2026-11-26 11:00" in terminal.text
    event = book.events[-1]
    assert isinstance(event, Reopened) and event.hazard == GAS.hazard


@pytest.mark.parametrize(
    ("told", "typed", "said"),
    [
        (
            "the owner, 11:10", (REPLACED, "y", SOUND, "y", "11:05", "11:45"),
            "That is before the hand-over of 2026-11-26 11:10",
        ),
        (
            "the owner, 11:10; not told yet: gas fitter",
            ("11:40", REPLACED, "y", SOUND, "y", "11:45"),
            "On record a licensed gas fitter was not told yet.",
        ),
    ],
)  # fmt: skip
def test_whichever_stop_is_told_its_hand_over_is_that_of_the_last(
    told: str, typed: tuple[str, ...], said: str, decider: Decider
) -> None:
    """The visit was handed over as a whole."""
    found = (Started(complaint="no-heat"), CRACK, NO_GLOVES)
    over = VisitEnded("stopped", told, "2026-11-26 11:10", time=ELEVEN)
    book = book_of(decider.knowledge, [*(replace(event, time=NINE) for event in found), over])
    terminal = Lines("6", "1", *typed)
    assert held(decider.knowledge, terminal, lambda voice: reopen(book, voice, decider.reasoner))
    assert "was stopped: heat exchanger breach." in terminal.text
    assert said in terminal.text and not terminal.typed
