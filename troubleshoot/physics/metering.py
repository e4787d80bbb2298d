"""What the expansion device passes: a fixed orifice, or a thermostatic valve on its superheat.

Flow of a short tube after the form of Aaron and Domanski 1990 (flow set by upstream pressure less
a flashing pressure just under that at which the entering liquid boils); the share below is ours.
A valve is an orifice whose opening follows superheat.
"""

from __future__ import annotations

import math
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.physics.refrigerant import Refrigerant

FLASHING: Final = 0.75
"""Pressure in the throat of a short tube, as a share of that at which the liquid boils."""
VALVE_SPAN_K: Final = 5.0
"""Superheat from a valve's first opening to fully open, K."""
VALVE_RESERVE: Final = 1.4
"""Flow of a fully open valve over what it passes at the rated point."""


@frozen
class Liquid:
    """What reaches the device: Pa, J/kg."""

    pressure: float
    enthalpy: float


@frozen
class Metering:
    """`area` in m2 (effective); `opens_at`: K of superheat, None for a fixed orifice."""

    area: float
    opens_at: float | None = None
    most: float = 1.0
    least: float = 0.02


def quality(fluid: Refrigerant, liquid: Liquid) -> tuple[float, float]:
    """Share of vapour, and degrees C, of a liquid that may boil at its pressure."""
    boiling = fluid.bubble_temperature(liquid.pressure)
    at_boiling = fluid.liquid_enthalpy(boiling)
    if liquid.enthalpy <= at_boiling:
        return 0.0, fluid.liquid_temperature(liquid.enthalpy)
    latent = max(fluid.vapour_enthalpy(boiling) - at_boiling, 1e3)
    return min((liquid.enthalpy - at_boiling) / latent, 1.0), boiling


def density(fluid: Refrigerant, liquid: Liquid) -> float:
    """kg/m3 of liquid with its bubbles, both at one speed."""
    share, celsius = quality(fluid, liquid)
    volume = share / fluid.vapour_density(celsius) + (1 - share) / fluid.liquid_density(celsius)
    return 1.0 / volume


def opening(device: Metering, superheat: float) -> float:
    """Share of the area that is open."""
    if device.opens_at is None:
        return 1.0
    asked = (superheat - device.opens_at) / VALVE_SPAN_K
    return max(min(asked, device.most), device.least)


def flow(
    fluid: Refrigerant, device: Metering, liquid: Liquid, evaporating: float, superheat: float
) -> float:
    """kg/s through the device into `evaporating` Pa; under zero where that is the higher one."""
    below = evaporating
    if device.opens_at is None:
        _, celsius = quality(fluid, liquid)
        below = max(FLASHING * fluid.bubble_pressure(celsius), evaporating)
    drop = liquid.pressure - below
    passed = math.copysign(math.sqrt(2.0 * density(fluid, liquid) * abs(drop)), drop)
    return device.area * opening(device, superheat) * passed
