"""Undo: which events it takes back, and what it never reaches past.

Undo takes back the words of the last answer, not what hands have done. A STOP, a reported danger,
the hand-over of the job and its reopening are walls: what was said before them stays said, so that
no STOP goes away other than by a fresh finding. What is not understood may have been any of these.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from typing import Final

from troubleshoot.visit.events.answers import Answered, MarkedInvalid, StepDone
from troubleshoot.visit.events.apart import NotUnderstood, Undone, kind_of
from troubleshoot.visit.events.beginning import FactTold
from troubleshoot.visit.events.ending import (
    Closing,
    ProofRead,
    Repaired,
    RepairedBefore,
    RepairWanted,
    VisitEnded,
)
from troubleshoot.visit.events.event import Event
from troubleshoot.visit.events.on_round import FindingsKept, RoundGoneOn, SearchBegun
from troubleshoot.visit.events.state_gone import StateGone
from troubleshoot.visit.events.stops import DangerReported, Halted, Reopened
from troubleshoot.visit.events.way import Aimed, Shown, Skipped
from troubleshoot.visit.events.weighed import Weighed
from troubleshoot.visit.events.withdrawn import ReadingWithdrawn

UNDOABLE: Final = frozenset(
    each.kind
    for each in (
        *(Answered, StepDone, Skipped, FactTold, MarkedInvalid, ReadingWithdrawn),
        *(ProofRead, RepairWanted, Repaired, RepairedBefore, StateGone, Weighed),
        *(FindingsKept, SearchBegun, RoundGoneOn),
    )
)
"""The kinds that undo takes back; of what is not understood, what it was written as counts.

So it does a way out that was chosen."""

WALLS: Final = (Halted, DangerReported, VisitEnded, Reopened, NotUnderstood)


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
        if isinstance(event, Undone):
            kept = _dropped(events, kept, _last(events, kept))
        else:
            kept.append(number)
    return kept


def _last(events: Sequence[Event], kept: list[int]) -> int | None:
    for index in reversed(kept):
        event = events[index]
        if kind_of(event) in UNDOABLE or (isinstance(event, Closing) and event.chosen):
            return index
        if isinstance(events[index], WALLS):
            return None
    return None


def _dropped(events: Sequence[Event], kept: list[int], gone: int | None) -> list[int]:
    """An event left out, and what followed from it: the aim since, the way out after a repair.

    What a person chose to do stays chosen.
    """
    if gone is None:
        return kept
    at = bisect_left(kept, gone)
    closes = isinstance(events[gone], Repaired)

    def follows(event: Event) -> bool:
        if isinstance(event, Aimed):
            return not event.chosen
        return isinstance(event, Shown) or (closes and isinstance(event, Closing))

    return [*kept[:at], *(i for i in kept[at + 1 :] if not follows(events[i]))]
