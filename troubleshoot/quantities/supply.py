"""The three-phase supply: unbalance of volts and amps, what it does to motors, voltage limits.

Volts are true RMS, line to line, under load; percentages in percent.
"""

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import Final, Literal

from troubleshoot.frozen import frozen
from troubleshoot.quantities.plate_volts import of_one_supply
from troubleshoot.quantities.ranges import OutOfRange, require, require_all

HIGHEST_UNBALANCE_PERCENT: Final = 5.0
"""Above this NEMA MG 1 (14.36) recommends that a motor is not run."""

_DERATING_CURVE: Final = (
    (0.0, 1.0),
    (1.0, 1.0),
    (1.5, 0.97),
    (2.0, 0.95),
    (2.5, 0.93),
    (3.0, 0.89),
    (4.0, 0.82),
    (4.5, 0.78),
    (5.0, 0.76),
)
"""Read off the curve of NEMA MG 1, Figure 14-1 / 20-2. Read-offs in print differ: 3 % appears as
0.88, 0.89 and 0.90, 5 % as 0.75 and 0.76."""

SYSTEM_VOLTAGES_V: Final = (120.0, 208.0, 240.0, 277.0, 347.0, 480.0, 600.0)
"""Nominal voltages of systems. Other figures (115, 200, 230, 460, 575) are those of motors."""

_RANGE_A: Final = (114 / 120, 126 / 120)
_RANGE_B: Final = (110 / 120, 127 / 120)
"""Service voltage by ANSI C84.1 (2006 and later) on its 120 V base. From memory."""

MOTOR_VOLTAGE_TOLERANCE: Final = 0.10
"""A motor runs within 10 % either way of its nameplate voltage (NEMA MG 1, 12.44)."""


@frozen
class Unbalance:
    """Three legs compared: their average, the largest deviation from it, and that in percent."""

    average: float
    largest_deviation: float
    percent: float


@frozen
class VoltageVerdict:
    """Measured against nominal: percent, the limits in V that were used, and the verdict."""

    deviation_percent: float
    low_limit_v: float
    high_limit_v: float
    verdict: Literal["range-a", "range-b", "within", "outside"]


def unbalance(first: float, second: float, third: float) -> Unbalance:
    """Return the unbalance of three volts or three amps.

    100 x largest deviation from the average / average (NEMA MG 1, 14.36); never the spread of the
    highest and lowest. Raises OutOfRange for negative legs and when all three are zero.
    """
    legs = (first, second, third)
    for leg in legs:
        require("leg", leg, at_least=0)
    average = math.fsum(legs) / 3
    if average == 0:
        raise OutOfRange("leg", "all three legs read zero", "there is no unbalance to compute")
    deviation = max(abs(leg - average) for leg in legs)
    return Unbalance(average, deviation, 100 * deviation / average)


def negative_sequence_factor(ab_v: float, bc_v: float, ca_v: float) -> float:
    """Return the true unbalance factor V2 / V1 in percent from three line-to-line volts.

    b = sum of V^4 / (sum of V^2)^2; factor = sqrt((1 - sqrt(3 - 6 b)) / (1 + sqrt(3 - 6 b))),
    IEC 61000-4-30. It differs from the MG 1 figure by up to about 15 %. Raises OutOfRange when
    the three volts cannot close a triangle, for then one of them is misread.
    """
    for key, volts in (("ab", ab_v), ("bc", bc_v), ("ca", ca_v)):
        require(key, volts, "V", at_least=0)
    squares = [volts**2 for volts in (ab_v, bc_v, ca_v)]
    total = math.fsum(squares)
    if total == 0:
        raise OutOfRange("ab", "all three line volts read zero", "there is no supply to judge")
    longest = max(ab_v, bc_v, ca_v)
    if 2 * longest > (ab_v + bc_v + ca_v) * (1 + 1e-9):
        raise OutOfRange(
            "ab",
            f"{ab_v:.4g}, {bc_v:.4g} and {ca_v:.4g} V cannot be the three sides of one supply",
            "the highest may not exceed the sum of the others; read all three pairs again",
        )
    beta = math.fsum(square**2 for square in squares) / total**2
    root = math.sqrt(max(0.0, 3 - 6 * beta))
    return 100 * math.sqrt(max(0.0, 1 - root) / (1 + root))


