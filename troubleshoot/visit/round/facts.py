"""What of the unit a season's points hang on; light, since it is asked before anything reasons."""

from __future__ import annotations

from troubleshoot.knowledge.model import EquipmentFact, Knowledge, RoundPoint
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.visit.round.season import Season

_BY_CIRCUIT = frozenset({"circuit", "compressor", "contactor"})
_BY_FAN = frozenset({"condenser-fan", "capacitor"})


def points_of(knowledge: Knowledge, season: Season) -> tuple[RoundPoint, ...]:
    """The points of a season, in their order."""
    points = (p for p in knowledge.round_points.values() if season in p.season)
    return tuple(sorted(points, key=lambda point: point.number))


def facts_of(knowledge: Knowledge, unit: Unit, season: Season) -> tuple[EquipmentFact, ...]:
    """The equipment facts on which the season's points hang and that are not known."""
    points = points_of(knowledge, season)
    tests = [knowledge.tests[name] for point in points for name in point.tests]
    needed = (*(point.exists_when for point in points), *(test.exists_when for test in tests))
    wanted = {fact for facts in needed for fact in facts}
    kinds = {test.per for test in tests}
    counted = {"circuit"} if kinds & _BY_CIRCUIT else set()
    counted |= {"condenser-fan"} if kinds & _BY_FAN else set()
    return tuple(
        fact
        for fact in knowledge.facts.values()
        if (fact.id in wanted or fact.counts in counted) and fact.id not in unit.facts
    )
