"""Superheat, subcooling and what else a gauge set and a clamp thermometer tell of a circuit.

Gauge pressures in psig with the pressure of the air at the site in psia, temperatures in °F,
differences of temperature in °F. Superheat is taken from the dew point and subcooling from the
bubble point: on a blend the wrong column is off by the whole glide. Figures hold after 15 minutes
of steady running, with outdoor air of 55 °F or more and a dry, clear coil.
"""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.quantities.ranges import OutOfRange, require
from troubleshoot.quantities.saturation import bubble_temperature, dew_temperature
from troubleshoot.quantities.units import STANDARD_ATMOSPHERE_PSIA, absolute_pressure

LOWEST_OUTDOOR_F: Final = 55.0
"""Colder than this the head pressure is not the weather's, and charge cannot be judged by it."""

LOWEST_TARGET_F: Final = 5.0
"""Below this target a fixed orifice may flood the compressor: the tables print a dash."""

DAYS_OF_YEAR: Final = 365.0


@frozen
class LineState:
    """A saturation temperature and the distance from it, both in °F.

    The distance is counted so that a healthy circuit shows it positive.
    """

    saturation_f: float
    difference_f: float


def superheat(
    refrigerant: str,
    suction_psig: float,
    line_f: float,
    atmosphere_psia: float = STANDARD_ATMOSPHERE_PSIA,
) -> LineState:
    """Return the dew temperature at the suction pressure and the line's superheat over it.

    superheat = line temperature - dew temperature. Negative means a reading or the refrigerant is
    wrong, for wet vapour cannot be colder than its dew point. Raises OutOfRange outside the table.
    """
    require("line-temperature", line_f, "F", at_least=-100, at_most=250)
    dew = dew_temperature(refrigerant, absolute_pressure(suction_psig, atmosphere_psia))
    return LineState(dew, line_f - dew)


def subcooling(
    refrigerant: str,
    liquid_psig: float,
    line_f: float,
    atmosphere_psia: float = STANDARD_ATMOSPHERE_PSIA,
) -> LineState:
    """Return the bubble temperature at the liquid pressure and the line's subcooling under it.

    subcooling = bubble temperature - line temperature. Raises OutOfRange outside the table.
    """
    require("line-temperature", line_f, "F", at_least=-100, at_most=250)
    bubble = bubble_temperature(refrigerant, absolute_pressure(liquid_psig, atmosphere_psia))
    return LineState(bubble, bubble - line_f)


def condensing_over_ambient(
    refrigerant: str,
    liquid_psig: float,
    outdoor_f: float,
    atmosphere_psia: float = STANDARD_ATMOSPHERE_PSIA,
) -> LineState:
    """Return the condensing (bubble) temperature and its distance above the outdoor air, °F."""
    require("outdoor-dry-bulb", outdoor_f, "F", at_least=-60, at_most=160)
    bubble = bubble_temperature(refrigerant, absolute_pressure(liquid_psig, atmosphere_psia))
    return LineState(bubble, bubble - outdoor_f)


def compression_ratio(
    suction_psig: float,
    discharge_psig: float,
    atmosphere_psia: float = STANDARD_ATMOSPHERE_PSIA,
) -> float:
    """Return absolute discharge pressure / absolute suction pressure.

    A ratio of gauge pressures is wrong: 185 over 35 psig is 4.0, not 5.3. Raises OutOfRange for a
    suction at or below a perfect vacuum, and for a discharge below the suction.
    """
    suction = absolute_pressure(suction_psig, atmosphere_psia)
    discharge = absolute_pressure(discharge_psig, atmosphere_psia)
    require("suction-pressure", suction, "psia", above=0)
    require("discharge-pressure", discharge, "psia", above=0)
    if discharge < suction:
        raise OutOfRange(
            "discharge-pressure",
            f"discharge {discharge_psig:.4g} psig is below suction {suction_psig:.4g} psig",
            "the hoses or the readings are swapped",
        )
    return discharge / suction


def target_superheat(return_wet_bulb_f: float, outdoor_dry_bulb_f: float) -> float:
    """Return the target superheat in °F of a fixed-orifice system by the trade's shortcut.

    (3 x return wet bulb - 80 - outdoor dry bulb) / 2. Common practice, no standard found. It runs
    from 6 °F under to 3 °F over the charging tables (`table_target_superheat`); the unit's own
    chart rules. Raises OutOfRange below 55 °F outdoors and where the target falls under 5 °F: then
    the charge cannot be judged by superheat.
    """
    require("return-wet-bulb", return_wet_bulb_f, "F", at_least=45, at_most=85)
    require("outdoor-dry-bulb", outdoor_dry_bulb_f, "F", at_least=LOWEST_OUTDOOR_F, at_most=125)
    target = (3 * return_wet_bulb_f - 80 - outdoor_dry_bulb_f) / 2
    if target < LOWEST_TARGET_F:
        raise _no_target(return_wet_bulb_f, outdoor_dry_bulb_f)
    return target


