"""Cards that units which obey physics showed to be weak, each on a case of the trade.

What is expected is common practice, no source, where nothing else is named.
"""

from __future__ import annotations

from typing import Any

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.choosing.next_test import NAMED
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.visit.cases.file import read_case

COOLING: dict[str, Any] = {
    "refrigerant": "R-410A", "metering": "txv", "circuits": 1, "stated-subcooling": "10 F",
}  # fmt: skip
HEATING: dict[str, Any] = {**COOLING, "heat": "gas", "fuel": "natural-gas", "draft": "induced"}
WARM = {"outdoor-temperature": "88 F", "minutes-running": "25 min"}
UNDER_FIRED = {"gas-meter-clocking": "under", "heat-temperature-rise": "low"}


def concluded(
    knowledge: Knowledge, complaint: str, read: dict[str, Any], unit: dict[str, Any] = COOLING
) -> Conclusions:
    readings = [{"test": test, "outcome": outcome} for test, outcome in read.items()]
    case = {"unit": unit, "complaint": complaint, "readings": readings}
    if unit is COOLING:
        case["conditions"] = WARM
    return Reasoner(knowledge).conclude(read_case(knowledge, case))


def first(found: Conclusions) -> str:
    return found.causes[0].fault.id


def weight(found: Conclusions, fault: str, test: str) -> float:
    """What a test weighs for a fault at its likeliest place, alone or in its group."""
    cause = next(cause for cause in found.causes if cause.fault.id == fault)
    return sum(w.weight for w in cause.weights if test in {name for name, _ in w.tests})


@pytest.mark.parametrize("flue", ["normal", "high-oxygen"])
def test_too_little_gas_names_no_cause_before_the_manifold_is_read(
    flue: str, shipped: Knowledge
) -> None:
    """Clogged orifices and a low manifold both under-fire, with the same air behind them."""
    read = {**UNDER_FIRED, "flue-gas-analysis": flue}
    found = concluded(shipped, "weak-heat", read, HEATING)
    assert found.causes[0].probability < NAMED
    assert "burner-or-orifice-blocked" in [cause.fault.id for cause in found.causes[:3]]


def test_too_little_gas_at_a_right_manifold_is_behind_it(shipped: Knowledge) -> None:
    """What passes an orifice goes with its area and the root of the manifold pressure."""
    read = {**UNDER_FIRED, "gas-manifold-pressure": "normal", "burner-orifices": "blocked"}
    found = concluded(shipped, "weak-heat", read, HEATING)
    assert first(found) == "burner-or-orifice-blocked"


@pytest.mark.parametrize(
    ("fault", "flue"),
    [
        ("burner-or-orifice-blocked", "high-oxygen"),
        ("gas-inlet-pressure-low-under-load", "high-oxygen"),
        ("wrong-orifice-or-altitude", "high-oxygen"),
        ("wrong-orifice-or-altitude", "low-oxygen"),
        ("vent-blocked", "low-oxygen"),
    ],
)
def test_oxygen_in_the_flue_goes_with_air_over_gas(
    fault: str, flue: str, shipped: Knowledge
) -> None:
    """Less gas in the same air leaves more oxygen; more gas, or less air, leaves less (combustion
    arithmetic, as in the ASHRAE Handbook, Fundamentals, Combustion and Fuels)."""
    found = concluded(shipped, "weak-heat", {"flue-gas-analysis": flue}, HEATING)
    assert weight(found, fault, "flue-gas-analysis") > 0


def test_warm_air_on_a_clean_condenser_is_a_hotter_day_and_needs_no_high_subcooling(
    shipped: Knowledge,
) -> None:
    read = {
        "condenser-air-entering": "recirculating", "condenser-coil-face": "clean",
        "head-pressure": "high", "subcooling": "normal", "superheat": "normal-txv",
        "condenser-air-rise": "normal",
    }  # fmt: skip
    assert first(concluded(shipped, "weak-cooling", read)) == "condenser-air-recirculating"


@pytest.mark.parametrize("call", ["season-change", "high-energy-bill", "weak-cooling"])
def test_a_duct_seen_to_have_come_off_is_the_fault_whatever_the_call(
    call: str, shipped: Knowledge
) -> None:
    read = {"ducts-and-dampers": "disconnected", "air-filters": "clean", "blower-wheel": "clean"}
    assert first(concluded(shipped, call, read)) == "duct-disconnected-or-leaking"


def test_what_still_cools_is_not_taken_for_an_empty_circuit(shipped: Knowledge) -> None:
    """Regression: oil on the pan and a split of 10 F kept the gauges off and the unit stopped.

    Without refrigerant nothing is cooled.
    """
    found = concluded(
        shipped, "weak-cooling", {"walk-round": "oil-stain", "air-temperature-split": "low"},
        {"refrigerant": "R-410A", "metering": "fixed-orifice"},
    )  # fmt: skip
    assert "empty-circuit-stays-off" not in {fired.hazard.id for fired in found.hazards}


