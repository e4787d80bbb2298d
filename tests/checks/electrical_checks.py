"""How each reference value on capacitors and the supply is computed."""

import math
from collections.abc import Callable, Mapping
from typing import Any

from tests.checks.reference_entries import Entry, compute
from troubleshoot.quantities import capacitors, supply
from troubleshoot.quantities.ranges import OutOfRange


def microfarad_constant(entry: Entry) -> float:
    return float(
        compute(
            "capacitance-under-load",
            current="1 A",
            voltage="1 V",
            frequency=entry.typed("frequency"),
        )["capacitance"]
    )


def capacitance(entry: Entry) -> float:
    return float(
        compute(
            "capacitance-under-load",
            current=entry.typed("current"),
            voltage=entry.typed("voltage_across_capacitor"),
            frequency=entry.typed("frequency"),
        )["capacitance"]
    )


def capacitor_and_line_volts(entry: Entry) -> Mapping[str, float]:
    right, wrong = (
        compute(
            "capacitance-under-load", current=entry.typed("current"), voltage=entry.typed(volts)
        )
        for volts in ("capacitor_voltage", "line_voltage")
    )
    return {
        "right_uF": right["capacitance"],
        "overstatement_percent": 100 * (wrong["capacitance"] / right["capacitance"] - 1),
    }


def nameplate_band(entry: Entry) -> Mapping[str, float]:
    found = compute(
        "capacitance-deviation",
        rated=entry.typed("rated"),
        tolerance=entry.typed("tolerance_percent"),
    )
    return {"min": found["low-limit"], "max": found["high-limit"]}


def scope_of_capacitors(_entry: Entry) -> Mapping[str, float]:
    """Return the highest volts and hertz that the formula accepts."""

    def highest(accepts: Callable[[float], object], candidates: range) -> int:
        taken = []
        for candidate in candidates:
            try:
                accepts(float(candidate))
            except OutOfRange:
                continue
            taken.append(candidate)
        return max(taken)

    return {
        "max_rated_voltage_V": highest(
            lambda volts: capacitors.capacitance_under_load(1, volts), range(600, 700)
        ),
        "max_frequency_Hz": highest(
            lambda hertz: capacitors.capacitance_under_load(1, 370, hertz), range(40, 200)
        ),
    }


def stored_energy(entry: Entry) -> Mapping[str, float]:
    found = compute(
        "capacitor-stored-energy",
        capacitance=entry.typed("capacitance"),
        rms_voltage=entry.typed("rms_voltage"),
    )
    return {"peak_V": found["peak-voltage"], "energy_J": found["energy"]}


def energy_left(entry: Entry) -> float:
    """Return the energy at a steady voltage: that of an rms voltage smaller by sqrt(2)."""
    volts = entry.number("voltage") / math.sqrt(2)
    return capacitors.stored_energy(entry.number("capacitance"), volts).energy_j


def shock_hazard(_entry: Entry) -> Mapping[str, float]:
    return {
        "shock_voltage_V": capacitors.SHOCK_VOLTAGE_V,
        "shock_energy_J": capacitors.SHOCK_ENERGY_J,
    }


def discharge(entry: Entry) -> Mapping[str, float]:
    found = compute(
        "capacitor-discharge-time",
        capacitance=entry.typed("capacitance"),
        resistance=entry.typed("resistance"),
        start_voltage=entry.typed("start_voltage"),
        safe_voltage=entry.typed("safe_voltage"),
    )
    constant = found["time-constant"]
    return {"tau_s": constant, "time_to_50V_s": found["time"], "five_tau_s": 5 * constant}


def combined(name: str) -> Callable[[Entry], float]:
    def of(entry: Entry) -> float:
        values = f"{entry.typed('c1')} / {entry.typed('c2')}"
        return float(compute(name, values=values)["capacitance"])

    return of


def line_volts(entry: Entry) -> Mapping[str, Any]:
    return compute(
        "voltage-unbalance",
        ab=entry.typed("v_ab"),
        bc=entry.typed("v_bc"),
        ca=entry.typed("v_ca"),
    )


def unbalance(entry: Entry) -> Mapping[str, float]:
    found = line_volts(entry)
    return {
        "average_V": found["average"],
        "max_deviation_V": found["largest-deviation"],
        "unbalance_percent": found["percent"],
    }


def at_unbalance(percent: float) -> Mapping[str, Any]:
    """Return all results for three volts that are out of balance by exactly this much."""
    return compute(
        "voltage-unbalance", ab=f"{400 + 4 * percent} V", bc="400 V", ca=f"{400 - 4 * percent} V"
    )


def first_derated_percent(_entry: Entry) -> float:
    assert at_unbalance(1.0)["derating"] == 1.0
    assert at_unbalance(1.1)["derating"] < 1.0
    return 1.0


def last_run_percent(_entry: Entry) -> float:
    assert at_unbalance(5.0)["derating"] is not None
    assert at_unbalance(5.1)["derating"] is None
    return 5.0


def motor_limits(entry: Entry) -> Mapping[str, float]:
    nameplate = [float(volts) for volts in str(entry.inputs["nameplate"]["value"]).split("/")]
    low, high = supply.motor_voltage_limits(nameplate)
    return {"min": low, "max": high}


def motor_voltage_variation(_entry: Entry) -> Mapping[str, float]:
    return {"voltage_percent": 100 * supply.MOTOR_VOLTAGE_TOLERANCE}


CHECKS: Mapping[str, Callable[[Entry], Any]] = {
    **dict.fromkeys(("CAP-001", "CAP-002"), microfarad_constant),
    **dict.fromkeys(("CAP-003", "CAP-005", "CAP-006", "CAP-007", "CAP-008"), capacitance),
    "CAP-009": capacitor_and_line_volts,
    **dict.fromkeys(("CAP-010", "CAP-011", "CAP-012", "CAP-013", "CAP-014"), nameplate_band),
    "CAP-017": scope_of_capacitors,
    **dict.fromkeys(("CAP-018", "CAP-019", "CAP-020", "CAP-021", "CAP-023"), stored_energy),
    "CAP-024": shock_hazard,
    **dict.fromkeys(("CAP-028", "CAP-029", "CAP-030", "CAP-031"), discharge),
    **dict.fromkeys(("CAP-033", "CAP-034"), combined("capacitors-in-series")),
    "CAP-035": combined("capacitors-in-parallel"),
    "SAF-027": energy_left,
    **dict.fromkeys(("UNB-002", "UNB-003", "UNB-006", "UNB-007"), unbalance),
    **dict.fromkeys(
        ("UNB-008", "UNB-010"), lambda entry: line_volts(entry)["negative-sequence-factor"]
    ),
    "UNB-011": first_derated_percent,
    "UNB-012": last_run_percent,
    **dict.fromkeys(
        ("UNB-015", "UNB-016", "UNB-017", "UNB-018", "UNB-019", "UNB-021", "UNB-022"),
        lambda entry: at_unbalance(entry.number("unbalance"))["derating"],
    ),
    "UNB-024": lambda entry: at_unbalance(entry.number("unbalance"))["added-temperature-rise"],
    "UNB-025": lambda entry: dict(
        zip(
            ("min", "max"),
            supply.expected_current_unbalance(entry.number("voltage_unbalance")),
            strict=True,
        )
    ),
    "UNB-026": motor_voltage_variation,
    **dict.fromkeys((f"C84-{number:03}" for number in range(7, 14)), motor_limits),
}
"""The reference entry and what computes it."""
