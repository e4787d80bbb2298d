"""What time alone does to a visit: somebody comes back to it, an hour goes by."""

from __future__ import annotations

from dataclasses import replace
from typing import ClassVar

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.transitions import expire, resume_voids
from troubleshoot.visit.events.event import Event
from troubleshoot.visit.events.way import perhaps_begun, put_aside
from troubleshoot.visit.state import VisitState


@frozen
class Resumed(Event):
    """Somebody goes on after an absence; one too long voids what others could have changed.

    What a person chose stays on the way, and all its steps come first again. `minutes_away`: None
    where nobody knows. `profiles`: where it was asked who that is.
    """

    kind: ClassVar[str] = "resumed"

    minutes_away: float | None
    same_day: bool
    profiles: tuple[str, ...] | None = None

    @property
    def voids(self) -> bool:
        """Whether what others could have changed is void."""
        return resume_voids(self.minutes_away, self.same_day)

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        profiles = state.profiles if self.profiles is None else frozenset(self.profiles)
        state = perhaps_begun(knowledge, state, state.fresh)
        state = replace(state, fresh=None, fresh_read=False, profiles=profiles, trying=False)
        if not self.voids:
            return state
        # Reasoning is imported only where a STOP was met: most visits need none of it here.
        from troubleshoot.safety.stops.parts import after_a_break

        stops = state.stops and after_a_break(knowledge, state)
        chosen = state.aim if state.aim_chosen else None
        state = put_aside(knowledge, state)
        work = expire(state.work, "resumed")
        return replace(state, aim=chosen, work=work, stops=stops, failed_steps=())


@frozen
class HourPassed(Event):
    """Weather turns within the hour: the roof is looked at again; what was in hand was begun."""

    kind: ClassVar[str] = "hour-passed"

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        begun = put_aside(knowledge, state).work
        return replace(state, work=expire(begun, "hour-passed"))
