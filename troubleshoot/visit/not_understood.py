"""Events of a kept visit that today's rules do not understand: kept in their place, without weight.

They stay in the chain because undo counts answers, and because hands may have done what nobody can
read any more: what others could have changed is asked again after each.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.transitions import expire
from troubleshoot.visit.event_shapes import Event
from troubleshoot.visit.visit_state import VisitState

NOT_UNDERSTOOD: Final = "not-understood"


def in_place_of(event: Event) -> Event:
    """What stands in the chain where an event is not understood."""
    was = event.get("event")
    return {**event, "event": NOT_UNDERSTOOD, "was": was if isinstance(was, str) else ""}


def kind_of(event: Event) -> str:
    """The kind of an event, as it was written."""
    return str(event["was"] if event["event"] == NOT_UNDERSTOOD else event["event"])


def not_understood(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    """Nothing is learnt, nothing is on its way, and the work is as after an absence."""
    return replace(state, work=expire(state.work, "resumed"), aim=None, fresh=None)
