"""Taking words back, and putting the unit's data right: never what a STOP rests on.

What halted a visit is an event that undo does not reach past. A STOP for one step rests on its
finding alone, so that finding stays said until it is taken afresh.
"""

from __future__ import annotations

from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.said import Voice
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.state import VisitState

A_STOP_RESTS_ON_IT: Final = (
    "A STOP rests on that, so it stays said. Only the same finding, taken afresh, lifts it; a note "
    "tells what was wrong."
)


def take_back(book: VisitBook, voice: Voice, reasoner: Reasoner) -> None:
    """Take the last answer back, unless a STOP would go with it."""

    def refused(then: VisitState) -> str:
        return A_STOP_RESTS_ON_IT if lifts_a_stop(reasoner, book.state, then) else ""

    voice.say(book.undo(refused))


def lifts_a_stop(reasoner: Reasoner, now: VisitState, then: VisitState) -> bool:
    """Whether a STOP that stands now, of whatever scope, would not stand then."""
    stand = _stops(reasoner, now)  # first: what follows from now is kept ready
    return not stand <= _stops(reasoner, then)


def _stops(reasoner: Reasoner, state: VisitState) -> frozenset[str]:
    return frozenset(f.hazard.id for f in conclude_visit(reasoner, state).hazards if f.stops)
