"""What a mechanic met on a roof: what is told of a case does not go against what was read."""

from __future__ import annotations

from typing import Any

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Conclusions, Reasoner
from troubleshoot.visit.cases.assessment import candidates_for
from troubleshoot.visit.cases.file import read_case

ONE: dict[str, Any] = {
    "refrigerant": "R-410A", "metering": "txv", "circuits": 1, "heat": "gas", "economizer": "fitted"
}  # fmt: skip
WARM = {"outdoor-temperature": "95 F", "minutes-running": "20 min"}
EMPTY = {"air-temperature-split": "none", "compressor-amps": "low"}


def concluded(
    knowledge: Knowledge, complaint: str, read: dict[str, Any], day: dict[str, str] = WARM
) -> Conclusions:
    readings = [{"test": test, "outcome": outcome} for test, outcome in read.items()]
    case = {"unit": ONE, "complaint": complaint, "conditions": day, "readings": readings}
    return Reasoner(knowledge).conclude(read_case(knowledge, case))


def happened(found: Conclusions) -> set[str]:
    return {effect.fault.id for effect in found.effects}


def first(found: Conclusions) -> str:
    return candidates_for(found)[0].test.id


def rank_of(found: Conclusions, fault: str) -> float:
    return next(cause.probability for cause in found.causes if cause.fault.id == fault)


@pytest.mark.parametrize(
    "running",
    [{"head-pressure": "high"}, {"head-pressure": "normal"}, {"suction-pressure": "high"}],
)
def test_a_circuit_with_pressures_that_only_liquid_keeps_up_is_not_called_empty(
    running: dict[str, str], shipped: Knowledge
) -> None:
    found = {**EMPTY, "subcooling": "zero"}
    assert "circuit-empty" in happened(concluded(shipped, "no-cooling", found))
    assert "circuit-empty" not in happened(concluded(shipped, "no-cooling", {**found, **running}))


def test_no_effect_is_told_that_a_reading_contradicts(shipped: Knowledge) -> None:
    """Of every effect: what its card says is never so, seen beside all that speaks for it."""
    tried = 0
    for fault in shipped.faults.values():
        if not fault.is_effect:
            continue
        singles = [(e.grade, e.findings[0]) for e in fault.evidence if len(e.findings) == 1]
        for_it = {f.test: f.outcomes[0] for g, f in singles if g == "almost-always"}
        for grade, finding in singles:
            if grade == "never":
                tried += 1
                read = {**for_it, finding.test: finding.outcomes[0]}
                assert fault.id not in happened(concluded(shipped, "second-opinion", read))
    assert tried >= 10


def test_a_cooling_call_that_stands_does_not_tell_of_heat(shipped: Knowledge) -> None:
    for read in ({"jumper-search": "found-on-call"}, {"thermostat-output": "makes-when-off"}):
        found = concluded(shipped, "cooling-will-not-stop", read)
        assert "heat-stays-on" not in happened(found)


def test_a_matted_coil_explains_high_head_at_least_as_well_as_a_dirty_one(
    shipped: Knowledge,
) -> None:
    head = {"head-pressure": "high", "condenser-fan-turning": "normal"}
    matted, dirty = (
        concluded(shipped, "fails-hot-afternoons", {**head, "condenser-coil-face": each})
        for each in ("matted", "dirty")
    )
    worst = "condenser-coil-dirty"
    assert matted.causes[0].fault.id == dirty.causes[0].fault.id == worst
    assert rank_of(matted, worst) >= rank_of(dirty, worst)
    assert not matted.unexplained


def test_a_call_about_heat_in_frost_does_not_begin_at_the_economizer(shipped: Knowledge) -> None:
    frost = {"outdoor-temperature": "20 F"}
    for complaint in ("no-heat", "weak-heat", "heat-short-cycles"):
        tests = [c.test.id for c in candidates_for(concluded(shipped, complaint, {}, frost))]
        assert "economizer-sequence" not in tests[:5]
    cooling = concluded(
        shipped, "cooling-trips-in-cool-weather", {"cooling-call": "present"}, frost
    )
    assert first(cooling) == "economizer-sequence"


@pytest.mark.parametrize(
    ("complaint", "read", "wanted"),
    [
        (
            "no-cooling",
            {"contactor-coil-volts": "normal", "contactor-pull-in": "does-not-pull-in"},
            "contactor-coil-ohms",
        ),
        ("no-cooling", {"suction-pressure": "in-vacuum"}, "standing-pressure"),
        (
            "weak-cooling",
            {
                "suction-pressure": "high",
                "head-pressure": "low",
                "superheat": "normal-txv",
                "subcooling": "low",
            },
            "compressor-pumping",
        ),
        (
            "weak-cooling",
            {"suction-pressure": "high", "head-pressure": "low"},
            "compressor-pumping",
        ),
    ],
)
def test_what_parts_the_causes_soonest_comes_before_what_takes_long(
    complaint: str, read: dict[str, str], wanted: str, shipped: Knowledge
) -> None:
    assert first(concluded(shipped, complaint, read)) == wanted
