"""How much refrigerant is where: kg in each part of a circuit, by its zones.

Void fraction after Zivi 1964: gas and liquid move at speeds whose ratio is the cube root of their
densities' ratio; the mean along a zone where quality changes evenly has a closed form.
"""

from __future__ import annotations

import math

from troubleshoot.frozen import frozen
from troubleshoot.physics.coils import Condensed, Evaporated
from troubleshoot.physics.metering import Liquid, density
from troubleshoot.physics.refrigerant import Refrigerant


@frozen
class Volumes:
    """Inside volumes in m3; `suction` holds gas, with the shell."""

    condenser: float
    evaporator: float
    liquid_line: float
    suction: float

    @property
    def all(self) -> float:
        return self.condenser + self.evaporator + self.liquid_line + self.suction


def mixture_density(liquid: float, gas: float, one: float, other: float) -> float:
    """Mean kg/m3 between two qualities, from the densities of liquid and gas."""
    ratio: float = (gas / liquid) ** (2.0 / 3.0)
    low, high = min(one, other), max(one, other)
    if high - low < 1e-6:
        high = low + 1e-6
    slope = 1.0 - ratio

    def whole(x: float) -> float:
        return x / slope - ratio / slope**2 * math.log(ratio + slope * x)

    void = (whole(high) - whole(low)) / (high - low)
    return void * gas + (1.0 - void) * liquid


def in_condenser(fluid: Refrigerant, volume: float, condensing: float, zones: Condensed) -> float:
    """kg in a condenser."""
    liquid, gas = fluid.liquid_density(condensing), fluid.vapour_density(condensing)
    mixture = mixture_density(liquid, gas, zones.quality, 1.0)
    return volume * (zones.gas * 0.85 * gas + zones.mixture * mixture + zones.liquid * liquid)


def in_evaporator(
    fluid: Refrigerant, volume: float, evaporating: float, zones: Evaporated
) -> float:
    """kg in an evaporator."""
    liquid, gas = fluid.liquid_density(evaporating), fluid.vapour_density(evaporating)
    mixture = mixture_density(liquid, gas, zones.entering_quality, zones.quality)
    return volume * (zones.boiling * mixture + (1.0 - zones.boiling) * 0.95 * gas)


def in_circuit(
    fluid: Refrigerant,
    volumes: Volumes,
    high: tuple[float, Condensed],
    low: tuple[float, Evaporated],
    line: Liquid,
) -> float:
    """kg in the whole circuit: condensing and evaporating degrees C with their zones, the line."""
    return (
        in_condenser(fluid, volumes.condenser, *high)
        + in_evaporator(fluid, volumes.evaporator, *low)
        + volumes.liquid_line * density(fluid, line)
        + volumes.suction * fluid.vapour_density(low[0])
    )


def standing_pressure(fluid: Refrigerant, volumes: Volumes, charge: float, celsius: float) -> float:
    """Pa of an equalized circuit at one temperature: saturated, or gas alone if that is all."""
    saturated = fluid.bubble_pressure(celsius)
    full = volumes.all * fluid.vapour_density(celsius)
    return saturated if charge >= full else saturated * charge / full
