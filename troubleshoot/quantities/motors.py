"""Motors and what they drive: windings, insulation, speed, power, fans, belts, circuit sizes.

Temperatures in °F at the door, resistance in ohm (insulation in megohm), speed in rpm.
"""

import math
from collections.abc import Sequence
from typing import Final, Literal

from troubleshoot.frozen import frozen
from troubleshoot.quantities.ranges import OutOfRange, require
from troubleshoot.quantities.units import convert

COPPER_CONSTANT_C: Final = 234.5
"""Temperature in degrees C below zero at which copper's resistance, run on straight, would vanish
(IEC 60034-1, IEEE 112)."""

WINDING_TOLERANCE_SHARE: Final = 0.05
WINDING_TOLERANCE_OHM: Final = 0.2
"""How far three winding readings may miss adding up: common practice, no source. The second is
what leads and zeroing cost on a low-ohm winding."""

MINIMUM_INSULATION_MOHM: Final = 5.0
"""Random-wound stators, and form-wound ones below 1 kV, at 40 °C (IEEE 43-2013, Table 3)."""

Winding = Literal[
    "consistent", "inconsistent", "shorted", "common-open", "run-open", "start-open", "open"
]


@frozen
class WindingVerdict:
    """What R-S should read (None when a pair is open), how far it misses, both in ohm."""

    expected_ohm: float | None
    difference_ohm: float | None
    verdict: Winding


def winding_check(c_r_ohm: float, c_s_ohm: float, r_s_ohm: float) -> WindingVerdict:
    """Return whether three readings of a single-phase motor's windings agree.

    R-S = C-R + C-S, for run and start winding lie in series between R and S. An infinite reading
    is an open one: both pairs to C open while R-S still reads is an open lead or overload inside,
    on a hot compressor to be measured again cold. Raises OutOfRange for negative resistance.
    """
    readings = (c_r_ohm, c_s_ohm, r_s_ohm)
    for key, ohms in zip(("c-r", "c-s", "r-s"), readings, strict=True):
        if math.isnan(ohms) or ohms < 0:
            raise OutOfRange(key, f"{key} is {ohms:g} ohm", "resistance is never below zero")
    opened = tuple(math.isinf(ohms) for ohms in readings)
    if any(opened):
        return WindingVerdict(None, None, _OPEN_PAIRS.get(opened, "inconsistent"))
    expected = c_r_ohm + c_s_ohm
    difference = round(r_s_ohm - expected, 9) + 0.0  # what binary fractions leave is nothing read
    allowed = max(WINDING_TOLERANCE_SHARE * expected, WINDING_TOLERANCE_OHM)
    if min(readings) == 0:
        return WindingVerdict(expected, difference, "shorted")
    agrees = abs(difference) <= allowed
    return WindingVerdict(expected, difference, "consistent" if agrees else "inconsistent")


_OPEN_PAIRS: Final[dict[tuple[bool, ...], Winding]] = {
    (True, True, False): "common-open",
    (True, False, True): "run-open",
    (False, True, True): "start-open",
    (True, True, True): "open",
}


def resistance_at_temperature(resistance_ohm: float, t1_f: float, t2_f: float) -> float:
    """Return a copper winding's resistance at `t2_f` from that measured at `t1_f`.

    R2 = R1 x (234.5 + t2) / (234.5 + t1), t in degrees C (IEC 60034-1, IEEE 112). Valid for copper
    from -60 to 400 °F; aluminium has 225. Raises OutOfRange.
    """
    require("resistance", resistance_ohm, "ohm", above=0)
    for key, temperature in (("t1", t1_f), ("t2", t2_f)):
        require(key, temperature, "F", at_least=-60, at_most=400)
    first, second = (COPPER_CONSTANT_C + convert(t, "F", "C") for t in (t1_f, t2_f))
    return resistance_ohm * second / first


def insulation_resistance_at_40c(resistance_mohm: float, temperature_f: float) -> float:
    """Return the insulation resistance in megohm that a winding would show at 40 degrees C.

    R40 = R x 2 ^ ((t - 40) / 10), t in degrees C: insulation resistance halves for each 10 degrees
    C (IEEE 43). Approximate; modern insulation changes less. Valid from 10 to 85 degrees C (50 to
    185 °F). Raises OutOfRange.
    """
    require("resistance", resistance_mohm, "Mohm", at_least=0)
    require("temperature", temperature_f, "F", at_least=50, at_most=185)
    return float(resistance_mohm * 2 ** ((convert(temperature_f, "F", "C") - 40) / 10))


