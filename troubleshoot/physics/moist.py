"""Moist air at sea level for the coils: enthalpies fast enough for a solver.

J/kg of dry air counted from 0 degrees C, kg of water per kg of dry air. Formulas of the ASHRAE
Handbook, Fundamentals, chapter 1, with Magnus' line for the saturation pressure (within 0.3
percent from 0 to 50 degrees C); the tests hold them to `quantities.moist_air`.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from typing import Final

from troubleshoot.frozen import frozen

ATMOSPHERE: Final = 101325.0
_LOW, _HIGH = -60, 75


@frozen
class Air:
    """Moist air: dry bulb in degrees C, humidity ratio, J/kg."""

    dry_bulb: float
    humidity: float

    @property
    def enthalpy(self) -> float:
        """J per kg of dry air."""
        return enthalpy(self.dry_bulb, self.humidity)

    @property
    def specific_heat(self) -> float:
        """J per kg of dry air and K."""
        return 1006.0 + 1860.0 * self.humidity


def saturation_pressure(celsius: float) -> float:
    """Pa of water vapour over water (over ice below freezing, near enough)."""
    return 611.2 * math.exp(17.62 * celsius / (243.12 + celsius))


def saturated_humidity(celsius: float) -> float:
    """kg/kg of saturated air."""
    vapour = min(saturation_pressure(celsius), 0.8 * ATMOSPHERE)
    return 0.621945 * vapour / (ATMOSPHERE - vapour)


def enthalpy(celsius: float, humidity: float) -> float:
    """J per kg of dry air."""
    return 1006.0 * celsius + humidity * (2.501e6 + 1860.0 * celsius)


_SATURATED: Final = tuple(enthalpy(t, saturated_humidity(t)) for t in range(_LOW, _HIGH + 1))


def saturated_enthalpy(celsius: float) -> float:
    """J/kg of saturated air, between rows of one K."""
    x = celsius - _LOW
    i = min(max(int(x), 0), len(_SATURATED) - 2)
    return _SATURATED[i] + (x - i) * (_SATURATED[i + 1] - _SATURATED[i])


def saturated_at(wanted: float) -> float:
    """Degrees C at which saturated air has this enthalpy."""
    i = min(max(bisect_right(_SATURATED, wanted) - 1, 0), len(_SATURATED) - 2)
    return _LOW + i + (wanted - _SATURATED[i]) / (_SATURATED[i + 1] - _SATURATED[i])


def from_wet_bulb(dry_bulb: float, wet_bulb: float) -> Air:
    """Air of these two thermometers, degrees C."""
    at_wet = saturated_humidity(wet_bulb)
    humidity = (at_wet * (2.501e6 - 2326.0 * wet_bulb) - 1006.0 * (dry_bulb - wet_bulb)) / (
        2.501e6 + 1860.0 * dry_bulb - 4186.0 * wet_bulb
    )
    return Air(dry_bulb, max(humidity, 1e-4))


def wet_bulb(air: Air) -> float:
    """Degrees C of the wet bulb."""
    low, high = -40.0, air.dry_bulb
    for _ in range(40):
        middle = (low + high) / 2
        if from_wet_bulb(air.dry_bulb, middle).humidity < air.humidity:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def mixed(one: Air, other: Air, share_of_other: float) -> Air:
    """Two airs mixed by mass of dry air."""
    return Air(
        one.dry_bulb + share_of_other * (other.dry_bulb - one.dry_bulb),
        one.humidity + share_of_other * (other.humidity - one.humidity),
    )
