"""Air over the coil: capacity, airflow from a temperature rise, outdoor air, velocity, split.

Airflow in cfm, heat in Btu/h, temperatures in °F. The trade's constants are for standard air
(0.075 lb/ft3): 4.5 for total heat, 1.08 for sensible heat (dry air; 1.10 for moist air is in print
too) and 0.68 per grain for latent heat (0.69 is in print too). At altitude they are scaled by the
density of the air. Read after 15 minutes of steady running.
"""

import math
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.quantities.atmosphere import density_ratio
from troubleshoot.quantities.ranges import OutOfRange, require
from troubleshoot.quantities.units import STANDARD_ATMOSPHERE_PSIA, convert

TOTAL_FACTOR: Final = 4.5
"""Btu/h per cfm and Btu/lb: 60 min/h x 0.075 lb/ft3."""

SENSIBLE_FACTOR: Final = 1.08
"""Btu/h per cfm and °F: 60 x 0.075 x 0.24 Btu/lb °F."""

LATENT_FACTOR: Final = 0.68
"""Btu/h per cfm and grain of water per lb of air."""

STANDARD_DENSITY: Final = 0.075
"""Density of standard air, lb/ft3."""

LEAST_OUTDOOR_DIFFERENCE_F: Final = 10.0
"""With return and outdoor air closer than this, a fraction from temperatures is worth little."""

_VELOCITY_FACTOR: Final = 1096.7
_GRAINS_PER_LB: Final = 7000.0


@frozen
class AirSideCapacity:
    """What a coil takes out of the air: Btu/h three times, tons, and sensible / total."""

    total: float
    sensible: float
    latent: float
    tons: float
    sensible_heat_ratio: float


def air_side_capacity(
    airflow_cfm: float,
    entering_f: tuple[float, float],
    leaving_f: tuple[float, float],
    pressure_psia: float = STANDARD_ATMOSPHERE_PSIA,
) -> AirSideCapacity:
    """Return the cooling capacity from the airflow and (dry bulb, wet bulb) before and after.

    total = 4.5 x cfm x enthalpy difference, sensible = 1.08 x cfm x dry-bulb difference, latent =
    0.68 x cfm x grains difference, each times the density ratio at the site's pressure. Sensible
    and latent fall 2 to 3 % short of the total, for 1.08 and 0.68 are the dry, rounded constants;
    the air at 80 °F is 4 % lighter than standard air. Raises OutOfRange, also when the air gains
    heat.
    """
    from troubleshoot.quantities.moist_air import from_wet_bulb  # psychrolib: only when needed

    require("airflow", airflow_cfm, "cfm", above=0)
    entering = from_wet_bulb(*entering_f, pressure_psia)
    leaving = from_wet_bulb(*leaving_f, pressure_psia)
    mass = airflow_cfm * density_ratio(pressure_psia)
    total = TOTAL_FACTOR * mass * (entering.enthalpy - leaving.enthalpy)
    if total <= 0:
        raise OutOfRange(
            "leaving-wet-bulb",
            "the air leaves with no less heat than it entered with",
            "the readings are swapped, or the coil is not cooling",
        )
    sensible = SENSIBLE_FACTOR * mass * (entering.dry_bulb_f - leaving.dry_bulb_f)
    grains = _GRAINS_PER_LB * (entering.humidity_ratio - leaving.humidity_ratio)
    return AirSideCapacity(
        total=total,
        sensible=sensible,
        latent=LATENT_FACTOR * mass * grains,
        tons=convert(total, "Btu/h", "ton"),
        sensible_heat_ratio=sensible / total,
    )


@frozen
class OutdoorAirFraction:
    """Outdoor air in the mixture and its standard uncertainty, both in percent."""

    percent: float
    uncertainty_percent: float


