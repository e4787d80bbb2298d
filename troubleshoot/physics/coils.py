"""Condenser and evaporator by effectiveness and number of transfer units, zone by zone.

The refrigerant's zones (superheated, boiling or condensing, subcooled) share coil and air in
proportion. Wet coil: Braun, Klein and Mitchell 1989 (driving force: enthalpy against air saturated
at the refrigerant; wholly dry or wholly wet, whichever carries more). Temperatures in degrees C.
"""

from __future__ import annotations

import math
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.physics import moist
from troubleshoot.physics.moist import Air
from troubleshoot.physics.refrigerant import Refrigerant

GAS_SHARE: Final = 0.45
"""Conductance of a condenser's zone of gas over that of its condensing zone."""
SUPERHEAT_SHARE: Final = 0.2
"""Conductance of an evaporator's zone of gas over that on its air's side."""
LIQUID_SHARE: Final = 0.7
REFRIGERANT_SHARE: Final = 2.2
"""Conductance on the refrigerant's side of a boiling zone over that on the air's side."""
GLIDE_SHARE: Final = 0.45
"""How far a boiling blend's mean temperature lies below its dew point, as a share of its glide."""


@frozen
class Coil:
    """`conductance` in W/K (of the air's side for the evaporator, overall for the condenser);
    `air` in kg/s of dry air."""

    conductance: float
    air: float


@frozen
class Condensed:
    """What leaves a condenser: J/kg, shares of the coil with gas, mixture and liquid, the quality
    at the end of the mixture, W given to the air."""

    enthalpy: float
    gas: float
    mixture: float
    liquid: float
    quality: float
    heat: float


@frozen
class Evaporated:
    """What leaves an evaporator: J/kg, the share of the coil that boils, qualities at its start
    and end, the air that leaves, W in all, degrees C of the coldest surface."""

    enthalpy: float
    boiling: float
    entering_quality: float
    quality: float
    air: Air
    heat: float
    surface: float


def condense(
    fluid: Refrigerant, coil: Coil, condensing: float, flow: float, entering: float, air_c: float
) -> Condensed:
    """Gas of J/kg `entering`, at bubble point `condensing`, cooled by air at `air_c`."""
    capacity = coil.air * 1010.0
    dew = fluid.dew_temperature(fluid.bubble_pressure(condensing))
    middle = (dew + condensing) / 2
    drive = max(middle - air_c, 0.2)
    gas_h, liquid_h = fluid.vapour_enthalpy(dew), fluid.liquid_enthalpy(condensing)
    hot = max(entering - gas_h, 0.0)
    superheat = fluid.superheat(dew, entering) if hot else 0.0
    by_gas = capacity * -math.expm1(-GAS_SHARE * coil.conductance / capacity)
    gas = min(flow * hot / (by_gas * (drive + 0.4 * superheat)), 0.9)
    rate = capacity * -math.expm1(-coil.conductance / capacity) * drive
    latent = min(gas_h, entering) - liquid_h
    needed = flow * latent / rate
    mixture = min(needed, 1.0 - gas)
    leaving, liquid = liquid_h, 1.0 - gas - mixture
    share = 0.0
    if needed > mixture:
        share = 1.0 - mixture / needed
        leaving = liquid_h + share * latent
    elif liquid > 1e-9:
        leaving -= (
            _crossed(LIQUID_SHARE * coil.conductance * liquid, capacity * liquid, flow * 1600.0)
            * max(condensing - air_c, 0.0)
            / flow
        )
    leaving = max(leaving, fluid.liquid_enthalpy(air_c))
    return Condensed(leaving, gas, mixture, liquid, share, flow * (entering - leaving))


def _crossed(conductance: float, one: float, other: float) -> float:
    """W/K that two streams in cross flow exchange, by their capacities in W/K."""
    least, most = min(one, other), max(one, other)
    units, ratio = conductance / least, max(least / most, 1e-6)
    inner = -math.expm1(-ratio * units**0.78) * units**0.22 / ratio
    return least * -math.expm1(-inner)