def derating_factor(unbalance_percent: float) -> float:
    """Return the part of its rated load a motor may carry at a voltage unbalance (MG 1 percent).

    Straight lines between points read off NEMA MG 1, Figure 14-1 / 20-2: +/-0.02. Derating starts
    at 1 %. Raises OutOfRange above 5 %, where a motor should not be run.
    """
    require("percent", unbalance_percent, "percent", at_least=0)
    if unbalance_percent > HIGHEST_UNBALANCE_PERCENT:
        raise OutOfRange(
            "percent",
            f"voltage unbalance is {unbalance_percent:.1f} percent",
            "above 5 percent the motor should not be run at all; correct the supply first",
        )
    for (low, low_factor), (high, high_factor) in pairwise(_DERATING_CURVE):
        if unbalance_percent <= high:
            share = (unbalance_percent - low) / (high - low)
            return low_factor + share * (high_factor - low_factor)
    return _DERATING_CURVE[-1][1]


def added_temperature_rise(unbalance_percent: float) -> float:
    """Return how much more a motor's windings heat up at a voltage unbalance, percent.

    2 x percent squared: a widely quoted rule of thumb after NEMA MG 1. Raises OutOfRange above 5 %.
    """
    require("percent", unbalance_percent, "percent", at_least=0, at_most=HIGHEST_UNBALANCE_PERCENT)
    return 2 * unbalance_percent**2


def expected_current_unbalance(unbalance_percent: float) -> tuple[float, float]:
    """Return the current unbalance in percent that a voltage unbalance by itself brings about.

    6 to 10 times (commentary on NEMA MG 1). Much more than that points at the motor or a contact.
    Raises OutOfRange above 5 %.
    """
    require("percent", unbalance_percent, "percent", at_least=0, at_most=HIGHEST_UNBALANCE_PERCENT)
    return 6 * unbalance_percent, 10 * unbalance_percent


def motor_voltage_limits(nameplate_v: Sequence[float]) -> tuple[float, float]:
    """Return the lowest and highest volts at the motor's terminals by its nameplate.

    10 % either way (NEMA MG 1, 12.44); a double nameplate such as 208/230 runs from the lower
    less 10 % to the higher plus 10 % (equipment practice).
    """
    require_all("nominal", nameplate_v, "V", above=0, at_most=1000)
    return (
        min(nameplate_v) * (1 - MOTOR_VOLTAGE_TOLERANCE),
        max(nameplate_v) * (1 + MOTOR_VOLTAGE_TOLERANCE),
    )


def service_voltage(nominal_v: Sequence[float], measured_v: float) -> VoltageVerdict:
    """Return how far a measured voltage lies from nominal, and the verdict on it.

    One system voltage (120, 208, 240, 277, 347, 480, 600 V) is judged by the service ranges A and
    B of ANSI C84.1; any other figure, or two of them, is taken as a motor's nameplate and judged
    by NEMA MG 1. The deviation is from the nearest nominal. Raises OutOfRange, also where several
    are not of one supply: what lies between 120 and 240 V is right for neither.
    """
    require_all("nominal", nominal_v, "V", above=0, at_most=1000)
    if len(nominal_v) > 1 and not of_one_supply(*nominal_v):
        raise OutOfRange(
            "nominal",
            f"nominal {', '.join(f'{volts:.4g}' for volts in nominal_v)} V are not of one supply",
            "give the volts of the service that feeds it, like 460 or 208/230",
        )
    require("measured", measured_v, "V", at_least=0)
    nearest = min(nominal_v, key=lambda nominal: abs(measured_v - nominal))
    deviation = 100 * (measured_v - nearest) / nearest
    if len(nominal_v) == 1 and nearest in SYSTEM_VOLTAGES_V:
        low, high = (nearest * share for share in _RANGE_A)
        if low <= measured_v <= high:
            return VoltageVerdict(deviation, low, high, "range-a")
        low, high = (nearest * share for share in _RANGE_B)
        inside = low <= measured_v <= high
        return VoltageVerdict(deviation, low, high, "range-b" if inside else "outside")
    low, high = motor_voltage_limits(nominal_v)
    inside = low <= measured_v <= high
    return VoltageVerdict(deviation, low, high, "within" if inside else "outside")
