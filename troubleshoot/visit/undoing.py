"""Undo: which events it takes back, and what it never reaches past.

Undo takes back the words of the last answer, not what hands have done. A STOP, the hand-over of the
job and its reopening are walls: what was said before them stays said, so that no STOP goes away
other than by a fresh finding. What is not understood may have been any of these.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from typing import Final

from troubleshoot.visit.event_shapes import Event
from troubleshoot.visit.not_understood import NOT_UNDERSTOOD, kind_of

UNDOABLE: Final = frozenset({"answer", "step", "skip", "fact", "invalid", "repaired"})
WALLS: Final = frozenset({"stop", "danger", "end", "reopened", NOT_UNDERSTOOD})


def taken_back(events: Sequence[Event]) -> int | None:
    """Which event one more undo takes back, by its index; nothing where there is none left."""
    return _last(events, _kept(events))


def without(events: Sequence[Event], gone: int) -> list[Event]:
    """The events that stand once the one at `gone` is taken back as well."""
    return [events[index] for index in _dropped(events, _kept(events), gone)]


def standing(events: Sequence[Event]) -> list[Event]:
    """The events that no undo has taken back."""
    return [events[index] for index in _kept(events)]


def _kept(events: Sequence[Event]) -> list[int]:
    """The indexes of the events that no undo has taken back."""
    kept: list[int] = []
    for number, event in enumerate(events):
        if event["event"] == "undo":
            kept = _dropped(events, kept, _last(events, kept))
        else:
            kept.append(number)
    return kept


def _last(events: Sequence[Event], kept: list[int]) -> int | None:
    for index in reversed(kept):
        if kind_of(events[index]) in UNDOABLE:
            return index
        if events[index]["event"] in WALLS:
            return None
    return None


def _dropped(events: Sequence[Event], kept: list[int], gone: int | None) -> list[int]:
    """An event and what was aimed at since left out."""
    if gone is None:
        return kept
    at = bisect_left(kept, gone)
    return [*kept[:at], *(i for i in kept[at + 1 :] if events[i]["event"] != "aim")]
