"""The closed list of units, and conversion between units of one kind by our own linear factors.

A kind is the word for what is measured. Things that share a dimension but must never be mixed up
are different kinds: a temperature and a difference of two temperatures; gauge pressure, absolute
pressure and a difference of two pressures. Factors follow NIST SP 811, Appendix B.
"""

import difflib
from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.frozen import frozen

STANDARD_ATMOSPHERE_PSIA: Final = 14.695949
"""Pressure of the air at sea level, psia (101.325 kPa, ISO 2533)."""

_PSI: Final = 6894.757293168
_INCH_MERCURY: Final = 3386.388640341
_INCH_WATER: Final = 248.840070179
_BTU: Final = 1055.056
_POUND: Final = 0.45359237
_GALLON_FT3: Final = 231.0 / 1728.0
_LONGEST_ID: Final = 40


@frozen
class Unit:
    """One unit: value in the base unit of its kind = value * factor + offset.

    `id` is the word used in rules and scripts, `expression` the spelling that pint understands,
    `spoken` what a person is shown behind the number.
    """

    id: str
    kind: str
    factor: float
    expression: str
    spoken: str
    offset: float = 0.0


class UnitError(ValueError):
    """A unit was asked for that cannot serve; the message is one sentence for a person."""


class UnknownUnit(UnitError):
    """The word is not on the closed list of units."""


class UnitMismatch(UnitError):
    """Two units are of different kinds, so that no conversion exists."""


_LIST: Final = (
    Unit("F", "temperature", 1.0, "degF", "°F"),
    Unit("C", "temperature", 1.8, "degC", "°C", 32.0),
    Unit("K", "temperature", 1.8, "kelvin", "K", -459.67),
    Unit("F-diff", "temperature difference", 1.0, "delta_degF", "°F"),
    Unit("C-diff", "temperature difference", 1.8, "delta_degC", "°C"),
    Unit("V", "voltage", 1.0, "volt", "V"),
    Unit("mV", "voltage", 1e-3, "millivolt", "mV"),
    Unit("kV", "voltage", 1e3, "kilovolt", "kV"),
    Unit("A", "current", 1.0, "ampere", "A"),
    Unit("mA", "current", 1e-3, "milliampere", "mA"),
    Unit("uA", "current", 1e-6, "microampere", "µA"),
    Unit("uF", "capacitance", 1.0, "microfarad", "µF"),
    Unit("nF", "capacitance", 1e-3, "nanofarad", "nF"),
    Unit("ohm", "resistance", 1.0, "ohm", "ohm"),
    Unit("kohm", "resistance", 1e3, "kiloohm", "kohm"),
    Unit("Mohm", "resistance", 1e6, "megaohm", "Mohm"),
    Unit("psig", "gauge pressure", _PSI, "psi", "psig"),
    Unit("kPa-gauge", "gauge pressure", 1e3, "kilopascal", "kPa gauge"),
    Unit("bar-gauge", "gauge pressure", 1e5, "bar", "bar gauge"),
    Unit("in-Hg-gauge", "gauge pressure", _INCH_MERCURY, "inch_Hg", "in. Hg gauge"),
    Unit("in-Hg-vacuum", "gauge pressure", -_INCH_MERCURY, "-1*inch_Hg", "in. Hg vacuum"),
    Unit("psia", "absolute pressure", _PSI, "psi", "psia"),
    Unit("kPa", "absolute pressure", 1e3, "kilopascal", "kPa absolute"),
    Unit("bar", "absolute pressure", 1e5, "bar", "bar absolute"),
    Unit("in-Hg", "absolute pressure", _INCH_MERCURY, "inch_Hg", "in. Hg"),
    Unit("micron", "absolute pressure", 0.1333223684, "millitorr", "microns"),
    Unit("torr", "absolute pressure", 133.3223684, "torr", "torr"),
    Unit("psi", "pressure difference", _PSI, "psi", "psi"),
    Unit("in-wc", "pressure difference", _INCH_WATER, "inch_H2O_60F", "in. w.c."),
    Unit("Pa-diff", "pressure difference", 1.0, "pascal", "Pa"),
    Unit("kPa-diff", "pressure difference", 1e3, "kilopascal", "kPa"),
    Unit("mbar", "pressure difference", 1e2, "millibar", "mbar"),
    Unit("oz-per-in2", "pressure difference", _PSI / 16, "force_ounce/inch**2", "oz/in²"),
    Unit("bar-diff", "pressure difference", 1e5, "bar", "bar"),
    Unit("percent", "ratio", 0.01, "percent", "%"),
    Unit("ratio", "ratio", 1.0, "dimensionless", ""),
    Unit("times", "ratio", 1.0, "dimensionless", "times"),
    Unit("percent-points", "difference of percentages", 1.0, "percent", "percentage points"),
    Unit("percent-LEL", "share of explosive limit", 1.0, "percent", "% LEL"),
    Unit("percent-LFL", "share of flammable limit", 1.0, "percent", "% LFL"),
    Unit("ppm", "concentration", 1.0, "ppm", "ppm"),
    Unit("count", "count", 1.0, "dimensionless", ""),
    Unit("cfm", "volume flow", 60.0, "foot**3/minute", "cfm"),
    Unit("cfh", "volume flow", 1.0, "foot**3/hour", "ft³/h"),
    Unit("gal/h", "volume flow", _GALLON_FT3, "gallon/hour", "gal/h"),
    Unit("cfm-per-ton", "airflow per cooling", 1.0, "foot**3/minute/(12000*Btu/hour)", "cfm/ton"),
    Unit("lb/h", "mass flow", 1.0, "pound/hour", "lb/h"),
    Unit("lb/min", "mass flow", 60.0, "pound/minute", "lb/min"),
    Unit("ft/min", "speed", 1.0, "foot/minute", "ft/min"),
    Unit("in", "length", 1.0, "inch", "in."),
    Unit("ft", "length", 12.0, "foot", "ft"),
    Unit("in2", "area", 1.0, "inch**2", "in²"),
    Unit("ft2", "area", 144.0, "foot**2", "ft²"),
    Unit("ft3", "volume", 1.0, "foot**3", "ft³"),
    Unit("gal", "volume", _GALLON_FT3, "gallon", "gal"),
    Unit("in-per-ft", "slope", 1.0, "inch/foot", "in. per ft"),
    Unit("lb", "mass", 16.0, "pound", "lb"),
    Unit("oz", "mass", 1.0, "ounce", "oz"),
    Unit("kg", "mass", 16.0 / _POUND, "kilogram", "kg"),
    Unit("g", "mass", 0.016 / _POUND, "gram", "g"),
    Unit("s", "time", 1.0, "second", "s"),
    Unit("min", "time", 60.0, "minute", "min"),
    Unit("h", "time", 3600.0, "hour", "h"),
    Unit("day", "time", 86400.0, "day", "days"),
    Unit("month", "time", 2629800.0, "month", "months"),
    Unit("year", "time", 31557600.0, "year", "years"),
    Unit("Hz", "frequency", 1.0, "hertz", "Hz"),
    Unit("rpm", "rotational speed", 1.0, "revolution/minute", "rpm"),
    Unit("W", "power", 1.0, "watt", "W"),
    Unit("kW", "power", 1e3, "kilowatt", "kW"),
    Unit("hp", "power", 745.6998715823, "horsepower", "hp"),
    Unit("Btu/h", "power", _BTU / 3600.0, "Btu/hour", "Btu/h"),
    Unit("ton", "power", 12000.0 * _BTU / 3600.0, "12000*Btu/hour", "tons"),
    Unit("VA", "apparent power", 1.0, "volt*ampere", "VA"),
    Unit("kVA", "apparent power", 1e3, "kilovolt*ampere", "kVA"),
    Unit("J", "energy", 1.0, "joule", "J"),
    Unit("kWh", "energy", 3.6e6, "kilowatt*hour", "kWh"),
    Unit("Btu", "energy", _BTU, "Btu", "Btu"),
    Unit("Btu/ft3", "heat content by volume", 1.0, "Btu/foot**3", "Btu/ft³"),
    Unit("Btu/lb", "heat content by mass", 1.0, "Btu/pound", "Btu/lb"),
    Unit("lb/ft3", "density", 1.0, "pound/foot**3", "lb/ft³"),
    Unit("ft3/lb", "specific volume", 1.0, "foot**3/pound", "ft³/lb"),
    Unit("lb/lb", "humidity ratio", 7000.0, "pound/pound", "lb/lb"),
    Unit("grains/lb", "humidity ratio", 1.0, "grain/pound", "grains/lb"),
)

