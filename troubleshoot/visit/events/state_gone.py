"""Somebody says, at whatever prompt, that a state the work stands on has gone or never was."""

from __future__ import annotations

from dataclasses import replace
from typing import ClassVar

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.gone import without
from troubleshoot.visit.events.answers import SaysNothing
from troubleshoot.visit.events.event import Event
from troubleshoot.visit.events.way import in_hand_begun
from troubleshoot.visit.state import VisitState


@frozen
class StateGone(Event):
    """What `steps` had confirmed counts no more, by the person's own `words`; the aim stays.

    What was in hand may have been begun, and a finding that was being taken afresh is not read.
    """

    kind: ClassVar[str] = "state-gone"
    reports: ClassVar[bool] = True

    steps: tuple[str, ...]
    words: str

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        """Raises SaysNothing where it names no safety step."""
        if not self.steps or not {*self.steps} <= CONFIRMED.keys():
            raise SaysNothing("it names no safety step whose state has gone")
        begun = in_hand_begun(knowledge, state)
        work = without(begun.work, self.steps, state.at_work)
        notes = (*state.notes, f"said to have gone, or never to have been: {self.words}")
        return replace(state, work=work, fresh_read=False, notes=notes)
