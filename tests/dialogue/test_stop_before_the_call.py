"""A STOP told of before anybody was asked who they are: that comes before it is taken afresh."""

from __future__ import annotations

import pytest

from tests.cli.lines import Lines
from tests.dialogue.test_stopped import NOW, TOLD, at_the_stop, kinds, visit
from troubleshoot.cli import clock
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.record import HandOverResult
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import DangerReported, Event, Reopened, Resumed, VisitEnded

READY = "fit-for-live-work"
DANGER = DangerReported("live-work", "sparks", test=READY)
DONE, SAID = "1", "All that its orders say was done"
OVER = VisitEnded("stopped", TOLD, "2026-11-26 11:00")
RESULT = HandOverResult("electrician", "lug remade and torqued", "0 V to the cabinet", "")


@pytest.fixture(autouse=True)
def _noon(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(clock, "now", lambda: NOW)


@pytest.fixture(scope="module")
def decider(shipped: Knowledge) -> Decider:
    return Decider(shipped)


def before_the_call(shipped: Knowledge, *events: Event) -> VisitBook:
    """A visit that began with a danger: nobody was asked for the complaint, or who they are."""
    return visit(shipped, DANGER, *events, complaint=None, unit={}, profiles=("technician",))


def test_who_it_is_is_asked_before_what_was_done(decider: Decider) -> None:
    book, terminal = before_the_call(decider.knowledge), Lines("again", "4", DONE)
    assert at_the_stop(decider, book, terminal) is True
    assert kinds(book) == ["start", "danger", "resumed", "take-afresh"]
    assert book.state.profiles == {"electrical"} and book.state.fresh == (READY, None)
    assert book.state.stops[-1].done_here == SAID


SAID_WHO = ("electrical",)


@pytest.mark.parametrize(
    "since",
    [
        (Resumed(45.0, True, SAID_WHO),),
        (Resumed(45.0, True, SAID_WHO), Resumed(45.0, True)),
        (OVER, Reopened("live-work", RESULT, READY, None, SAID_WHO), Resumed(45.0, True)),
    ],
    ids=["gone on", "gone on, and a silence", "reopened"],
)
def test_whoever_has_said_it_since_is_not_asked_again(
    since: tuple[Event, ...], decider: Decider
) -> None:
    book = before_the_call(decider.knowledge, *since)
    asked_before = kinds(book).count("resumed")
    terminal = Lines("again", *([] if OVER in since else [DONE]))
    assert at_the_stop(decider, book, terminal) is True
    assert kinds(book).count("resumed") == asked_before and kinds(book)[-1] == "take-afresh"
    assert book.state.profiles == {*SAID_WHO} and not terminal.typed


def test_an_apprentice_who_says_so_only_then_takes_nothing_back(decider: Decider) -> None:
    """A journal of before may be reopened with nobody asked; no deed of theirs is asked for."""
    since = (OVER, Reopened("live-work", RESULT, READY, None), Resumed(45.0, True))
    book = before_the_call(decider.knowledge, *since)
    assert at_the_stop(decider, book, Lines("again", "1")) is True
    assert "take-afresh" not in kinds(book)
    terminal = Lines("again", "over", TOLD)
    assert at_the_stop(decider, book, terminal) is False
    assert "that is beyond you: hand over to the supervising technician" in terminal.text
