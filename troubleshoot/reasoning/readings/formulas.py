"""The formulas by which rule files may derive one quantity from others.

A closed table: rule files name a formula and its inputs, they carry no code. Each function takes
numbers in the units named (or a refrigerant's name first) and returns a number, or nothing where
the inputs lie outside what the formula can say. What a formula needs is imported when it is first
used: a visit uses two or three of them, and the rest would only slow the start.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import lru_cache
from importlib import import_module
from math import isfinite
from typing import Literal

from troubleshoot.quantities.ranges import OutOfRange
from troubleshoot.quantities.units import STANDARD_ATMOSPHERE_PSIA

Number = float
Formula = Callable[..., float]


def _from(module: str, function: str) -> Formula:
    """A function of the quantities, imported when it is used."""

    def formula(*inputs: Number | str) -> float:
        found = getattr(import_module(f"troubleshoot.quantities.{module}"), function)
        return float(found(*inputs))

    return formula


def _saturation_temperature(line: Literal["bubble", "dew"]) -> Formula:
    """F from psig at sea level.

    Past an end of the table it is that end, at least: a pressure that no sound circuit comes near
    must not weigh nothing.
    """
    found = _from("saturation", f"{line}_temperature")

    def temperature(name: str, psig: Number) -> float:
        from troubleshoot.quantities.saturation import pressures_of

        low, high = pressures_of(name, line)
        return found(name, min(max(psig + STANDARD_ATMOSPHERE_PSIA, low), high))

    return temperature


def _saturation_pressure(function: str) -> Formula:
    """Psig at sea level from F."""
    found = _from("saturation", function)
    return lambda name, fahrenheit: found(name, fahrenheit) - STANDARD_ATMOSPHERE_PSIA


def _outdoor_air_percent(return_f: Number, mixed_f: Number, outdoor_f: Number) -> float:
    """Per cent of the mixed air that is outdoor air, from three temperatures in F."""
    from troubleshoot.quantities import air

    return air.outdoor_air_fraction(return_f, mixed_f, outdoor_f).percent


FORMULAS: Mapping[str, Formula] = {
    "copy": lambda a: a,
    "sum": lambda *numbers: sum(numbers),
    "average": lambda *numbers: sum(numbers) / len(numbers),
    "difference": lambda a, b: a - b,
    "absolute-difference": lambda a, b: abs(a - b),
    "ratio": lambda a, b: a / b,
    "percent-difference": lambda a, b: 100 * (a - b) / b,
    "dew-temperature": _saturation_temperature("dew"),
    "bubble-temperature": _saturation_temperature("bubble"),
    "dew-pressure": _saturation_pressure("dew_pressure"),
    "bubble-pressure": _saturation_pressure("bubble_pressure"),
    "target-superheat": _from("refrigerant", "target_superheat"),
    "compression-ratio": _from("refrigerant", "compression_ratio"),
    "outdoor-air-fraction": _outdoor_air_percent,
    "mixed-air-temperature": _from("air", "mixed_air_temperature"),
    "target-split": _from("air", "target_temperature_split"),
    "capacitance-under-load": _from("capacitors", "capacitance_under_load"),
    "gas-flow": _from("gas", "gas_flow"),
    "gas-input": _from("gas", "gas_input"),
    "input-at-altitude": _from("gas", "input_at_altitude"),
    "meter-time": _from("gas", "meter_time"),
    "co-air-free": _from("combustion", "co_air_free"),
    "evaporating-least": _from("expected_ends", "evaporating_least"),
    "evaporating-most": _from("expected_ends", "evaporating_most"),
    "condensing-over-ambient-least": _from("expected_ends", "condensing_over_ambient_least"),
    "condensing-over-ambient-most": _from("expected_ends", "condensing_over_ambient_most"),
    "airflow-per-ton": lambda cfm, tons: cfm / tons,
}


@lru_cache(maxsize=1024)
def compute(name: str, inputs: tuple[float | str, ...]) -> float | None:
    """The formula's value, or nothing where these inputs lie outside its range.

    The last are kept: of one reading the same is asked for its value, its ends and its limits.
    """
    try:
        value = FORMULAS[name](*inputs)
    except (OutOfRange, ArithmeticError):
        return None
    return value if isfinite(value) else None
