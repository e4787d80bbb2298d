"""What every kind of event is: a frozen record of what was said or done, with its time."""

from __future__ import annotations

from abc import ABC, abstractmethod
from dataclasses import field
from types import MappingProxyType
from typing import ClassVar, Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.state import VisitState

ALWAYS: Final = MappingProxyType({"always": True})
"""Of a field that stands in a record even where it holds its default: programs of before look it
up."""


@frozen
class Event(ABC):
    """One thing that was said or done in a visit.

    `kind`: its name in the journal. `reports`: whether somebody at the unit says something of it; a
    note may be written anywhere. `time`: when, as `absence.stamp` has it; empty where not known.
    """

    kind: ClassVar[str]
    reports: ClassVar[bool] = False

    time: str = field(default="", kw_only=True)

    @abstractmethod
    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        """The state after it; what its time settles is left to `replaying.after`."""
