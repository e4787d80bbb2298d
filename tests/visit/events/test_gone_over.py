"""What an undo leaves standing is gone over again: nothing of it is lost, nothing else comes back.

A repair said live is told so in its report; what the undo itself made unsure is no part of that.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.visit.events.effects import UNIT
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import (
    Aimed,
    Answered,
    Event,
    Noted,
    Repaired,
    Shown,
    Skipped,
    Started,
    StepDone,
    Undone,
    after,
    replay,
    replaying,
)
from troubleshoot.visit.state import VisitState

START = Started(complaint="no-cooling", unit=UNIT)
ICE, WIND = Noted("ice on the coil"), Noted("a north wind")
UNDO = Undone()


def answer(outcome: str = "always") -> Event:
    """Each is another one: the chain knows its events apart, however alike they are."""
    return Answered("weather-pattern", outcomes=(outcome,))


@pytest.mark.parametrize(
    ("events", "answers", "notes"),
    [
        ([answer(), ICE, UNDO], 0, ("ice on the coil",)),
        ([ICE, answer(), WIND, UNDO], 0, ("ice on the coil", "a north wind")),
        ([answer(), answer(), ICE, WIND, UNDO], 1, ("ice on the coil", "a north wind")),
        ([answer(), answer(), ICE, UNDO, WIND, UNDO], 0, ("ice on the coil", "a north wind")),
        ([answer(), ICE, UNDO, answer(), WIND], 1, ("ice on the coil", "a north wind")),
    ],
)
def test_what_was_said_after_what_is_taken_back_still_stands(
    events: list[Event], answers: int, notes: tuple[str, ...], shipped: Knowledge
) -> None:
    """The answer before a note goes, and not the note with it."""
    state = replay(shipped, [START, *events])
    assert (len(state.answers), state.notes) == (answers, notes)


OPEN_LIVE = [
    StepDone(step, (outcome,))
    for step, outcome in (
        ("roof-conditions", "safe"), ("tell-occupants", "told"), ("combustible-gas-sweep", "none"),
        ("stop-by-controls", "stopped"), ("arc-clothing-on", "dressed"),
        ("panels-off-energised", "open"),
    )
]  # fmt: skip


def test_a_repair_after_an_undo_is_kept_as_if_what_is_taken_back_had_never_been_said(
    shipped: Knowledge,
) -> None:
    """A lock that is taken back makes the power unsure, though hands were in a live unit."""
    mended = Repaired("condenser-fan-capacitor-weak")
    said = [START, *OPEN_LIVE, StepDone("lockout", ("locked",)), UNDO, mended]
    assert not replay(shipped, said).repairs[-1].live
    taken_back = replay(shipped, [*said, answer(), UNDO])
    assert taken_back.repairs == replay(shipped, [START, *OPEN_LIVE, mended]).repairs
    assert taken_back.repairs[-1].live and taken_back.work.power == "unsure"


def test_nothing_is_on_its_way_after_an_undo_nor_on_the_screen(shipped: Knowledge) -> None:
    before = [START, Aimed("ignition-trials"), Shown("weather-pattern")]
    skipped = [*before, Skipped("heat-exchanger-look")]
    assert replay(shipped, before).shown is not None
    shown = replay(shipped, [*skipped, UNDO])
    assert (shown.aim, shown.shown) == (None, None)


NINE, TEN = "2026-11-26T09:00:00+00:00", "2026-11-26T10:00:00+00:00"


def test_an_undo_was_told_at_its_time(shipped: Knowledge) -> None:
    """A clock set back before it is seen by what is told next."""
    told = [replace(START, time=NINE), replace(answer(), time=NINE), replace(UNDO, time=TEN)]
    state = replay(shipped, told)
    assert state.latest_time == TEN


def test_what_is_gone_over_once_is_not_gone_over_for_the_next_undo(
    shipped: Knowledge, monkeypatch: pytest.MonkeyPatch
) -> None:
    gone_over: list[Event] = []

    def noted(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
        gone_over.append(event)
        return after(knowledge, state, event)

    monkeypatch.setattr(replaying, "after", noted)
    first, second = answer(), answer()
    replay(shipped, [START, first, ICE, UNDO, second, WIND, UNDO])
    assert gone_over == [START, first, ICE, ICE, second, WIND, WIND]
