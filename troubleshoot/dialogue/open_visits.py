"""The visits that are open: told by unit and call, and gone on with by number, visit or unit."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.shelf import Shelf
from troubleshoot.dialogue.talk import Talk
from troubleshoot.dialogue.yes_no import YesNo, yes_no_or, yes_or_no
from troubleshoot.outside.numbers import choice
from troubleshoot.visit.kept.unit_names import same_unit
from troubleshoot.visit.telling.lapses import before_going_on

OPEN_ONES: Final = "Visits that are open, the latest first:"
MOST_LISTED: Final = 8
"""Of them; a screen has twenty lines."""


def which_open(shelf: Shelf, voice: Voice, waiting: Sequence[str]) -> Talk[str]:
    """The open visit that is gone on with; empty for none. Raises Back, Leave, DangerCalled."""
    if len(waiting) > 1:
        voice.say(OPEN_ONES)
        for number, visit in enumerate(waiting[:MOST_LISTED], start=1):
            voice.say(f"{number} {_said_open(shelf, visit)}", 1)
        if (more := len(waiting) - MOST_LISTED) > 0:
            voice.say(f"and {more} more, in: troubleshoot visits", 1)
    question = YesNo(
        f"Visit {waiting[0]} is open. Go on with it?",
        enter=True,
        besides="the number, visit or unit of another that is open",
    )

    def named(typed: str) -> str | None:
        number = choice(typed, len(waiting)) if len(waiting) > 1 else None
        if number is not None:
            return waiting[number - 1]
        if typed in waiting:
            return typed
        return next(_of_unit(shelf, waiting, typed), None)

    wanted = yield from yes_no_or(Listener(shelf.knowledge, voice), question, named)
    if isinstance(wanted, str):
        return wanted
    return waiting[0] if wanted else ""


def say_left_open(shelf: Shelf, voice: Voice, visit: str) -> None:
    """What a visit that is not gone on with has left on its unit, in one line; else nothing."""
    from troubleshoot.safety.work_state import open_items

    state = shelf.state_of(visit)
    left = open_items(state.work)
    if left:
        unit = f", {state.name}" if state.name else ""
        voice.say(f"Visit {visit}{unit}, stays open. Left there: {'; '.join(left)}.")


def open_on(shelf: Shelf, waiting: Sequence[str], name: str) -> str:
    """The latest open visit to a unit that was just named; empty for none.

    Not the first of all, which was asked about before, nor one that another window has open.
    """
    latest = next(_of_unit(shelf, waiting, name), "") if name else ""
    asked_about = latest == waiting[0] if waiting else True
    return "" if asked_about or latest in shelf.elsewhere(name) else latest


def whether_to_go_on(shelf: Shelf, voice: Voice, visit: str) -> Talk[bool]:
    """Whether an open visit to the unit that was named is gone on with. Raises Back, Leave."""
    state = shelf.state_of(visit)
    for line in before_going_on(state.name, state.work):
        voice.say(line, strong=True)
    question = YesNo(f"{_said_open(shelf, visit)} is open. Go on with it?", enter=True)
    return (yield from yes_or_no(Listener(shelf.knowledge, voice), question))


def _of_unit(shelf: Shelf, waiting: Sequence[str], name: str) -> Iterator[str]:
    return (visit for visit in waiting if same_unit(shelf.state_of(visit).name, name))


def _said_open(shelf: Shelf, visit: str) -> str:
    """An open visit in words: its name, its unit, and the call."""
    state = shelf.state_of(visit)
    complaint = shelf.knowledge.complaints.get(state.complaint or "")
    call = state.words or (complaint.says if complaint else "")
    unit = " to ".join(filter(None, (f"Visit {visit}", state.name)))
    return f"{unit} ({call})" if call else unit
