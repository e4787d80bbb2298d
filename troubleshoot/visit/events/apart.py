"""Events that add nothing to the state: what takes another back, and what nobody understands.

What is not understood stays in the chain because undo counts answers, and because hands may have
done what nobody can read any more: what others could have changed is asked again after each.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import ClassVar

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.transitions import expire
from troubleshoot.visit.events.event import Event
from troubleshoot.visit.events.way import put_aside
from troubleshoot.visit.state import VisitState


@frozen
class Undone(Event):
    """The last answer is taken back; which that is, and what is left, only the chain tells."""

    kind: ClassVar[str] = "undo"

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        """By itself it changes nothing: see `replaying.replay`."""
        return state


@frozen
class NotUnderstood(Event):
    """A record that is no event under today's rules, kept in its place without weight."""

    kind: ClassVar[str] = "not-understood"

    record: Mapping[str, object]

    @property
    def was(self) -> str:
        """The kind of event that was written; empty where it is none."""
        was = self.record.get("event")
        return was if isinstance(was, str) else ""

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        """Nothing is learnt, nothing is on its way, and the work is as after an absence."""
        state = put_aside(knowledge, state)
        return replace(state, work=expire(state.work, "resumed"), fresh=None, fresh_read=False)


def kind_of(event: Event) -> str:
    """The kind of an event, as it was written."""
    return event.was if isinstance(event, NotUnderstood) else event.kind
