"""What a sound unit would read: a healthy number for each quantity, in keeping with what is known.

The numbers hang together: the liquid line is as much cooler than the condensing temperature as a
good charge makes it, whatever head pressure the scenario states. All of them are typical values,
common practice, no source; saturation comes from the tables.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.quantities.ranges import OutOfRange
from troubleshoot.quantities.refrigerant import target_superheat
from troubleshoot.quantities.saturation import bubble_pressure, dew_pressure
from troubleshoot.quantities.units import STANDARD_ATMOSPHERE_PSIA
from troubleshoot.reasoning.equipment import Unit
from troubleshoot.reasoning.places import Place
from troubleshoot.reasoning.values import Values

COOL_DAY: Final = 60.0
"""Below this outdoor temperature (F) a unit is taken to be heating."""


class SoundUnit:
    """Healthy numbers of one unit on one day. What `values` knows stands before what is typical."""

    def __init__(self, unit: Unit, values: Values) -> None:
        self.unit = unit
        self.values = values

    def number(self, quantity: str, place: Place | None) -> float | None:
        """A healthy number in the quantity's own unit; None where none can be said."""
        make = NUMBERS.get(quantity)
        return None if make is None else make(self, place)

    def known(self, quantity: str, place: Place | None = None) -> float | None:
        """What is known of a quantity, or else what is healthy."""
        value = self.values.get(quantity, place)
        return self.number(quantity, place) if value is None else value.number

    def plate(self, name: str, place: Place | None = None) -> float | None:
        return self.unit.plate_value(name, place)

    def share_of_plate(self, name: str, share: float, place: Place | None = None) -> float | None:
        rated = self.plate(name, place)
        return None if rated is None else share * rated

    def saturated(self, psia: Callable[[str, float], float], fahrenheit: float) -> float | None:
        """Gauge pressure at a saturation temperature; None for a refrigerant without a table."""
        try:
            return psia(self.unit.facts.get("refrigerant", ""), fahrenheit) - (
                STANDARD_ATMOSPHERE_PSIA
            )
        except OutOfRange:
            return None


_Make = Callable[[SoundUnit, Place | None], float | None]


def _minus(first: str, second: str) -> _Make:
    """The first known quantity less the second."""

    def make(unit: SoundUnit, place: Place | None) -> float | None:
        one, other = unit.known(first, place), unit.known(second, place)
        return None if one is None or other is None else one - other

    return make


def _constant(number: float) -> _Make:
    return lambda unit, place: number


def _plate(name: str, share: float, without: float | None = None) -> _Make:
    """A share of a nameplate value of the same place, or a number where the plate is silent."""

    def make(unit: SoundUnit, place: Place | None) -> float | None:
        rated = unit.share_of_plate(name, share, place)
        return without if rated is None else rated

    return make


def _outdoor(unit: SoundUnit, place: Place | None) -> float:
    value = unit.values.get("outdoor-temperature", None)
    return 85.0 if value is None else value.number


def _entering(unit: SoundUnit) -> float:
    """Air entering the cooling coil: the mixed air where there is an economizer."""
    air = None
    if unit.unit.facts.get("economizer") == "fitted":
        air = unit.known("mixed-air-temperature")
    return (unit.known("return-air-temperature") or 75.0) if air is None else air


def _mixed(unit: SoundUnit, place: Place | None) -> float:
    """Return air with the fraction of outdoor air that is meant."""
    indoor = unit.known("return-air-temperature") or 75.0
    fraction = (unit.plate("minimum-outdoor-air") or 20.0) / 100
    return indoor + fraction * (_outdoor(unit, place) - indoor)


def _evaporating(unit: SoundUnit, place: Place | None) -> float:
    own = unit.plate("own-evaporating-temperature", place)
    known = unit.values.get("evaporating-temperature", place)
    if known is not None:
        return known.number
    return max(36.0, _entering(unit) - 35.0) if own is None else own


def _condensing(unit: SoundUnit, place: Place | None) -> float:
    known = unit.values.get("condensing-temperature", place)
    if known is not None:
        return known.number
    over = unit.plate("own-condensing-over-ambient", place)
    return _outdoor(unit, place) + (21.0 if over is None else over)


def _suction_line(unit: SoundUnit, place: Place | None) -> float:
    superheat = 10.0
    if unit.unit.facts.get("metering") == "fixed-orifice":
        wet_bulb = unit.known("return-wet-bulb") or 63.0
        try:
            superheat = max(6.0, target_superheat(wet_bulb, _outdoor(unit, place)))
        except OutOfRange:
            superheat = 6.0
    return _evaporating(unit, place) + superheat


def _liquid_line(unit: SoundUnit, place: Place | None) -> float:
    return _condensing(unit, place) - (unit.plate("stated-subcooling", place) or 10.0)


def _discharge(unit: SoundUnit, place: Place | None) -> float:
    return min(190.0, max(145.0, _condensing(unit, place) + 55.0))


def _compressor_amps(unit: SoundUnit, place: Place | None) -> float | None:
    own = unit.plate("own-compressor-amps", place)
    share = 0.66 if _outdoor(unit, place) <= 80 else 0.75
    return unit.share_of_plate("compressor-rla", share, place) if own is None else own


def _supply(unit: SoundUnit, place: Place | None) -> float:
    return _entering(unit) - 19.0


def _heating_supply(unit: SoundUnit, place: Place | None) -> float:
    low, high = unit.plate("heat-rise-low"), unit.plate("heat-rise-high")
    rise = 45.0 if low is None or high is None else (low + high) / 2
    return (unit.known("return-air-temperature") or 68.0) + rise


