"""The instruments of a visit, as the register had them at its start."""

from __future__ import annotations

from dataclasses import replace
from typing import ClassVar

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.readings.meters import Listed, meters_of
from troubleshoot.visit.events.event import Event
from troubleshoot.visit.state import VisitState


@frozen
class InstrumentsListed(Event):
    """By which instruments readings are judged from here on, whatever the register says later."""

    kind: ClassVar[str] = "instruments"

    instruments: tuple[Listed, ...]

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        return replace(state, meters=meters_of(knowledge, self.instruments))
