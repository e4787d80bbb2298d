"""One typed value -> a number in its parameter's unit, with what had to be assumed."""

import re
from collections.abc import Mapping
from dataclasses import replace
from typing import Final

from troubleshoot.quantities.atmosphere import standard_pressure
from troubleshoot.quantities.calculations.model import (
    ANY_UNIT,
    WORD,
    Calculation,
    Given,
    Parameter,
    Value,
)
from troubleshoot.quantities.plate_volts import plate_volts
from troubleshoot.quantities.typed import Expected, Leg, NotUnderstood, read
from troubleshoot.quantities.units import STANDARD_ATMOSPHERE_PSIA, UNITS, gauge_pressure, unit

_DIFFERENCES: Final = {
    "F": "F-diff",
    "C": "C-diff",
    "K": "C-diff",
    "psig": "psi",
    "psia": "psi",
    "kPa-gauge": "kPa-diff",
    "kPa": "kPa-diff",
    "bar-gauge": "bar-diff",
    "bar": "bar-diff",
}
"""The unit for a difference of two values, where it is another than that of the values."""

_ABSOLUTE: Final = frozenset({"psia", "kPa", "bar"})
"""What may be typed for an absolute pressure; inches of mercury could as well be a vacuum."""

_SPREAD_SIGN: Final = re.compile(r" ?(?:\+ ?/ ?-|\+-|±) ?")
_COMMA: Final = re.compile(r",(?! )")
_GROUPED: Final = re.compile(r"[0-9]{1,3}(?:,[0-9]{3})+[^0-9,]*")
_LEADING_ZERO: Final = re.compile(r"(?:^|,) ?0[0-9]")
_UNSAID: Final = frozenset({"count", "ratio", "percent"})
"""Units that go without saying, so that nobody is told they were assumed."""


