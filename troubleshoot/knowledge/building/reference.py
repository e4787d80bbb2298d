"""Plain data -> quantities, equipment, limits, complaints, the round, retired ids."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from troubleshoot.knowledge.building.conditions import build_bound, build_facts, build_source
from troubleshoot.knowledge.model import (
    Complaint,
    Derivation,
    DriftAlarm,
    EquipmentFact,
    Implication,
    NamedLimit,
    PlateValue,
    Quantity,
    RoundPoint,
)


def build_quantities(data: Any) -> Iterator[Quantity]:
    for item in data["quantities"]:
        yield Quantity(
            id=item["id"],
            unit=item["unit"],
            meaning=item["meaning"],
            per=item.get("per"),
            can_be=_lowest_and_highest(item.get("can-be")),
            computed=tuple(build_derivation(way) for way in item.get("computed", ())),
        )


def build_derivation(data: Any) -> Derivation:
    times, plus = data.get("times", 1.0), data.get("plus", 0.0)
    return Derivation(data["formula"], tuple(data["inputs"]), times, plus)


def _lowest_and_highest(data: Sequence[float] | None) -> tuple[float, float] | None:
    return None if data is None else (float(data[0]), float(data[1]))


def build_equipment_facts(data: Any) -> Iterator[EquipmentFact]:
    for item in data.get("facts", ()):
        words = {value: tuple(said) for value, said in item.get("words", {}).items()}
        values = tuple(item["values"])
        yield EquipmentFact(item["id"], values, item["asks"], item.get("counts"), words)


def build_plate_values(data: Any) -> Iterator[PlateValue]:
    for item in data.get("nameplate", ()):
        yield PlateValue(
            id=item["id"],
            unit=item["unit"],
            origin=item["from"],
            meaning=item["meaning"],
            per=item.get("per"),
        )


def build_implications(data: Any) -> Iterator[Implication]:
    for item in data.get("implies", ()):
        yield Implication(build_facts(item["when"]), item["then"])


def build_limits(data: Any) -> Iterator[NamedLimit]:
    for item in data["limits"]:
        yield NamedLimit(
            id=item["id"],
            applies_to=item["applies-to"],
            bounds=tuple(build_bound(bound) for bound in item["bounds"]),
            source=build_source(item),
        )


def build_complaints(data: Any) -> Iterator[Complaint]:
    for item in data["complaints"]:
        yield Complaint(
            id=item["id"],
            says=item["says"],
            words=tuple(item.get("words", ())),
            looks=item.get("looks", ""),
            first_tests=tuple(item.get("first-tests", ())),
            pointless_tests=tuple(item.get("pointless-tests", ())),
            faults=tuple(item.get("faults", ())),
            also=tuple(item.get("also", ())),
            impossible_for=tuple(item.get("impossible-for", ())),
            unlisted=item.get("unlisted", "never"),
            hazards_first=tuple(item.get("hazards-first", ())),
            all_clear=item.get("all-clear"),
            source=build_source(item),
        )


def build_round_points(data: Any) -> Iterator[RoundPoint]:
    for item in data.get("points", ()):
        yield RoundPoint(
            id=item["id"],
            number=item["number"],
            point=item["point"],
            season=tuple(item["season"]),
            tests=tuple(item.get("tests", ())),
            how_often=item.get("how-often", ""),
            limit=item.get("limit", ""),
            trend=item.get("trend", ""),
            source=build_source(item),
        )


def build_drift_alarms(data: Any) -> Iterator[DriftAlarm]:
    for item in data.get("drift-alarms", ()):
        yield DriftAlarm(
            id=item["id"],
            quantity=item["quantity"],
            text=item["text"],
            change=item.get("change"),
            unit=item.get("unit"),
            source=build_source(item),
        )


def build_sources(data: Any) -> Iterator[tuple[str, str]]:
    for item in data["sources"]:
        yield item["id"], item["published"]


def build_aliases(data: Any) -> Iterator[tuple[tuple[str, str], tuple[str, str]]]:
    """Yield ((old test, old outcome), (test, outcome)) for findings written under old names."""
    for item in data.get("aliases", ()):
        ((old_test, old_outcome),) = item["from"].items()
        ((test, outcomes),) = item["to"].items()
        yield (old_test, old_outcome), (test, outcomes[0])