def evaporate(
    fluid: Refrigerant, coil: Coil, evaporating: float, flow: float, entering: float, air: Air
) -> Evaporated:
    """Mixture of J/kg `entering` boiled, at dew point `evaporating`, by moist air."""
    pressure = fluid.dew_pressure(evaporating)
    bubble = fluid.bubble_temperature(pressure)
    middle = evaporating - GLIDE_SHARE * (evaporating - bubble)
    gas_h, liquid_h = fluid.vapour_enthalpy(evaporating), fluid.liquid_enthalpy(bubble)
    latent = gas_h - liquid_h
    start = min(max((entering - liquid_h) / latent, 0.0), 1.0)
    rate, cooled, surface = _cold_coil(coil, middle, air)
    needed = flow * max(gas_h - entering, 0.0) / max(rate, 1e-6)
    boiling = min(needed, 1.0)
    end, leaving = 1.0, max(gas_h, entering)
    dry = air
    if needed > 1.0:
        leaving = entering + rate / flow
        end = min(max((leaving - liquid_h) / latent, 0.0), 1.0)
    elif boiling < 1.0:
        leaving, dry = _superheat(fluid, coil, evaporating, flow, leaving, 1.0 - boiling, air)
    out = moist.mixed(dry, cooled, boiling)
    return Evaporated(leaving, boiling, start, end, out, flow * (leaving - entering), surface)


def _cold_coil(coil: Coil, middle: float, air: Air) -> tuple[float, Air, float]:
    """W of a whole coil that boils, the air behind it, and its surface's temperature."""
    outside = coil.conductance
    inside = REFRIGERANT_SHARE * outside
    heat = air.specific_heat
    by_air = outside / (coil.air * heat)
    whole = outside * inside / (outside + inside)
    dry = coil.air * heat * -math.expm1(-whole / (coil.air * heat)) * (air.dry_bulb - middle)
    saturated = moist.saturated_enthalpy(middle)
    middling = (middle + air.dry_bulb) / 2
    slope = (moist.saturated_enthalpy(middling) - saturated) / max(middling - middle, 0.5)
    units = (outside / heat) / (1.0 + slope / heat * outside / inside) / coil.air
    wet = coil.air * -math.expm1(-units) * (air.enthalpy - saturated)
    through = -math.expm1(-by_air)
    if wet > dry:
        surface = moist.saturated_at(air.enthalpy - wet / coil.air / through)
        if moist.saturated_humidity(surface) < air.humidity:
            celsius = surface + (air.dry_bulb - surface) * (1.0 - through)
            return max(wet, 1.0), _wet_air(celsius, air.enthalpy - wet / coil.air), surface
    surface = air.dry_bulb - dry / (coil.air * heat) / through
    return max(dry, 1.0), Air(air.dry_bulb - dry / (coil.air * heat), air.humidity), surface


def _wet_air(celsius: float, enthalpy: float) -> Air:
    """Air of a dry bulb and an enthalpy."""
    return Air(celsius, (enthalpy - 1006.0 * celsius) / (2.501e6 + 1860.0 * celsius))


def _superheat(
    fluid: Refrigerant, coil: Coil, dew: float, flow: float, start: float, share: float, air: Air
) -> tuple[float, Air]:
    """J/kg that leaves the dry end of the coil, and the air behind that part."""
    capacity = coil.air * share * air.specific_heat
    gas = flow * 900.0
    per_kelvin = _crossed(SUPERHEAT_SHARE * coil.conductance * share, capacity, gas)
    heat = per_kelvin * max(air.dry_bulb - dew, 0.0)
    limit = fluid.superheated(dew, max(air.dry_bulb - dew, 0.0))[0]
    leaving = max(min(start + heat / flow, limit), start)
    return leaving, Air(air.dry_bulb - flow * (leaving - start) / capacity, air.humidity)