def outdoor_air_fraction(
    return_f: float, mixed_f: float, outdoor_f: float, sensor_uncertainty_f: float = 1.0
) -> OutdoorAirFraction:
    """Return the share of outdoor air in the mixed air, with what the sensors make of it.

    100 x (return - mixed) / (return - outdoor), a sensible heat balance; the uncertainty is that
    of three sensors each good to `sensor_uncertainty_f` (standard, 1 °F), by the law of
    propagation (JCGM 100, 5.1.2). Raises OutOfRange when return and outdoor air are alike, and
    when the mixed air lies outside both by more than the sensors explain.
    """
    for key, value in (("return-air", return_f), ("mixed-air", mixed_f), ("outdoor", outdoor_f)):
        require(key, value, "F", at_least=-60, at_most=160)
    require("sensor-uncertainty", sensor_uncertainty_f, "F", at_least=0)
    difference = return_f - outdoor_f
    if difference == 0:
        raise OutOfRange(
            "outdoor",
            "return and outdoor air are equally warm",
            "measure when they differ by 10 F or more",
        )
    share = (return_f - mixed_f) / difference
    spread = sensor_uncertainty_f * math.sqrt(1 + (1 - share) ** 2 + share**2) / abs(difference)
    if not -2 * spread <= share <= 1 + 2 * spread:
        raise OutOfRange(
            "mixed-air",
            f"mixed air of {mixed_f:.4g} F is not between return and outdoor air",
            "a sensor is wrong or not in the mixed air; take several points",
        )
    return OutdoorAirFraction(100 * share, 100 * spread)


def mixed_air_temperature(return_f: float, outdoor_f: float, fraction_percent: float) -> float:
    """Return the temperature in °F of return and outdoor air mixed; the fraction in percent.

    return - fraction x (return - outdoor). Raises OutOfRange for a fraction beyond 0 to 100.
    """
    require("return-air", return_f, "F", at_least=-60, at_most=160)
    require("outdoor", outdoor_f, "F", at_least=-60, at_most=160)
    require("fraction", fraction_percent, "percent", at_least=0, at_most=100)
    return return_f - fraction_percent / 100 * (return_f - outdoor_f)


def air_velocity(velocity_pressure_in_wc: float, density: float = STANDARD_DENSITY) -> float:
    """Return the velocity in ft/min: 1096.7 x sqrt(velocity pressure / density).

    In. w.c. and lb/ft3; with standard air 4005 x sqrt(velocity pressure). Raises OutOfRange.
    """
    require("velocity-pressure", velocity_pressure_in_wc, "in-wc", at_least=0)
    require("density", density, "lb/ft3", above=0, at_most=0.2)
    return _VELOCITY_FACTOR * math.sqrt(velocity_pressure_in_wc / density)


def airflow_from_heat_rise(
    output_btuh: float, rise_f: float, pressure_psia: float = STANDARD_ATMOSPHERE_PSIA
) -> float:
    """Return the airflow in cfm: output / (1.08 x density ratio x rise).

    Heat given to the air (output, not input) in Btu/h, rise in °F. Raises OutOfRange.
    """
    require("output", output_btuh, "Btu/h", above=0)
    require("rise", rise_f, "F", above=0)
    return output_btuh / (SENSIBLE_FACTOR * density_ratio(pressure_psia) * rise_f)


def airflow_from_electric_heat(
    power_kw: float, rise_f: float, pressure_psia: float = STANDARD_ATMOSPHERE_PSIA
) -> float:
    """Return the airflow in cfm over electric heat of `power_kw`: 3412 Btu/h for each kW."""
    require("power", power_kw, "kW", above=0)
    return airflow_from_heat_rise(convert(power_kw, "kW", "Btu/h"), rise_f, pressure_psia)


def target_temperature_split(return_dry_bulb_f: float, return_wet_bulb_f: float) -> float:
    """Return the return-minus-supply temperature in °F that a healthy cooling system shows.

    -69.844 + 0.54637 x dry bulb + 2.18530 x wet bulb - 0.022726 x wet bulb squared: fitted, within
    0.1 °F, to the table of the California Energy Commission, Residential Appendix RA3, Table
    RA3.2-3, quoted from memory. It is for a wet coil at about 400 cfm per ton, outdoor damper shut;
    3 °F either way is normal. Valid from 70 to 84 °F dry bulb and 50 to 76 °F wet bulb. Raises
    OutOfRange.
    """
    require("return-dry-bulb", return_dry_bulb_f, "F", at_least=70, at_most=84)
    require("return-wet-bulb", return_wet_bulb_f, "F", at_least=50, at_most=76)
    require("return-wet-bulb", return_wet_bulb_f, "F", at_most=return_dry_bulb_f)
    wet_bulb_part = 2.18530 * return_wet_bulb_f - 0.022726 * return_wet_bulb_f**2
    return -69.844 + 0.54637 * return_dry_bulb_f + wet_bulb_part