def test_dirt_inside_the_unit_does_not_raise_the_static_outside_it(shipped: Knowledge) -> None:
    """What the fan moves falls, and with it what the ducts take (ASHRAE fan laws)."""
    unit = {**COOLING, "maximum-external-static": "0.8 in wc"}
    case = {"unit": unit, "complaint": "weak-airflow", "conditions": WARM,
            "readings": [{"test": "external-static", "text": "1.35 in wc"}]}  # fmt: skip
    found = Reasoner(shipped).conclude(read_case(shipped, case))
    weights = {fault: weight(found, fault, "external-static") for fault in
               ("duct-damper-shut", "evaporator-coil-dirty", "filters-loaded")}  # fmt: skip
    assert weights["duct-damper-shut"] > 0 > weights["evaporator-coil-dirty"]
    assert weights["filters-loaded"] < 0


SLIGHT: dict[str, tuple[str, dict[str, Any]]] = {
    "blower-wheel-dirty": ("weak-cooling", {
        "blower-wheel": "dirty", "air-temperature-split": "borderline", "blower-rpm": "normal",
        "suction-pressure": "normal", "ice-on-coil": "none", "evaporator-coil-face": "clean",
    }),
    "evaporator-coil-dirty": ("weak-cooling", {
        "evaporator-coil-face": "dirty", "air-temperature-split": "normal", "ice-on-coil": "none",
        "evaporator-pressure-drop": "high", "suction-pressure": "normal", "blower-wheel": "clean",
    }),
    "overcharge": ("weak-cooling", {
        "subcooling": "very-high", "head-pressure": "normal", "suction-pressure": "normal",
        "superheat": "normal-txv", "compressor-amps": "normal", "safety-string-walk": "all-closed",
    }),
    "condenser-coil-dirty": ("weak-cooling", {
        "condenser-coil-face": "dirty", "head-pressure": "high", "condenser-air-rise": "normal",
        "compressor-amps": "normal", "discharge-temperature": "normal",
        "safety-string-walk": "all-closed", "superheat": "normal-txv",
    }),
    "supply-voltage-low": ("routine-inspection", {
        "line-volts-running": "sags-while-running", "line-volts-idle": "low",
        "transformer-secondary-volts": "low", "contactor-coil-volts": "low",
        "compressor-amps": "normal", "contactor-pull-in": "pulls-in",
        "compressor-start-attempt": "starts", "contactor-contacts": "clean",
    }),
}  # fmt: skip


@pytest.mark.parametrize("fault", SLIGHT)
def test_a_slight_fault_leads_though_all_it_may_do_later_reads_sound(
    fault: str, shipped: Knowledge
) -> None:
    """What is slight moves the reading nearest to it; the rest follows as it grows, together."""
    complaint, read = SLIGHT[fault]
    assert first(concluded(shipped, complaint, read)) == fault


def test_a_weak_run_capacitor_leads_though_the_compressor_still_starts(shipped: Knowledge) -> None:
    at = {"at": "capacitor compressor 1", "outcome": "low"}
    readings = [
        {"test": "capacitance-out-of-circuit", **at},
        {"test": "capacitance-while-running", **at},
        {"test": "compressor-amps", "at": "compressor 1", "outcome": "normal"},
        {"test": "compressor-start-attempt", "at": "compressor 1", "outcome": "starts"},
    ]
    unit = {**COOLING, "compressor-phase": "single"}
    case = {"unit": unit, "complaint": "high-energy-bill", "readings": readings}
    found = Reasoner(shipped).conclude(read_case(shipped, case))
    assert first(found) == "compressor-run-capacitor-weak"


@pytest.mark.parametrize(
    ("fault", "read"),
    [
        ("filters-loaded", {"air-filters": "loaded", "filter-pressure-drop": "high"}),
        ("liquid-line-restriction", {"drier-temperature-drop": "drop", "superheat": "high"}),
        ("blower-belt-slipping", {"blower-belt": "slipping", "blower-rpm": "low"}),
    ],
)
def test_what_costs_capacity_may_be_behind_a_bill(
    fault: str, read: dict[str, Any], shipped: Knowledge
) -> None:
    """A unit that cools less runs longer (Rossi and Braun 1997 measure faults by just that)."""
    assert first(concluded(shipped, "high-energy-bill", read)) == fault
    assert first(concluded(shipped, "high-energy-bill", {})) == "schedule-or-clock-wrong"