UNITS: Final[Mapping[str, Unit]] = MappingProxyType({one.id: one for one in _LIST})
"""Every unit by its id."""


def unit(unit_id: str) -> Unit:
    """Return the unit named `unit_id`; raise UnknownUnit when the list does not hold it."""
    found = UNITS.get(unit_id)
    if found is not None:
        return found
    near = difflib.get_close_matches(unit_id[:_LONGEST_ID], UNITS, n=1)
    hint = f"did you mean {near[0]}?" if near else f"use one of: {', '.join(UNITS)}."
    raise UnknownUnit(f"There is no unit {unit_id[:_LONGEST_ID]!r}; {hint}")


def same_kind(first: str, second: str) -> bool:
    """Say whether both unit ids are of one kind, so that values convert between them."""
    return unit(first).kind == unit(second).kind


def convert(value: float, from_unit: str, to_unit: str) -> float:
    """Return `value`, given in `from_unit`, in `to_unit`.

    Raises UnknownUnit for a word that is no unit, UnitMismatch for units of different kinds.
    """
    source, target = unit(from_unit), unit(to_unit)
    if source.kind != target.kind:
        raise UnitMismatch(
            f"{from_unit} ({source.kind}) cannot become {to_unit} ({target.kind}); "
            f"give a value in a unit of {target.kind}."
        )
    if source.factor == target.factor and source.offset == target.offset:
        return value
    return (value * source.factor + source.offset - target.offset) / target.factor


def absolute_pressure(
    gauge: float, atmosphere: float, gauge_unit: str = "psig", absolute_unit: str = "psia"
) -> float:
    """Return the absolute pressure behind a gauge reading.

    `atmosphere` is the pressure of the air at the site, in `absolute_unit`; it falls with
    altitude, so nothing is assumed. Raises UnitMismatch when `gauge_unit` is no gauge pressure.
    """
    return convert(convert(gauge, gauge_unit, "psig"), "psia", absolute_unit) + atmosphere


def gauge_pressure(
    absolute: float, atmosphere: float, absolute_unit: str = "psia", gauge_unit: str = "psig"
) -> float:
    """Return what a gauge shows at an absolute pressure, with the air at `atmosphere`.

    `absolute` and `atmosphere` are both in `absolute_unit`. The inverse of `absolute_pressure`.
    """
    return convert(convert(absolute - atmosphere, absolute_unit, "psia"), "psig", gauge_unit)
