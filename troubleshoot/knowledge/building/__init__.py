"""Plain data that passed its form -> the immutable model.

Data that has not been read against its form must not come here: nothing is checked again.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any, Protocol, TypeVar

from troubleshoot.knowledge.building.conditions import build_signatures
from troubleshoot.knowledge.building.faults import build_fault
from troubleshoot.knowledge.building.procedures import build_hazards, build_procedures
from troubleshoot.knowledge.building.reference import (
    build_aliases,
    build_complaints,
    build_drift_alarms,
    build_equipment_facts,
    build_implications,
    build_limits,
    build_plate_values,
    build_quantities,
    build_round_points,
    build_sources,
)
from troubleshoot.knowledge.building.sound import (
    build_days,
    build_relations,
    build_sound_readings,
    build_unit,
)
from troubleshoot.knowledge.building.tests import build_tests
from troubleshoot.knowledge.model import Knowledge


class _HasId(Protocol):
    @property
    def id(self) -> str: ...


_Entry = TypeVar("_Entry", bound=_HasId)


def build_knowledge(files: Iterable[tuple[str, Any]], digest: str = "") -> Knowledge:
    """Build the whole rule base from (kind, plain data) pairs, in file order."""
    by_kind: dict[str, list[Any]] = {}
    for kind, data in files:
        by_kind.setdefault(kind, []).append(data)

    def of(kind: str) -> list[Any]:
        return by_kind.get(kind, [])

    return Knowledge(
        tests=_by_id(test for data in of("tests") for test in build_tests(data)),
        faults=_by_id(build_fault(data) for data in of("fault")),
        procedures=_by_id(rule for data in of("procedures") for rule in build_procedures(data)),
        hazards=_by_id(hazard for data in of("hazards") for hazard in build_hazards(data)),
        complaints=_by_id(item for data in of("complaints") for item in build_complaints(data)),
        facts=_by_id(fact for data in of("equipment") for fact in build_equipment_facts(data)),
        plate_values=_by_id(v for data in of("equipment") for v in build_plate_values(data)),
        implications=tuple(i for data in of("equipment") for i in build_implications(data)),
        quantities=_by_id(item for data in of("quantities") for item in build_quantities(data)),
        limits=_by_id(limit for data in of("limits") for limit in build_limits(data)),
        round_points=_by_id(point for data in of("round") for point in build_round_points(data)),
        drift_alarms=_by_id(alarm for data in of("round") for alarm in build_drift_alarms(data)),
        sound=_by_id(each for data in of("sound-unit") for each in build_sound_readings(data)),
        settled_first=tuple(
            name for data in of("sound-unit") for name in data.get("settled-first", ())
        ),
        days=tuple(day for data in of("sound-unit") for day in build_days(data)),
        relations=_by_id(each for data in of("relations") for each in build_relations(data)),
        typical_units=_by_id(build_unit(data) for data in of("unit")),
        sources=dict(source for data in of("sources") for source in build_sources(data)),
        aliases=dict(alias for data in of("retired") for alias in build_aliases(data)),
        retired=frozenset(word for data in of("retired") for word in data.get("retired", ())),
        signed=tuple(each for data in of("retired") for each in build_signatures(data)),
        digest=digest,
    )


def _by_id(entries: Iterable[_Entry]) -> dict[str, _Entry]:
    return {entry.id: entry for entry in entries}
