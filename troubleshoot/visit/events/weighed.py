"""Refrigerant weighed, as it was told beside what was asked."""

from __future__ import annotations

from dataclasses import replace
from typing import ClassVar

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events.event import Event
from troubleshoot.visit.state import VisitState
from troubleshoot.visit.weighing import Weighing


@frozen
class Weighed(Event):
    """Refrigerant added to a circuit or recovered from it. It is a record, and judges nothing."""

    kind: ClassVar[str] = "weighed"

    weighing: Weighing

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        return replace(state, weighed=(*state.weighed, self.weighing))
