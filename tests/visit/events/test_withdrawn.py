"""A reading said to be wrong beside another stays on record, and is asked anew."""

from __future__ import annotations

from dataclasses import replace

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.readings.withdrawal import ASKED_ANEW
from troubleshoot.visit.events import (
    Answered,
    ReadingWithdrawn,
    SaysNothing,
    Started,
    Undone,
    replay,
)

START = Started(complaint="weak-cooling", unit={"circuits": "2", "refrigerant": "R-410A"})
FIRST = Answered("head-pressure", ("circuit 1",), text="62")
OTHER = Answered("head-pressure", ("circuit 2",), text="340")
GONE = ReadingWithdrawn("head-pressure", ("circuit 1",))


def test_the_last_reading_there_counts_for_nothing(shipped: Knowledge) -> None:
    again = replace(FIRST, text="64")
    state = replay(shipped, [START, FIRST, again, OTHER, GONE])
    assert [answer.valid for answer in state.answers] == [None, False, None]
    assert state.answers[1].why_invalid in ASKED_ANEW and state.answers[1].text == "64"


@pytest.mark.parametrize("events", [[OTHER], [FIRST, GONE]])
def test_where_none_counts_there_is_none(shipped: Knowledge, events: list[Answered]) -> None:
    with pytest.raises(SaysNothing):
        replay(shipped, [START, *events, GONE])


def test_undo_lets_it_count_again(shipped: Knowledge) -> None:
    state = replay(shipped, [START, FIRST, GONE, Undone()])
    assert [answer.valid for answer in state.answers] == [None]


def test_without_a_place_it_is_the_reading_of_all_of_them(shipped: Knowledge) -> None:
    """One number that was told for both circuits is withdrawn for both."""
    shared = Answered("head-pressure", text="62", shared=True)
    state = replay(shipped, [START, FIRST, shared, ReadingWithdrawn("head-pressure")])
    assert [answer.valid for answer in state.answers] == [None, False]


@pytest.mark.parametrize(
    "since",
    [
        Answered("suction-pressure", ("circuit 1",), text="118"),
        Answered("head-pressure", ("circuit 1",), ("high",)),
    ],
)
def test_what_was_said_since_that_is_no_reading_of_it_stays(
    since: Answered, shipped: Knowledge
) -> None:
    state = replay(shipped, [START, FIRST, since, GONE])
    assert [answer.valid for answer in state.answers] == [False, None]
