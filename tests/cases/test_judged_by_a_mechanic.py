"""Cases of one or two readings that a mechanic of the trade answers at once.

What is expected is common practice, no source, where nothing else is named.
"""

from __future__ import annotations

from typing import Any

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.visit.cases.file import read_case

THREE_PHASE: dict[str, Any] = {"supply-phase": "three", "heat": "gas"}


def concluded(
    knowledge: Knowledge,
    complaint: str,
    read: dict[str, str],
    unit: dict[str, Any],
    **conditions: str,
) -> Conclusions:
    """Readings as typed, or as an outcome where one of the test's is named."""
    readings = [
        {"test": test, "outcome" if text in knowledge.tests[test].outcomes else "text": text}
        for test, text in read.items()
    ]
    case = {"unit": unit, "complaint": complaint, "readings": readings, "conditions": conditions}
    return Reasoner(knowledge).conclude(read_case(knowledge, case))


def leading(found: Conclusions, many: int = 1) -> list[str]:
    return [cause.fault.id for cause in found.causes[:many]]


def outcomes(found: Conclusions, test: str) -> tuple[str, ...]:
    return next(reading.seen for reading in found.readings if reading.test == test)


def cautions(found: Conclusions) -> set[str]:
    return {fired.hazard.id for fired in found.hazards}


@pytest.mark.parametrize(
    ("supply", "volts"),
    [("208-to-240-volt", 208), ("208-to-240-volt", 240), ("480-volt", 480), ("480-volt", 575)],
)
def test_volts_on_three_legs_clear_the_switch_without_a_data_plate(
    supply: str, volts: int, shipped: Knowledge
) -> None:
    read = {"line-volts-idle": f"{volts}/{volts}/{volts} V", "transformer-secondary-volts": "0 V"}
    found = concluded(shipped, "dead-unit", read, {**THREE_PHASE, "line-volts-class": supply})
    assert not found.not_judged
    assert leading(found) == ["control-transformer-open"]
    chances = {cause.fault.id: cause.probability for cause in found.causes}
    for behind in ("disconnect-or-breaker-off", "two-or-three-fuses-open"):
        assert chances.get(behind, 0) < 0.05


@pytest.mark.parametrize(
    ("volts", "said"),
    [("170/171/170 V", "low"), ("280/281/280 V", "high"), ("208/120/119 V", "one-leg-dead")],
)
def test_volts_beyond_their_class_are_told_without_a_data_plate(
    volts: str, said: str, shipped: Knowledge
) -> None:
    unit = {**THREE_PHASE, "line-volts-class": "208-to-240-volt"}
    found = concluded(shipped, "no-cooling", {"line-volts-idle": volts}, unit)
    assert outcomes(found, "line-volts-idle") == (said,)


VALVE: dict[str, Any] = {"refrigerant": "R-410A", "metering": "txv", "circuits": 1, "heat": "gas"}
NO_PUMP = {
    "compressor-internal-bypass-open",
    "compressor-pumping-weak",
    "compressor-running-backward",
    "supply-phases-reversed",
}


@pytest.mark.parametrize("suction", ["160 psig", "178 psig", "220 psig"])
def test_a_coil_that_boils_at_55_f_is_high_whatever_the_return_air(
    suction: str, shipped: Knowledge
) -> None:
    """At 25 F over it the room would stand at 80 F or more."""
    found = concluded(
        shipped, "weak-cooling", {"suction-pressure": suction}, VALVE,
        **{"outdoor-temperature": "95 F", "minutes-running": "20"},
    )  # fmt: skip
    assert outcomes(found, "suction-pressure") == ("high",)


def test_a_suction_that_needs_the_return_air_says_so(shipped: Knowledge) -> None:
    """Regression: that it is over zero was judged, so that nothing was said to be missing."""
    found = concluded(
        shipped, "weak-cooling", {"suction-pressure": "140 psig"}, VALVE,
        **{"outdoor-temperature": "95 F", "minutes-running": "20"},
    )  # fmt: skip
    assert [(one.reading.test, one.missing) for one in found.not_judged] == [
        ("suction-pressure", ("return air temperature",))
    ]


