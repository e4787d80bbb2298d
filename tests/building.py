"""Small invented rule bases for tests: a few lines make a whole Knowledge."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from troubleshoot.knowledge.model import (
    Bound,
    EquipmentFact,
    Evidence,
    Fault,
    Finding,
    Given,
    Hazard,
    Knowledge,
    LimitLine,
    NamedLimit,
    Outcome,
    Picture,
    PlateValue,
    Procedure,
    Quantity,
    Repair,
    Test,
)
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.unit.equipment import Unit, read_unit

Grades = Mapping[str, Sequence[Mapping[str, str | Sequence[str]]]]

FACTS = (
    EquipmentFact("metering", ("fixed-orifice", "txv"), "How is refrigerant metered?"),
    EquipmentFact("circuits", ("one", "two-or-more"), "How many circuits?", counts="circuit"),
    EquipmentFact("condenser-fans", ("one", "several"), "How many fans?", counts="condenser-fan"),
    EquipmentFact("condenser-fan-phase", ("single", "three"), "Phase of the fans?"),
    EquipmentFact("compressor-phase", ("single", "three"), "Phase of the compressors?"),
    EquipmentFact("fans-serve", ("own-circuit", "all"), "Which circuits do the fans serve?"),
    EquipmentFact("blower-motor", ("single-phase-capacitor", "three-phase"), "Blower motor?"),
)


def test_of(name: str, *outcomes: str, healthy: str | None = "normal", **more: Any) -> Test:
    """A look with these outcomes; `normal` is healthy unless said otherwise."""
    words = ("normal", *outcomes) if healthy == "normal" else outcomes
    well = (healthy,) if healthy else ()
    more.setdefault("kind", "look")
    return Test(name, name, "area", outcomes=tuple(Outcome(o) for o in words), healthy=well, **more)


test_of.__test__ = False  # type: ignore[attr-defined]


def measured(name: str, bands: Mapping[str, Mapping[str, Any]], **more: Any) -> Test:
    """A measurement of the quantity of its own name, with one line of limits an outcome."""
    outcomes = tuple(
        Outcome(o, limits=(LimitLine((Bound(name, **band),)),)) for o, band in bands.items()
    )
    more.setdefault("healthy", ("normal",))
    more.setdefault("kind", "measurement")
    return Test(name, name, "area", outcomes=outcomes, **more)


def evidence(grades: Grades) -> tuple[Evidence, ...]:
    """Cards as they stand in rule files: grade -> findings; several in one mapping are any-of."""
    return tuple(
        Evidence(grade, tuple(finding(t, o) for t, o in item.items()))  # type: ignore[arg-type]
        for grade, items in grades.items()
        for item in items
    )


def finding(test: str, outcomes: str | Sequence[str]) -> Finding:
    return Finding(test, (outcomes,) if isinstance(outcomes, str) else tuple(outcomes))


def given(test: str, outcome: str, grade: str, **known: str) -> Given:
    """`test: outcome` shows `grade` often, given the known findings (underscores are hyphens)."""
    conditions = tuple(finding(t.replace("_", "-"), o) for t, o in known.items())
    return Given(grade, finding(test, outcome), conditions)  # type: ignore[arg-type]


def fault(name: str, grades: Grades | None = None, **more: Any) -> Fault:
    more.setdefault("how_common", "common")
    more.setdefault("is_effect", False)
    return Fault(
        name, name, more.pop("subsystem", "system"), evidence=evidence(grades or {}),
        repair=Repair("mend it", 30, "adjust", ("technician",)), **more,
    )  # fmt: skip


def picture(name: str, grades: Grades, **more: Any) -> Picture:
    return Picture(name, evidence(grades), **more)


def base(
    tests: Sequence[Test] = (),
    faults: Sequence[Fault] = (),
    procedures: Sequence[Procedure] = (),
    hazards: Sequence[Hazard] = (),
    complaints: Sequence[Any] = (),
    quantities: Sequence[Quantity] = (),
    limits: Sequence[NamedLimit] = (),
    plates: Sequence[PlateValue] = (),
    facts: Sequence[EquipmentFact] = FACTS,
) -> Knowledge:
    """A rule base of these entries."""

    def by_id(entries: Sequence[Any]) -> dict[str, Any]:
        return {entry.id: entry for entry in entries}

    return Knowledge(
        by_id(tests), by_id(faults), by_id(procedures), by_id(hazards), by_id(complaints),
        by_id(facts), by_id(plates), (), by_id(quantities), by_id(limits), {}, {}, {},
    )  # fmt: skip


def unit_of(knowledge: Knowledge, **facts: Any) -> Unit:
    """A unit with these facts (underscores are hyphens)."""
    return read_unit(knowledge, {name.replace("_", "-"): v for name, v in facts.items()})


def case(knowledge: Knowledge, *answers: Answer, unit: Unit | None = None, **more: Any) -> Case:
    return Case(unit or unit_of(knowledge), answers=tuple(answers), **more)
