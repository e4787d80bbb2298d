"""The state of moist air, from the dry bulb and one measure of its moisture.

psychrolib holds the equations of the ASHRAE Handbook, Fundamentals, chapter 1 (ideal gases: the
humidity ratio lies 0.4 to 0.6 % under that of real air). Importing it costs about 15 ms, so only
what needs it imports this module. Temperatures in °F, pressure in psia, moisture in lb of water
per lb of dry air, enthalpy in Btu per lb of dry air counted from 0 °F, volume in ft3 per lb.
"""

from typing import Final

import psychrolib

from troubleshoot.frozen import frozen
from troubleshoot.quantities.ranges import OutOfRange, require
from troubleshoot.quantities.units import STANDARD_ATMOSPHERE_PSIA

psychrolib.SetUnitSystem(psychrolib.IP)

_LOWEST_F: Final = -40.0
_HIGHEST_F: Final = 250.0
_LOWEST_PSIA: Final = 8.0
_HIGHEST_PSIA: Final = 16.0
_LEAST_HUMIDITY_RATIO: Final = 1e-7
"""psychrolib hands back this ratio, and nothing smaller, for air that could not exist."""


@frozen
class MoistAir:
    """One state of moist air; `relative_humidity` in percent."""

    dry_bulb_f: float
    wet_bulb_f: float
    relative_humidity: float
    dew_point_f: float
    humidity_ratio: float
    enthalpy: float
    volume: float


def from_wet_bulb(
    dry_bulb_f: float, wet_bulb_f: float, pressure_psia: float = STANDARD_ATMOSPHERE_PSIA
) -> MoistAir:
    """Return the state of air at a dry bulb and a wet bulb.

    Raises OutOfRange for a wet bulb above the dry bulb, and for one so low that the air would
    hold less than no water: then a thermometer is wrong.
    """
    _require_air(dry_bulb_f, pressure_psia)
    require("wet-bulb", wet_bulb_f, "F", at_least=_LOWEST_F, at_most=dry_bulb_f)
    _require_below_boiling("wet-bulb", wet_bulb_f, 1.0, pressure_psia)
    ratio = float(psychrolib.GetHumRatioFromTWetBulb(dry_bulb_f, wet_bulb_f, pressure_psia))
    if ratio <= _LEAST_HUMIDITY_RATIO:
        raise OutOfRange(
            "wet-bulb",
            f"wet bulb {wet_bulb_f:.4g} F is below that of bone-dry air at {dry_bulb_f:.4g} F",
            "check both thermometers",
        )
    return _state(dry_bulb_f, ratio, pressure_psia, wet_bulb_f)


def from_relative_humidity(
    dry_bulb_f: float, relative_humidity: float, pressure_psia: float = STANDARD_ATMOSPHERE_PSIA
) -> MoistAir:
    """Return the state of air at a dry bulb and a relative humidity in percent (0 to 100)."""
    _require_air(dry_bulb_f, pressure_psia)
    require("relative-humidity", relative_humidity, "percent", at_least=0, at_most=100)
    share = relative_humidity / 100
    _require_below_boiling("dry-bulb", dry_bulb_f, share, pressure_psia)
    ratio = float(psychrolib.GetHumRatioFromRelHum(dry_bulb_f, share, pressure_psia))
    return _state(dry_bulb_f, ratio, pressure_psia)


def from_dew_point(
    dry_bulb_f: float, dew_point_f: float, pressure_psia: float = STANDARD_ATMOSPHERE_PSIA
) -> MoistAir:
    """Return the state of air at a dry bulb and a dew point, which may not lie above it."""
    _require_air(dry_bulb_f, pressure_psia)
    require("dew-point", dew_point_f, "F", at_least=_LOWEST_F, at_most=dry_bulb_f)
    _require_below_boiling("dew-point", dew_point_f, 1.0, pressure_psia)
    ratio = float(psychrolib.GetHumRatioFromTDewPoint(dew_point_f, pressure_psia))
    return _state(dry_bulb_f, ratio, pressure_psia)


def _state(
    dry_bulb_f: float, ratio: float, pressure_psia: float, wet_bulb_f: float | None = None
) -> MoistAir:
    """Return everything that follows from the humidity ratio; a given wet bulb is kept as read."""
    if wet_bulb_f is None:
        wet_bulb_f = float(psychrolib.GetTWetBulbFromHumRatio(dry_bulb_f, ratio, pressure_psia))
    humidity = psychrolib.GetRelHumFromHumRatio(dry_bulb_f, ratio, pressure_psia)
    return MoistAir(
        dry_bulb_f=dry_bulb_f,
        wet_bulb_f=wet_bulb_f,
        relative_humidity=100 * float(humidity),
        dew_point_f=float(psychrolib.GetTDewPointFromHumRatio(dry_bulb_f, ratio, pressure_psia)),
        humidity_ratio=ratio,
        enthalpy=float(psychrolib.GetMoistAirEnthalpy(dry_bulb_f, ratio)),
        volume=float(psychrolib.GetMoistAirVolume(dry_bulb_f, ratio, pressure_psia)),
    )


def _require_air(dry_bulb_f: float, pressure_psia: float) -> None:
    require("dry-bulb", dry_bulb_f, "F", at_least=_LOWEST_F, at_most=_HIGHEST_F)
    require("pressure", pressure_psia, "psia", at_least=_LOWEST_PSIA, at_most=_HIGHEST_PSIA)


def _require_below_boiling(key: str, temperature_f: float, share: float, pressure: float) -> None:
    """Raise OutOfRange where water vapour alone would fill the air's pressure."""
    vapour = share * float(psychrolib.GetSatVapPres(temperature_f))
    if vapour >= pressure:
        raise OutOfRange(
            key,
            f"{key} {temperature_f:.4g} F is at or above the boiling point of water here",
            "moist air ends there; check the thermometer",
        )