class ValueReader:
    """Reads the texts of one calculation's parameters, one after the other."""

    def __init__(self, calculation: Calculation, texts: Mapping[str, str]) -> None:
        self._texts = texts
        self._values: dict[str, Value] = {}
        self._spreads: dict[str, float] = {}
        self._assumed: list[str] = []
        self._notes: list[str] = []
        free = {one.name for one in calculation.parameters if one.unit == ANY_UNIT}
        units = (_unit_in(text) for name, text in texts.items() if name in free)
        self._unit = next(filter(None, units), "")

    def take(self, parameter: Parameter) -> None:
        """Read the parameter's text, or its default, if there is one; raise NotUnderstood."""
        text = self._texts.get(parameter.name, parameter.default)
        if text is None:
            return
        if parameter.unit == WORD:
            self._values[parameter.name] = _word(parameter, text)
        elif parameter.plate and (stamped := plate_volts(text)) is not None:
            self._values[parameter.name] = tuple(sorted({stamped.low_v, stamped.high_v}))
        elif parameter.fewest:
            self._values[parameter.name] = self._several(parameter, text)
        else:
            self._values[parameter.name] = self._one(parameter, text)
        if parameter.name not in self._texts:
            self._notes.append(f"{parameter.name} was not given: {text} was taken.")

    def given(self) -> Given:
        """Return all that was read."""
        notes = list(self._notes)
        if self._assumed:
            notes.insert(0, f"Units assumed, none was typed: {', '.join(self._assumed)}.")
        return Given(self._values, self._unit, self._spreads, tuple(notes))

    def _one(self, parameter: Parameter, text: str) -> float:
        if parameter.spread and _SPREAD_SIGN.match(text):
            text = _SPREAD_SIGN.sub("", text, count=1)
        leg = self._leg(self._wanted(parameter), text, parameter.open)
        scale = 1.0
        if leg.typed_unit is None and parameter.share and 0 < abs(leg.value) <= 1:
            scale = self._scale_of_share(parameter, leg.value, text)
        elif leg.typed_unit is None:
            self._assume(parameter, leg.unit)
        if leg.plus_minus is not None:
            self._spreads[parameter.name] = leg.plus_minus * scale
        return leg.value * scale

    def _several(self, parameter: Parameter, text: str) -> tuple[float, ...]:
        expected = Expected(self._wanted(parameter), legs=True)
        legs = read(_parted(text, parameter.fewest), expected).values
        if len(legs) < parameter.fewest:
            raise NotUnderstood(text, "is one value where several belong", "write like 40/5/10")
        for leg in legs:
            _require_plain(leg, text)
            if leg.plus_minus is not None:
                raise NotUnderstood(text, "has a plus-or-minus", "leave it out where values differ")
        if legs[0].typed_unit is None:
            self._assume(parameter, legs[0].unit)
        return tuple(leg.value for leg in legs)

    def _leg(self, wanted: str, text: str, open_allowed: bool) -> Leg:
        """Return the one value typed; an absolute pressure becomes the gauge pressure here."""
        try:
            leg = read(text, Expected(wanted, allow_over_range=open_allowed)).values[0]
        except NotUnderstood:
            absolute = _absolute(text) if unit(wanted).kind == "gauge pressure" else None
            if absolute is None:
                raise
            altitude = self._values.get("altitude")
            atmosphere = (
                standard_pressure(altitude)
                if isinstance(altitude, float)
                else STANDARD_ATMOSPHERE_PSIA
            )
            leg = replace(absolute, value=gauge_pressure(absolute.value, atmosphere), unit=wanted)
        _require_plain(leg, text)
        return leg

    def _wanted(self, parameter: Parameter) -> str:
        """Return the unit to read the parameter in."""
        if parameter.unit != ANY_UNIT:
            return parameter.unit
        wanted = self._unit or "ratio"
        return _DIFFERENCES.get(wanted, wanted) if parameter.difference else wanted

    def _scale_of_share(self, parameter: Parameter, value: float, text: str) -> float:
        """Return 100 for a share written as 0.2; refuse a bare 1, which could be 1 or 100 %."""
        if abs(value) == 1:
            raise NotUnderstood(text, "could be 1 % or 100 %", "write the % sign")
        self._notes.append(f"{parameter.name}: {text} was taken as a share of 1.")
        return 100.0

    def _assume(self, parameter: Parameter, assumed: str) -> None:
        """Note the unit that was taken for a bare number, where it has one."""
        if assumed not in _UNSAID:
            self._assumed.append(f"{parameter.name} in {unit(assumed).spoken}")


def _word(parameter: Parameter, text: str) -> str:
    word = text.strip()
    if parameter.standard_name is not None:
        return parameter.standard_name(word)
    if parameter.choices and word not in parameter.choices:
        raise NotUnderstood(word, "is not one of the words", f"use {', '.join(parameter.choices)}")
    return word


def _require_plain(leg: Leg, text: str) -> None:
    if leg.bound is not None:
        raise NotUnderstood(text, "is a bound and no figure", "give the figure itself")


def _absolute(text: str) -> Leg | None:
    """Return the value in psia if the text says that it is an absolute pressure."""
    try:
        leg = read(text, Expected("psia")).values[0]
    except NotUnderstood:
        return None
    return leg if leg.typed_unit in _ABSOLUTE else None


def _parted(text: str, fewest: int) -> str:
    """Return several values with a blank behind each comma, where commas can only part them.

    With two or more values asked for, 460,461 cannot be one number; where one value is enough, it
    is left for the reader of typed text to refuse.
    """
    if _LEADING_ZERO.search(text) or (fewest < 2 and _GROUPED.fullmatch(text.strip())):
        return text
    return _COMMA.sub(", ", text)


def _unit_in(text: str) -> str:
    """Return the id of the unit that stands behind the first number, or nothing."""
    tail = text.split()[-1] if text.split() else ""
    for candidate in sorted(UNITS, key=lambda each: each != tail):
        try:
            first = read(text, Expected(candidate, legs=True)).values[0]
        except NotUnderstood:
            continue
        if first.typed_unit == candidate:
            return candidate
    return ""
