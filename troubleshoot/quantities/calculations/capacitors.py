"""Calculations about motor capacitors."""

from typing import Final

from troubleshoot.quantities import capacitors
from troubleshoot.quantities.calculations.model import (
    WORD,
    Calculation,
    Computed,
    Given,
    Parameter,
    Result,
    direct,
)

TOPIC: Final = "Capacitors"

_CHARGED: Final = (
    "A capacitor holds its charge with the power off: discharge it through a bleed resistor, never "
    "with a screwdriver, and prove it with a meter before touching it."
)
_LIVE: Final = "The reading is taken live: only for those trained and equipped for live work."

_VALUES: Final = Parameter("values", "uF", "each capacitor's value", fewest=2)


def _deviation(given: Given) -> Computed:
    rated, tolerance = given.number("rated"), given.number("tolerance")
    measured = given.optional("measured")
    low, high = capacitors.capacitance_limits(rated, tolerance)
    if measured is None:
        return Computed({"low-limit": low, "high-limit": high})
    found = capacitors.capacitance_deviation(rated, measured, tolerance)
    return Computed(
        {
            "deviation": found.deviation_percent,
            "low-limit": low,
            "high-limit": high,
            "verdict": found.verdict,
        }
    )


def _stored_energy(given: Given) -> Computed:
    stored = capacitors.stored_energy(given.number("capacitance"), given.number("rms-voltage"))
    cautions: tuple[str, ...] = ()
    if stored.peak_v > capacitors.SHOCK_VOLTAGE_V and stored.energy_j >= capacitors.SHOCK_ENERGY_J:
        cautions = ("More than 100 V with 10 J or more can kill outright.",)
    return Computed({"energy": stored.energy_j, "peak-voltage": stored.peak_v}, cautions)


def _discharge_time(given: Given) -> Computed:
    capacitance, resistance = given.number("capacitance"), given.number("resistance")
    start, safe = given.number("start-voltage"), given.number("safe-voltage")
    return Computed(
        {
            "time": capacitors.discharge_time(capacitance, resistance, start, safe),
            "time-constant": capacitors.time_constant(capacitance, resistance),
        }
    )


CALCULATIONS: Final = (
    Calculation(
        name="capacitance-under-load",
        parameters=(
            Parameter("current", "A", "amps in the capacitor's own lead"),
            Parameter("voltage", "V", "volts across the capacitor itself, not the line"),
            Parameter("frequency", "Hz", "of the supply", default="60 Hz"),
        ),
        results=(Result("capacitance", "uF", "of the capacitor at work"),),
        formula="1,000,000 x current / (2 pi x frequency x voltage): 2652 x amps / volts at 60 Hz",
        source="capacitive reactance, circuit theory; range of IEC 60252-1",
        compute=direct(
            "capacitance", capacitors.capacitance_under_load, "current", "voltage", "frequency"
        ),
        cautions=(
            "Line volts in place of the volts across the capacitor read far too high.",
            _LIVE,
        ),
    ),
    Calculation(
        name="capacitance-deviation",
        parameters=(
            Parameter("rated", "uF", "capacitance on the label"),
            Parameter(
                "measured", "uF", "capacitance read; left out, only limits come", required=False
            ),
            Parameter(
                "tolerance", "percent", "on the label, either way", default="6 %", spread=True
            ),
        ),
        results=(
            Result("deviation", "percent", "measured from rated"),
            Result("low-limit", "uF", "lowest that the label allows"),
            Result("high-limit", "uF", "highest that the label allows"),
            Result("verdict", WORD, "within or outside"),
        ),
        formula="100 x (measured - rated) / rated; limits: rated x (1 -/+ tolerance / 100)",
        source="definition of the label's tolerance; 6 % is the usual one of run capacitors",
        compute=_deviation,
        cautions=("The tolerance on the label rules.", _CHARGED),
    ),
    Calculation(
        name="capacitor-stored-energy",
        parameters=(
            Parameter("capacitance", "uF", "of the capacitor"),
            Parameter("rms-voltage", "V", "that it runs at"),
        ),
        results=(
            Result("energy", "J", "held if power goes off at the peak of the voltage"),
            Result("peak-voltage", "V", "square root of 2 x the voltage it runs at"),
        ),
        formula="capacitance x peak voltage squared / 2; peak voltage = 1.414 x rms voltage",
        source="textbook; 10 J and 100 V: DOE electrical hazard classification",
        compute=_stored_energy,
        cautions=(_CHARGED,),
    ),
    Calculation(
        name="capacitor-discharge-time",
        parameters=(
            Parameter("capacitance", "uF", "of the capacitor"),
            Parameter("resistance", "ohm", "of the bleed resistor"),
            Parameter("start-voltage", "V", "at the start: the peak, 1.414 x rms"),
            Parameter("safe-voltage", "V", "to come down to", default="50 V"),
        ),
        results=(
            Result("time", "s", "until the voltage is down to the safe one"),
            Result("time-constant", "s", "resistance x capacitance"),
        ),
        formula="resistance x capacitance x ln(start voltage / safe voltage)",
        source="discharge through a resistor, textbook; 50 V: 29 CFR 1910.333(a)(1)",
        compute=_discharge_time,
        cautions=("The meter, not the clock, says that it is discharged.", _CHARGED),
    ),
    Calculation(
        name="capacitors-in-series",
        parameters=(_VALUES,),
        results=(Result("capacitance", "uF", "end to end"),),
        formula="1 / (sum of 1 / value): always below the smallest",
        source="textbook series rule",
        compute=lambda given: Computed(
            {"capacitance": capacitors.capacitors_in_series(given.numbers("values"))}
        ),
        cautions=(_CHARGED,),
    ),
    Calculation(
        name="capacitors-in-parallel",
        parameters=(_VALUES,),
        results=(Result("capacitance", "uF", "side by side"),),
        formula="sum of the values",
        source="textbook parallel rule",
        compute=lambda given: Computed(
            {"capacitance": capacitors.capacitors_in_parallel(given.numbers("values"))}
        ),
        cautions=(_CHARGED,),
    ),
)