def _return_air(unit: SoundUnit, place: Place | None) -> float:
    return 68.0 if _outdoor(unit, place) < COOL_DAY else 75.0


def _gas_inlet(unit: SoundUnit, place: Place | None) -> float:
    low, high = unit.plate("gas-inlet-minimum"), unit.plate("gas-inlet-maximum")
    if low is not None and high is not None:
        return (low + high) / 2 - 0.5
    return 12.0 if unit.unit.facts.get("fuel") == "propane" else 7.0


def _meter_time(unit: SoundUnit, place: Place | None) -> float | None:
    """Seconds for the dial at the rated input."""
    rated, heat = unit.plate("gas-input-rating"), unit.plate("gas-heat-content") or 1030.0
    dial = unit.known("meter-dial") or 2.0
    return None if rated is None else 3600 * dial * heat / rated


NUMBERS: Final[Mapping[str, _Make]] = MappingProxyType(
    {
        "outdoor-temperature": _outdoor,
        "return-air-temperature": _return_air,
        "return-wet-bulb": _constant(63.0),
        "mixed-air-temperature": _mixed,
        "supply-air-temperature": _supply,
        "heating-supply-temperature": _heating_supply,
        "return-outdoor-difference": lambda unit, place: abs(
            (unit.known("return-air-temperature") or 75.0) - _outdoor(unit, place)
        ),
        "minutes-running": _constant(20.0),
        "room-temperature": _constant(74.0),
        "thermostat-reading": _constant(74.5),
        "relative-humidity": _constant(50.0),
        "building-pressure": _constant(0.01),
        "evaporating-temperature": _evaporating,
        "condensing-temperature": _condensing,
        "suction-pressure": lambda unit, place: unit.saturated(
            dew_pressure, _evaporating(unit, place)
        ),
        "head-pressure": lambda unit, place: unit.saturated(
            bubble_pressure, _condensing(unit, place)
        ),
        "standing-pressure": lambda unit, place: unit.saturated(
            bubble_pressure, _outdoor(unit, place)
        ),
        "suction-line-temperature": _suction_line,
        "liquid-line-temperature": _liquid_line,
        "drier-in-temperature": _liquid_line,
        "drier-out-temperature": lambda unit, place: _liquid_line(unit, place) - 0.5,
        "drier-temperature-drop": _constant(0.5),
        "feeder-spread": _constant(2.0),
        "discharge-temperature": _discharge,
        "equalizing-time": _constant(110.0),
        "sump-over-evaporating": _constant(35.0),
        "vacuum-after-hold": _constant(640.0),
        "charge-weight": _plate("charge", 1.0),
        "twin-circuit-difference": _constant(1.5),
        "condenser-air-rise": _constant(17.0),
        "condenser-air-over-ambient": _constant(1.0),
        "compressor-amps": _compressor_amps,
        "insulation": _constant(200.0),
        "condenser-fan-amps": _plate("condenser-fan-fla", 0.92),
        "blower-amps": lambda unit, place: (
            unit.plate("own-blower-amps") or unit.share_of_plate("blower-fla", 0.78)
        ),
        "blower-rpm": _plate("design-blower-rpm", 0.99),
        "external-static": lambda unit, place: (
            unit.plate("own-external-static") or unit.share_of_plate("maximum-external-static", 0.8)
        ),
        "filter-drop": _plate("clean-filter-drop", 1.2, 0.2),
        "evaporator-drop": _plate("own-evaporator-drop", 1.04),
        "airflow-per-ton": _constant(395.0),
        "bearing-temperature": _constant(112.0),
        "capacitance": _plate("capacitor-rated", 0.99),
        "capacitor-running-volts": _constant(370.0),
        "start-lead-amps": lambda unit, place: unit.share_of_plate(
            "capacitor-rated", 370.0 / 2652.0, place
        ),
        "coil-volts": _constant(25.4),
        "coil-ohms": _constant(12.0),
        "pole-volts-drop": _constant(0.1),
        "line-volts": _plate("nameplate-volts", 1.01),
        "fuse-volts-drop": _constant(0.03),
        "fuse-ohms": _constant(0.2),
        "lug-over-like-lug": _constant(2.0),
        "transformer-secondary-volts": _constant(25.6),
        "cable-loop-ohms": _constant(1.4),
        "sensor-error": _constant(0.5),
        "restart-delay": _constant(4.0),
        "shell-temperature": lambda unit, place: _outdoor(unit, place) + 14.0,
        "drain-slope": _constant(0.25),
        "gas-inlet-pressure": _gas_inlet,
        "gas-manifold-pressure": lambda unit, place: (
            10.0 if unit.unit.facts.get("fuel") == "propane" else 3.5
        ),
        "meter-dial": _constant(2.0),
        "meter-time": _meter_time,
        "valve-volts": _constant(25.2),
        "igniter-ohms": _constant(60.0),
        "flame-current": _constant(3.2),
        "burner-ground-ohms": _constant(0.3),
        "flue-carbon-monoxide": _constant(32.0),
        "oxygen-shift": _constant(0.1),
        "switch-draft": lambda unit, place: (unit.plate("pressure-switch-set-point") or 0.6) + 0.4,
        "gas-in-air": _constant(0.0),
        "carbon-monoxide-sustained": _constant(0.0),
        "superheat": _minus("suction-line-temperature", "evaporating-temperature"),
        "subcooling": _minus("condensing-temperature", "liquid-line-temperature"),
    }
)
"""Quantity -> what it reads on a sound unit."""
