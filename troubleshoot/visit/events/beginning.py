"""What a visit starts from: the call, who is asking, the unit and what it says of itself."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field, replace
from typing import ClassVar

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.on_record import OnRecord, unit_told
from troubleshoot.safety.profiles import FULLY_QUALIFIED
from troubleshoot.safety.stops.record import LeftOn, Spot
from troubleshoot.safety.transitions import left_shut
from troubleshoot.safety.unit_at_work import called_for, unit_at_work
from troubleshoot.safety.work_state import WorkState
from troubleshoot.visit.events.event import ALWAYS, Event
from troubleshoot.visit.state import RepairSaid, VisitState


@frozen
class Called(Event):
    """The caller's words, before it is settled what they are taken for and who is asking."""

    kind: ClassVar[str] = "call"

    words: str

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        return replace(state, words=self.words)


@frozen
class Named(Event):
    """The unit's name, where it was given before or after the rest."""

    kind: ClassVar[str] = "named"

    name: str

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        return replace(state, name=self.name)


@frozen
class LeftBefore(Event):
    """What earlier visits had left off on the unit, as whoever named it was told.

    `dangers`: those for which they did; they stand until they are read sound here. `cock`: the gas
    cock was not left known to be open. `plugs`: of the gas train, by their taps, that were not
    tested under gas.
    """

    kind: ClassVar[str] = "left-before"

    lines: tuple[str, ...]
    dangers: tuple[LeftOn, ...] = ()
    cock: bool = False
    plugs: tuple[str, ...] = ()

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        # A name that is taken back before anything is done takes its gas cock along.
        begun = state.complaint is not None or state.asked or state.stops
        work = state.work if begun else WorkState()
        return replace(
            state,
            left_before=self.lines,
            left_on=self.dangers,
            cock_left=self.cock,
            work=left_shut(work, frozenset(self.plugs)) if self.cock else work,
        )


@frozen
class FromRegister(Event):
    """What the register knows of the unit, by the name that it was given.

    `trusted`: facts and plate values as typed that are not asked for again; `afresh`: those that
    are. What is told here stands above both.
    """

    kind: ClassVar[str] = "on-record"

    trusted: Mapping[str, object] = field(default_factory=dict)
    afresh: Mapping[str, object] = field(default_factory=dict)

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        record = OnRecord(self.trusted, self.afresh)
        unit = unit_told(knowledge, record, state.unit_data, state.own_record)
        at_work = unit_at_work(unit, called_for(knowledge, state.complaint))
        return replace(state, on_record=record, unit=unit, at_work=at_work)


@frozen
class Started(Event):
    """Who is asking, of which unit, with which complaint.

    `unit`, `own_record`: facts and plate values as a case file has them. `counts`: how many
    circuits and fans there are, where the facts do not say. `conditions`: quantities that held
    throughout, as typed. `repaired`: faults mended before. What was told of the unit before holds.
    """

    kind: ClassVar[str] = "start"
    reports: ClassVar[bool] = True

    name: str = ""
    complaint: str | None = None
    words: str = ""
    routine: bool = False
    profiles: tuple[str, ...] = field(default=tuple(sorted(FULLY_QUALIFIED)), metadata=ALWAYS)
    unit: Mapping[str, object] = field(default_factory=dict)
    own_record: Mapping[str, object] = field(default_factory=dict)
    counts: Mapping[str, int] | None = None
    conditions: Mapping[str, str] = field(default_factory=dict)
    repaired: tuple[str, ...] = ()

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        data = {**state.unit_data, **self.unit}
        unit = unit_told(knowledge, state.on_record, data, self.own_record, self.counts)
        return replace(
            state,
            unit_data=data,
            own_record=self.own_record,
            unit=unit,
            at_work=unit_at_work(unit, called_for(knowledge, self.complaint)),
            complaint=self.complaint,
            name=self.name,
            words=self.words,
            routine=self.routine,
            profiles=frozenset(self.profiles),
            conditions=dict(self.conditions),
            repaired=self.repaired,
            repairs=tuple(RepairSaid(fault) for fault in self.repaired),
            round=None,
        )


@frozen
class FactTold(Event):
    """An equipment fact or plate value read on the way; without a value it is not known.

    `value`: as typed, or as typed by place where each has its own. `also`: other facts that the
    same answer named.
    """

    kind: ClassVar[str] = "fact"
    reports: ClassVar[bool] = True

    name: str
    value: object
    also: Mapping[str, str] = field(default_factory=dict)

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        if self.value is None:
            return replace(state, not_known=state.not_known | {self.name})
        value, before = self.value, state.unit_data.get(self.name)
        if isinstance(value, Mapping) and isinstance(before, Mapping):
            value = {**before, **value}
        data = {**state.unit_data, self.name: value, **self.also}
        unit = unit_told(knowledge, state.on_record, data, state.own_record)
        aim = state.aim if _is_there(knowledge, unit, state.aim) else None
        at_work = unit_at_work(unit, called_for(knowledge, state.complaint))
        return replace(state, unit_data=data, unit=unit, at_work=at_work, aim=aim)


def _is_there(knowledge: Knowledge, unit: Unit, spot: Spot | None) -> bool:
    """Whether a unit has what a test is of, and its place; a fact may take either away."""
    if spot is None:
        return True
    test, at = knowledge.tests[spot[0]], spot[1]
    return unit.allows(test.exists_when) and at in (None, *unit.layout.places(test.per))