@pytest.mark.parametrize(
    "also", [{}, {"return-air-temperature": "78 F", "return-wet-bulb": "65 F"}]
)
def test_pressures_close_together_accuse_the_pump_and_not_the_charge(
    also: dict[str, str], shipped: Knowledge
) -> None:
    """A circuit short of charge lowers both pressures."""
    read = {"suction-pressure": "220 psig", "head-pressure": "240 psig", **also}
    found = concluded(
        shipped, "weak-cooling", read, VALVE,
        **{"outdoor-temperature": "95 F", "minutes-running": "20"},
    )  # fmt: skip
    assert set(leading(found, 4)) == NO_PUMP


@pytest.mark.parametrize(
    ("line", "cautioned"), [("43 F", True), ("45 F", True), ("47 F", True), ("56 F", False)]
)
def test_liquid_at_the_compressor_is_cautioned_of(
    line: str, cautioned: bool, shipped: Knowledge
) -> None:
    """130 psig of R-410A boils at 45 F: a superheat of -2, 0, 2 and 11 F on a valve."""
    read = {"suction-pressure": "130 psig", "suction-line-temperature": line}
    found = concluded(
        shipped, "weak-cooling", read, VALVE,
        **{"outdoor-temperature": "85 F", "minutes-running": "20"},
    )  # fmt: skip
    assert ("liquid-at-the-compressor" in cautions(found)) is cautioned


def test_legs_over_2_percent_apart_are_cautioned_of(shipped: Knowledge) -> None:
    """3.8 % apart; NEMA MG 1, from memory, derates a motor from 1 % and runs none over 5 %."""
    read = {"line-volts-running": "480/462/446 V"}
    unit = {**THREE_PHASE, "line-volts-class": "480-volt", "nameplate-volts": "460 V"}
    found = concluded(shipped, "fails-hot-afternoons", read, unit)
    assert cautions(found) == {"motor-on-unbalanced-legs"}


def test_low_ohms_to_ground_on_a_breaker_that_trips_accuse_the_winding(shipped: Knowledge) -> None:
    """IEEE 43, from memory, asks for 5 Mohm of so small a motor; 0.2 is wet or failing."""
    read = {"compressor-insulation": "0.2 Mohm"}
    found = concluded(shipped, "trips-breaker-or-fuse", read, {**THREE_PHASE, **VALVE})
    assert leading(found) == ["compressor-winding-grounded"]
    assert "trip-not-looked-into" in cautions(found)


@pytest.mark.parametrize("volts", ["480/440/430 V", "480/452/436 V", "480/455/438 V"])
def test_three_legs_that_are_all_there_are_an_unbalanced_supply_first(
    volts: str, shipped: Knowledge
) -> None:
    """6.7, 5.3 and 4.9 % apart, none of them under nine tenths of the plate."""
    unit = {**THREE_PHASE, "line-volts-class": "480-volt", "nameplate-volts": "460 V"}
    found = concluded(shipped, "weak-cooling", {"line-volts-running": volts}, unit)
    assert leading(found) == ["supply-voltage-unbalanced"]
    assert not found.unexplained


def test_liquid_colder_than_its_air_speaks_for_a_restriction(shipped: Knowledge) -> None:
    """Nothing cools liquid below the air of its condenser but a drop of pressure."""
    read = {
        "suction-pressure": "80 psig", "suction-line-temperature": "55 F",
        "head-pressure": "305 psig", "liquid-line-temperature": "84 F",
    }  # fmt: skip
    found = concluded(
        shipped, "weak-cooling", read, {**VALVE, "refrigerant": "R-454B"},
        **{"outdoor-temperature": "90 F", "minutes-running": "20"},
    )  # fmt: skip
    assert leading(found) == ["liquid-line-restriction"]
    assert not found.unexplained


def test_return_air_is_not_held_to_cooling_while_the_heat_runs(shipped: Knowledge) -> None:
    """68 F is what rooms are heated to."""
    read = {"return-air-temperature": "68 F", "heating-supply-temperature": "160 F"}
    unit = {"heat": "gas", "fuel": "natural-gas", "heat-rise-low": "30 F", "heat-rise-high": "60 F"}
    found = concluded(
        shipped, "heat-short-cycles", read, unit, **{"outdoor-temperature": "25 F"}
    )  # fmt: skip
    assert not found.unexplained
