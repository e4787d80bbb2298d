"""What a mechanic met on a roof: what is told of a case does not go against what was read."""

from __future__ import annotations

from typing import Any

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.safety.stops.standing import standing_hazards
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


GAS: dict[str, Any] = {"heat": "gas", "fuel": "natural-gas"}


def read(
    knowledge: Knowledge, complaint: str, unit: dict[str, Any], *readings: dict[str, Any]
) -> Conclusions:
    """A case as `assess` takes it; warm weather, the unit running."""
    case = {"unit": unit, "complaint": complaint, "conditions": WARM, "readings": [*readings]}
    return Reasoner(knowledge).conclude(read_case(knowledge, case))


def test_no_compressor_wound_for_three_phases_is_accused_of_a_capacitor(
    shipped: Knowledge,
) -> None:
    """Regression: at 480 V a hum led to the run capacitor, and to reading it."""
    for told in ({"line-volts-class": "480"}, {"line-volts-class": "480", "supply-phase": "three"}):
        hums = {"test": "compressor-start-attempt", "outcome": "hums-and-trips"}
        found = read(shipped, "no-cooling", told, hums)
        assert found.case.unit.facts["compressor-phase"] == "three"
        accused = {cause.fault.id for cause in found.causes}
        assert accused.isdisjoint({"compressor-run-capacitor-weak", "compressor-start-gear-failed"})
        assert "hums-on-its-capacitor" not in {fired.hazard.id for fired in found.hazards}
        places = {str(c.at) for c in candidates_for(found) if "capacit" in c.test.id}
        assert not any(place.startswith("capacitor compressor") for place in places)


@pytest.mark.parametrize("complaint", ["no-cooling", "weak-cooling", "fails-hot-afternoons"])
def test_the_worse_the_coil_the_more_it_speaks_for_dirt(complaint: str, shipped: Knowledge) -> None:
    """Whatever was ticked, one word or two: under half of the face open is worse than dust."""
    chances = [
        rank_of(
            concluded(
                shipped,
                complaint,
                {"head-pressure": "high", "condenser-fan-turning": "normal",
                 "condenser-coil-face": face},
            ),
            "condenser-coil-dirty",
        )
        for face in ("clean", "dirty", "matted", ["dirty", "matted"])
    ]  # fmt: skip
    assert chances == sorted(chances)
    assert chances[2] > 2 * chances[1] or chances[2] > 0.5


@pytest.mark.parametrize(
    ("complaint", "unit", "fault", "readings"),
    [
        ("no-heat", GAS, "gas-leak-at-unit",
         [("walk-round", "gas-odour"), ("combustible-gas-sweep", "20 % LEL")]),
        *((call, {}, "control-transformer-open",
           [("transformer-primary-and-tap", "normal"), ("control-fuse", "good"),
            ("transformer-secondary-volts", "0.1 V")])
          for call in ("dead-unit", "no-heat", "no-cooling")),
        ("no-cooling", {}, "contactor-coil-open",
         [("contactor-coil-volts", "24.8 V"), ("contactor-coil-ohms", "OL")]),
    ],
)  # fmt: skip
def test_a_look_that_names_the_fault_puts_it_first_by_far(
    complaint: str,
    unit: dict[str, Any],
    fault: str,
    readings: list[tuple[str, str]],
    shipped: Knowledge,
) -> None:
    rows = [
        {"test": test, ("text" if any(map(str.isdigit, said)) or said == "OL" else "outcome"): said}
        for test, said in readings
    ]
    found = read(shipped, complaint, unit, *rows)
    assert found.causes[0].fault.id == fault
    assert found.causes[0].probability > 0.5
    assert found.causes[1].probability < 0.1


def test_volts_on_the_primary_clear_what_cuts_the_supply(shipped: Knowledge) -> None:
    """Regression: with a sound primary a pull-out put back wrong, and open fuses, stood at 9 %."""
    dark = {"transformer-secondary-volts": "none", "control-fuse": "good"}
    for fault in (
        "pull-out-disconnect-reversed", "two-or-three-fuses-open", "disconnect-or-breaker-off"
    ):  # fmt: skip
        before = concluded(shipped, "dead-unit", dark)
        after = concluded(shipped, "dead-unit", {**dark, "transformer-primary-and-tap": "normal"})
        assert rank_of(after, fault) < rank_of(before, fault) / 3


@pytest.mark.parametrize("complaint", ["no-heat", "no-cooling", "second-opinion"])
@pytest.mark.parametrize("finding", ["gas-inlet-pressure-idle", "gas-manifold-pressure"])
def test_after_too_much_gas_nothing_of_the_cooling_side_comes_next(
    finding: str, complaint: str, shipped: Knowledge
) -> None:
    found = read(shipped, complaint, GAS, {"test": finding, "outcome": "high"})
    areas = {shipped.tests[c.test.id].area for c in candidates_for(found)}
    assert areas.isdisjoint({"refrigerant", "metering", "condenser", "compressor-electrical"})
    assert "ice-on-coil" not in {c.test.id for c in candidates_for(found)}


def test_what_stands_behind_a_find_is_looked_at_first(shipped: Knowledge) -> None:
    """Regression: behind a dead transformer came the condenser fan; behind 22 in wc, the ice."""
    fed = {"transformer-primary-and-tap": "normal", "transformer-secondary-volts": "none"}
    assert first(concluded(shipped, "dead-unit", fed)) == "transformer-ohms"
    for complaint in ("no-heat", "no-cooling", "routine-inspection"):
        found = concluded(shipped, complaint, {"gas-inlet-pressure-idle": "high"})
        assert first(found) == "gas-supply-look"


def spoken_first(found: Conclusions) -> list[str]:
    return [standing.hazard.id for standing in standing_hazards(found)]


def test_getting_people_out_is_read_before_the_tag_of_the_exchanger(shipped: Knowledge) -> None:
    found = read(
        shipped,
        "weak-heat",
        GAS,
        {"test": "supply-air-carbon-monoxide", "outcome": "with-damper-shut"},
        {"test": "room-carbon-monoxide", "text": "45 ppm"},
    )
    assert spoken_first(found)[:2] == ["carbon-monoxide-in-room", "heat-exchanger-breach"]


@pytest.mark.parametrize("complaint", ["no-cooling", "trips-breaker-or-fuse"])
def test_a_lost_leg_is_read_before_what_is_said_of_breakers(
    complaint: str, shipped: Knowledge
) -> None:
    """What burns within minutes comes before what nobody is about to do."""
    found = read(
        shipped,
        complaint,
        {"line-volts-class": "480", "nameplate-volts": "480 V"},
        {"test": "line-volts-idle", "text": "482/240/241 V"},
        {"test": "compressor-start-attempt", "outcome": "hums-and-trips"},
    )
    assert spoken_first(found)[0] == "motor-on-bad-supply"