_FIRST_WET_BULB_F: Final = 50
_WET_BULB_STEP_F: Final = 2
_DRY_BULB_STEP_F: Final = 5
_CHARGING_TABLE: Final[Mapping[int, tuple[int | None, ...]]] = MappingProxyType(
    {
        55: (9, 12, 14, 17, 20, 23, 26, 29, 32, 35, 37, 40, 42, 45),
        60: (7, 10, 12, 15, 18, 21, 24, 27, 30, 33, 35, 38, 40, 43),
        65: (None, 6, 10, 13, 16, 19, 21, 24, 27, 30, 33, 36, 38, 41),
        70: (None, None, 7, 10, 13, 16, 19, 21, 24, 27, 30, 33, 36, 39),
        75: (None, None, None, 6, 9, 12, 15, 18, 21, 24, 28, 31, 34, 37),
        80: (None, None, None, None, 5, 8, 12, 15, 18, 21, 25, 28, 31, 35),
        85: (None, None, None, None, None, None, 8, 11, 15, 19, 22, 26, 30, 33),
        90: (None, None, None, None, None, None, 5, 9, 13, 16, 20, 24, 27, 31),
        95: (None, None, None, None, None, None, None, 6, 10, 14, 18, 22, 25, 29),
        100: (None, None, None, None, None, None, None, None, 8, 12, 15, 20, 23, 27),
        105: (None, None, None, None, None, None, None, None, 5, 9, 13, 17, 22, 26),
        110: (None, None, None, None, None, None, None, None, None, 6, 11, 15, 20, 25),
    }
)
"""Superheat in °F by outdoor dry bulb, for return wet bulbs of 50, 52 ... 76 °F; None: do not
charge. As printed in makers' installation manuals for fixed-orifice systems; the rows for 60, 80,
85, 95, 105 and 110 °F, and 62 to 70 °F of the first row and 70 °F on of the 100 °F row, are from
memory."""


def table_target_superheat(return_wet_bulb_f: float, outdoor_dry_bulb_f: float) -> float:
    """Return the target superheat in °F of a fixed-orifice system by the charging table.

    Straight lines between the entries, both ways. Raises OutOfRange outside the table (wet bulb
    50 to 76 °F, outdoor 55 to 110 °F) and where it prints a dash: do not judge charge there.
    """
    last_wet_bulb = _FIRST_WET_BULB_F + _WET_BULB_STEP_F * (len(_CHARGING_TABLE[55]) - 1)
    lowest, highest = min(_CHARGING_TABLE), max(_CHARGING_TABLE)
    require(
        "return-wet-bulb", return_wet_bulb_f, "F", at_least=_FIRST_WET_BULB_F, at_most=last_wet_bulb
    )
    require("outdoor-dry-bulb", outdoor_dry_bulb_f, "F", at_least=lowest, at_most=highest)
    row, row_share = _cell(outdoor_dry_bulb_f, lowest, _DRY_BULB_STEP_F, len(_CHARGING_TABLE))
    column, column_share = _cell(
        return_wet_bulb_f, _FIRST_WET_BULB_F, _WET_BULB_STEP_F, len(_CHARGING_TABLE[55])
    )
    target = 0.0
    for down, down_share in ((row, 1 - row_share), (row + 1, row_share)):
        for right, right_share in ((column, 1 - column_share), (column + 1, column_share)):
            if down_share * right_share == 0:
                continue
            entry = _CHARGING_TABLE[lowest + _DRY_BULB_STEP_F * down][right]
            if entry is None:
                raise _no_target(return_wet_bulb_f, outdoor_dry_bulb_f)
            target += down_share * right_share * entry
    return target


def has_target_superheat(return_wet_bulb_f: float, outdoor_dry_bulb_f: float) -> bool:
    """Say whether shortcut and charging table both have a target superheat in this weather."""
    try:
        target_superheat(return_wet_bulb_f, outdoor_dry_bulb_f)
        table_target_superheat(return_wet_bulb_f, outdoor_dry_bulb_f)
    except OutOfRange:
        return False
    return True


def _cell(value: float, first: float, step: float, count: int) -> tuple[int, float]:
    """Return the index of the entry at or below `value` and the share of the way to the next."""
    place = (value - first) / step
    index = min(int(place), count - 1)
    return index, place - index


def _no_target(return_wet_bulb_f: float, outdoor_dry_bulb_f: float) -> OutOfRange:
    return OutOfRange(
        "return-wet-bulb",
        f"there is no target superheat at {return_wet_bulb_f:.4g} F return wet bulb and "
        f"{outdoor_dry_bulb_f:.4g} F outdoors, for it would fall under {LOWEST_TARGET_F:.0f} F",
        "do not judge or set the charge by superheat under these conditions",
    )


def leak_rate(added_lb: float, full_charge_lb: float, days: float) -> float:
    """Return the annualised leak rate in percent of the full charge per year.

    100 x (added / full charge) x 365 / days, where more than 365 days count as 365: the annualizing
    method of 40 CFR 82.152. Raises OutOfRange for amounts or days that are not above zero.
    """
    require("added", added_lb, "lb", at_least=0)
    require("full-charge", full_charge_lb, "lb", above=0)
    require("days", days, "days", above=0)
    return 100 * added_lb / full_charge_lb * DAYS_OF_YEAR / min(days, DAYS_OF_YEAR)


def rolling_leak_rate(added_lb: float, full_charge_lb: float) -> float:
    """Return the leak rate in percent of the full charge per year, by what a year has taken.

    100 x added over the last 365 days / full charge: the rolling average method of 40 CFR 82.152,
    the same words in 84.102. Raises OutOfRange for an amount below zero or no charge.
    """
    require("added", added_lb, "lb", at_least=0)
    require("full-charge", full_charge_lb, "lb", above=0)
    return 100 * added_lb / full_charge_lb
