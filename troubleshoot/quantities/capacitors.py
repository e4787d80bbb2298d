"""Motor capacitors: capacitance at work and against the nameplate, stored energy, discharge.

Volts are true RMS, capacitance in microfarads, percentages in percent. A charged capacitor can
kill: it is discharged through a bleed resistor and metered before anyone touches it.
"""

import math
from collections.abc import Sequence
from typing import Final, Literal

from troubleshoot.frozen import frozen
from troubleshoot.quantities.ranges import require, require_all

MAINS_FREQUENCY_HZ: Final = 60.0

SAFE_VOLTAGE_V: Final = 50.0
"""Live parts at or above this must be made dead or guarded (29 CFR 1910.333(a)(1))."""

SHOCK_VOLTAGE_V: Final = 100.0
SHOCK_ENERGY_J: Final = 10.0
"""Above this voltage a capacitor with this energy can kill (DOE electrical hazard classes)."""

_HIGHEST_CAPACITOR_VOLTS: Final = 660.0
_HIGHEST_CAPACITOR_FREQUENCY: Final = 100.0


@frozen
class CapacitanceVerdict:
    """A measured capacitance against the nameplate: percent, uF, uF, and within or outside."""

    deviation_percent: float
    low_limit_uf: float
    high_limit_uf: float
    verdict: Literal["within", "outside"]


@frozen
class StoredEnergy:
    """What a capacitor holds when power goes off at the top of the wave: joules and volts."""

    energy_j: float
    peak_v: float


def capacitance_under_load(
    current_a: float, voltage_v: float, frequency_hz: float = MAINS_FREQUENCY_HZ
) -> float:
    """Return the capacitance in uF of a capacitor at work.

    C = 1,000,000 x I / (2 pi f V); at 60 Hz that is 2652 x amps / volts. The volts are those
    across the capacitor itself, the amps those in its own lead: with line volts the answer is
    far too high. Valid up to 660 V and 100 Hz, the scope of IEC 60252-1. Raises OutOfRange.
    Source: capacitive reactance, circuit theory.
    """
    require("current", current_a, "A", at_least=0)
    require("voltage", voltage_v, "V", above=0, at_most=_HIGHEST_CAPACITOR_VOLTS)
    require("frequency", frequency_hz, "Hz", above=0, at_most=_HIGHEST_CAPACITOR_FREQUENCY)
    return 1e6 * current_a / (2 * math.pi * frequency_hz * voltage_v)


def capacitance_limits(rated_uf: float, tolerance_percent: float) -> tuple[float, float]:
    """Return the lowest and highest capacitance in uF that the nameplate allows.

    rated x (1 -/+ tolerance / 100); the tolerance printed on the capacitor rules. Raises
    OutOfRange.
    """
    require("rated", rated_uf, "uF", above=0)
    require("tolerance", tolerance_percent, "percent", above=0, below=100)
    part = rated_uf * tolerance_percent / 100
    return rated_uf - part, rated_uf + part


def capacitance_deviation(
    rated_uf: float, measured_uf: float, tolerance_percent: float
) -> CapacitanceVerdict:
    """Return how far a measured capacitance lies from the nameplate, and the verdict.

    deviation = 100 x (measured - rated) / rated. A value on a limit is within. Raises OutOfRange.
    """
    low, high = capacitance_limits(rated_uf, tolerance_percent)
    require("measured", measured_uf, "uF", at_least=0)
    inside = low <= measured_uf <= high
    return CapacitanceVerdict(
        deviation_percent=100 * (measured_uf - rated_uf) / rated_uf,
        low_limit_uf=low,
        high_limit_uf=high,
        verdict="within" if inside else "outside",
    )


def stored_energy(capacitance_uf: float, rms_voltage_v: float) -> StoredEnergy:
    """Return the energy in J and the voltage in V left when power goes off at the peak.

    V peak = sqrt(2) x V rms; E = C x V peak squared / 2. Raises OutOfRange. Source: textbook.
    """
    require("capacitance", capacitance_uf, "uF", above=0)
    require("rms-voltage", rms_voltage_v, "V", at_least=0)
    peak = math.sqrt(2) * rms_voltage_v
    return StoredEnergy(energy_j=capacitance_uf * 1e-6 * peak**2 / 2, peak_v=peak)


def time_constant(capacitance_uf: float, resistance_ohm: float) -> float:
    """Return R x C in seconds: the time to fall to 37 % of the starting voltage."""
    require("capacitance", capacitance_uf, "uF", above=0)
    require("resistance", resistance_ohm, "ohm", above=0)
    return resistance_ohm * capacitance_uf * 1e-6


def discharge_time(
    capacitance_uf: float,
    resistance_ohm: float,
    start_voltage_v: float,
    safe_voltage_v: float = SAFE_VOLTAGE_V,
) -> float:
    """Return the seconds in which a bleed resistor brings a capacitor down to a safe voltage.

    t = R x C x ln(start / safe); zero when it is there already. Raises OutOfRange.
    Source: textbook. The meter, not the clock, says that it is discharged.
    """
    constant = time_constant(capacitance_uf, resistance_ohm)
    require("start-voltage", start_voltage_v, "V", at_least=0)
    require("safe-voltage", safe_voltage_v, "V", above=0)
    if start_voltage_v <= safe_voltage_v:
        return 0.0
    return constant * math.log(start_voltage_v / safe_voltage_v)


def capacitors_in_series(values_uf: Sequence[float]) -> float:
    """Return the capacitance in uF of capacitors end to end: 1 / sum of (1 / C)."""
    require_all("values", values_uf, "uF", above=0)
    return 1 / math.fsum(1 / value for value in values_uf)


def capacitors_in_parallel(values_uf: Sequence[float]) -> float:
    """Return the capacitance in uF of capacitors side by side: the sum."""
    require_all("values", values_uf, "uF", above=0)
    return math.fsum(values_uf)