def synchronous_speed(frequency_hz: float, poles: float) -> float:
    """Return the speed of the turning field in rpm: 120 x frequency / poles. Raises OutOfRange."""
    require("frequency", frequency_hz, "Hz", above=0)
    require("poles", poles, at_least=2, at_most=100)
    if poles % 2:
        raise OutOfRange("poles", f"poles is {poles:g}", "poles come in pairs: 2, 4, 6, 8 ...")
    return 120 * frequency_hz / poles


def slip(sync_rpm: float, running_rpm: float) -> float:
    """Return the slip in percent: 100 x (synchronous - running) / synchronous.

    Raises OutOfRange when the rotor is said to outrun its field or to turn backwards.
    """
    require("sync", sync_rpm, "rpm", above=0)
    require("running", running_rpm, "rpm", at_least=0, at_most=sync_rpm)
    return 100 * (sync_rpm - running_rpm) / sync_rpm


@frozen
class FanRatios:
    """What flow, pressure and power are multiplied by when a fan's speed changes."""

    flow: float
    pressure: float
    power: float


def fan_laws(speed_1_rpm: float, speed_2_rpm: float) -> FanRatios:
    """Return the ratios of flow, pressure and power between two speeds of one fan.

    Flow goes with speed, pressure with its square, power with its cube, at constant density in the
    same duct (ASHRAE Handbook, HVAC Systems and Equipment, Fans). Real power saved is 5 to 15 %
    less. Any two speeds, or flows, in like units. Raises OutOfRange.
    """
    require("speed-1", speed_1_rpm, "rpm", above=0)
    require("speed-2", speed_2_rpm, "rpm", at_least=0)
    ratio = speed_2_rpm / speed_1_rpm
    return FanRatios(ratio, ratio**2, ratio**3)


def belt_drive(motor_rpm: float, motor_pulley_in: float, fan_pulley_in: float) -> float:
    """Return the fan's speed in rpm: motor speed x motor pulley / fan pulley.

    Pitch diameters, in inches. A tight belt loses 1 to 2 % to creep, a slack one more. Raises
    OutOfRange.
    """
    require("motor-speed", motor_rpm, "rpm", at_least=0)
    require("motor-pulley", motor_pulley_in, "in", above=0)
    require("fan-pulley", fan_pulley_in, "in", above=0)
    return motor_rpm * motor_pulley_in / fan_pulley_in


def motor_power(voltage_v: float, current_a: float, power_factor: float, phases: float) -> float:
    """Return the electrical power taken, in kW.

    V x I x power factor / 1000, times the square root of 3 for three phases (line-to-line volts,
    line amps). Raises OutOfRange for a power factor beyond 0 to 1 or phases other than 1 and 3.
    """
    require("voltage", voltage_v, "V", at_least=0)
    require("current", current_a, "A", at_least=0)
    require("power-factor", power_factor, at_least=0, at_most=1)
    if phases not in (1, 3):
        raise OutOfRange("phases", f"phases is {phases:g}", "a motor here has 1 or 3")
    return math.sqrt(phases) * voltage_v * current_a * power_factor / 1000


STANDARD_SIZES_A: Final = (
    *(15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250),
    *(300, 350, 400, 450, 500, 600, 700, 800, 1000, 1200, 1600, 2000, 2500, 3000, 4000, 5000, 6000),
)
"""Standard ratings of fuses and breakers in amps (NEC 240.6(A)), without the small fuses."""


@frozen
class CircuitAmpacity:
    """Minimum circuit ampacity, maximum overcurrent protection and the size to fit, amps."""

    minimum_a: float
    maximum_a: float
    standard_size_a: int


def circuit_ampacity(largest_a: float, others_a: Sequence[float] = ()) -> CircuitAmpacity:
    """Return the sizes of the branch circuit for several motors on one supply.

    minimum = 1.25 x largest + others; maximum = 2.25 x largest + others (NEC 440.22, 440.33); the
    standard size is the largest of NEC 240.6(A) not above the maximum, never under 15 A and never
    so small that it does not cover the minimum. The nameplate's figures rule. Raises OutOfRange.
    """
    require("largest", largest_a, "A", above=0)
    for other in others_a:
        require("others", other, "A", at_least=0)
        if other > largest_a:
            raise OutOfRange(
                "others",
                f"one of the others ({other:g} A) is above the largest ({largest_a:g} A)",
                "name the largest motor or compressor as largest",
            )
    rest = math.fsum(others_a)
    minimum, maximum = 1.25 * largest_a + rest, 2.25 * largest_a + rest
    require("largest", maximum, "A in all", at_most=STANDARD_SIZES_A[-1])
    fitting = [size for size in STANDARD_SIZES_A if size <= maximum]
    size = fitting[-1] if fitting else STANDARD_SIZES_A[0]
    if size < minimum:
        size = next(size for size in STANDARD_SIZES_A if size >= minimum)
    return CircuitAmpacity(minimum, maximum, size)
