"""The events of a routine round: its season, and what is done about what is not sound."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import ClassVar, cast

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.places import spoken
from troubleshoot.safety.stops.record import Spot
from troubleshoot.visit.events.event import Event
from troubleshoot.visit.events.places import spot_of
from troubleshoot.visit.events.way import put_aside
from troubleshoot.visit.round.season import Season
from troubleshoot.visit.state import Round, VisitState


@frozen
class FindingAt:
    """A test and where, in words."""

    test: str
    at: str | None

    @classmethod
    def all_of(cls, spots: Iterable[Spot]) -> tuple[FindingAt, ...]:
        """These findings, in the order of their names."""
        named = (cls(test, spoken(at)) for test, at in spots)
        return tuple(sorted(named, key=lambda each: (each.test, each.at or "")))


def _spots(
    knowledge: Knowledge, state: VisitState, found: tuple[FindingAt, ...]
) -> tuple[Spot, ...]:
    return tuple(spot_of(knowledge.tests[each.test], each.at, state.unit) for each in found)


@frozen
class RoundBegun(Event):
    """The points of a season are walked."""

    kind: ClassVar[str] = "round"

    season: str

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        return replace(state, round=Round(cast(Season, self.season)))


@frozen
class FindingsKept(Event):
    """What was found not to be sound is kept for the end of the round."""

    kind: ClassVar[str] = "kept-for-the-end"

    findings: tuple[FindingAt, ...]

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        if state.round is None:
            return state
        kept = state.round.kept.union(_spots(knowledge, state, self.findings))
        return replace(state, round=replace(state.round, kept=kept))


@frozen
class SearchBegun(Event):
    """The cause of findings of the round is looked for. `apart`: others, which have their own."""

    kind: ClassVar[str] = "search"

    findings: tuple[FindingAt, ...]
    apart: tuple[FindingAt, ...] = ()

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        if state.round is None:
            return state
        search = _spots(knowledge, state, self.findings)
        changed = replace(
            state.round,
            kept=state.round.kept.difference(search),
            searched=state.round.searched.union(search),
            search=search,
            apart=frozenset(_spots(knowledge, state, self.apart)),
        )
        return replace(put_aside(knowledge, state), round=changed)


@frozen
class RoundGoneOn(Event):
    """Back from a search to the round. `findings`: what else it met that is not sound."""

    kind: ClassVar[str] = "round-goes-on"

    findings: tuple[FindingAt, ...] = ()

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        if state.round is None:
            return state
        met = _spots(knowledge, state, self.findings)
        searched = state.round.searched.union(met)
        changed = replace(state.round, searched=searched, search=(), apart=frozenset())
        return replace(put_aside(knowledge, state), round=changed)
