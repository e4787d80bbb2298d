"""What a typed reading measures: its grammar, the quantities it gives, and how sure each is."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import replace
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Quantity, Read, Test
from troubleshoot.quantities.instruments import AsTyped, uncertainty_as_typed
from troubleshoot.quantities.typed import Expected, Leg, NotUnderstood, Typed, read
from troubleshoot.quantities.units import convert, same_kind
from troubleshoot.quantities.units import unit as unit_of
from troubleshoot.reasoning.readings.legs import (
    OVER_RANGE,
    PURE_NUMBERS,
    REDUCERS,
    SPREAD_OF_LEGS,
    farthest,
)
from troubleshoot.reasoning.readings.meters import Meters
from troubleshoot.reasoning.readings.values import Value, Values
from troubleshoot.reasoning.unit.equipment import ENDS, NAMEPLATE_VOLTS, Unit
from troubleshoot.reasoning.unit.places import Place

JUST_WITHIN = 1e-6
"""How far inside a bound its number is taken to be, as a part of it: less than any digit typed."""
_LINE_SIDE, _LOAD_SIDE = ("L1", "L2", "L3"), ("T1", "T2", "T3")
_PAIRS = ("L1-L2", "L2-L3", "L1-L3", "T1-T2", "T2-T3", "T1-T3", "AB", "BC", "CA")
_TERMINALS = ("C-R", "C-S", "R-S")
LEG_NAMES = {
    "current": (*_LINE_SIDE, *_LOAD_SIDE),
    "voltage": (*_PAIRS, *_LINE_SIDE, *_LOAD_SIDE, *_TERMINALS),
    "resistance": (*_TERMINALS, *_PAIRS, *_LINE_SIDE, *_LOAD_SIDE),
}
"""What the legs of a reading are called, by the kind of unit, the usual names first: winding
terminals, legs on the line and the load side, pairs of them."""

_NOTHING_IN_AIR: Final = re.compile(
    r"(?P<number>0+(?:\.0+)?) ?(?:%|percent|pct|ppm)", re.IGNORECASE
)
"""No gas at all is no gas in any unit; a bare 0 % on a detector is of the explosive limit."""


def expected_for(test: Test, knowledge: Knowledge) -> tuple[Expected, ...]:
    """The grammars a typed answer to this test may follow, tried in order.

    The first read's own, then the unit of each quantity read: cfm where cfm per ton is judged.
    """
    if not test.reads:
        return ()
    one = test.reads[0]
    typed = one.unit or knowledge.quantities[one.quantity].unit
    legs = any(each.legs for each in test.reads)
    names = LEG_NAMES.get(unit_of(typed).kind, ()) if legs else ()
    alone = all(each.legs in (None, "size") for each in test.reads)
    first = Expected(typed, _can_be_open(typed), legs, names, alone)
    whole = (each for each in test.reads if each is one or each.legs is None)
    others = dict.fromkeys(knowledge.quantities[each.quantity].unit for each in whole)
    return (first, *(Expected(unit) for unit in others if unit != typed))


def _can_be_open(unit: str) -> bool:
    return unit in ("ohm", "kohm", "Mohm", "uF")


def read_text(test: Test, text: str, knowledge: Knowledge) -> Typed:
    """Typed text by the test's own grammar; raises NotUnderstood (of the first grammar)."""
    first: NotUnderstood | None = None
    for expected in expected_for(test, knowledge):
        try:
            typed = _read(text, expected)
            for one in test.reads:
                require_possible(knowledge.quantities[one.quantity], typed)
            return typed
        except NotUnderstood as error:
            first = first or error
    if first is None:
        raise NotUnderstood(text, f"{test.id} takes no number", "choose one of its outcomes")
    raise first


def reads(test: Test, text: str, knowledge: Knowledge) -> bool:
    """Whether text is a reading of a test."""
    try:
        read_text(test, text, knowledge)
    except NotUnderstood:
        return False
    return True


def _read(text: str, expected: Expected) -> Typed:
    """Typed text in the unit expected, or in any that means the same there."""
    nothing = _NOTHING_IN_AIR.fullmatch(text.strip())
    if nothing is None or unit_of(expected.unit).kind != "share of explosive limit":
        return read(text, expected)
    return replace(read(nothing["number"], expected), text=text)


def read_quantity(quantity: Quantity, text: str) -> Typed:
    """Typed text as a value of a quantity. Raises NotUnderstood, also for what it cannot be."""
    typed = read(text, Expected(quantity.unit))
    require_possible(quantity, typed)
    return typed


def require_possible(quantity: Quantity, typed: Typed) -> None:
    """Raise NotUnderstood where a value typed is none that the quantity can have."""
    if quantity.can_be is None or not same_kind(quantity.unit, typed.values[0].unit):
        return
    low, high = quantity.can_be
    for leg in typed.values:
        value = leg.value if leg.over_range else convert(leg.value, leg.unit, quantity.unit)
        if not leg.over_range and not low <= value <= high:
            unit = unit_of(quantity.unit).spoken
            raise NotUnderstood(
                typed.text,
                f"cannot be: {quantity.spoken} lies between {low:g} and {high:g} {unit}",
                "read it again",
            )


def quantities_of(
    test: Test, typed: Typed, knowledge: Knowledge, values: Values, place: Place | None
) -> dict[str, Value]:
    """The quantities that a typed reading gives, each with its standard uncertainty.

    Several legs, or a bare bound (more than 200), are judged hard.
    """
    numbers = [_number(leg) for leg in typed.values]
    found: dict[str, Value] = {}
    for one in test.reads:
        number = _reduced(test, one, numbers, typed.values, knowledge, values, place)
        if number is None:
            continue
        doubt = AsTyped(0.0, 0.0)
        if math.isfinite(number) and one.legs not in PURE_NUMBERS:
            doubt = _uncertainty(test, number, typed.values[0], values.meters)
        one_value = len(numbers) == 1 and typed.values[0].bound is None
        found[one.quantity] = Value(number, doubt.meter, one_value, rounding=doubt.rounding)
    return found


def _number(leg: Leg) -> float:
    """What a leg counts as. Less than 9 is just below nine, so that it never reads as nine."""
    if leg.over_range:
        return OVER_RANGE
    within = JUST_WITHIN * max(abs(leg.value), 1.0)
    return leg.value + {None: 0.0, "less-than": -within, "more-than": within}[leg.bound]


def _reduced(
    test: Test,
    one: Read,
    numbers: list[float],
    legs: tuple[Leg, ...],
    knowledge: Knowledge,
    values: Values,
    place: Place | None,
) -> float | None:
    unit = one.unit or knowledge.quantities[one.quantity].unit
    if one.legs is None and not same_kind(unit, legs[0].unit):
        return None  # a number typed in ohms says nothing about degrees
    spread = one.legs in SPREAD_OF_LEGS
    bare = len(numbers) == 1 and (
        legs[0].unit == knowledge.quantities[one.quantity].unit
        or (one is test.reads[0] and legs[0].typed_unit is None)
    )
    if one.legs is None or (spread and bare and one.unit is not None):
        return numbers[0]
    if one.legs == "farthest":
        ends = (values.unit.plate_value(NAMEPLATE_VOLTS, place, near) for near in ENDS)
        return farthest(numbers, *ends)
    return REDUCERS[one.legs](numbers)


def _uncertainty(test: Test, number: float, leg: Leg, meters: Meters) -> AsTyped:
    if leg.plus_minus is not None:
        return AsTyped(leg.plus_minus / math.sqrt(3), 0.0)
    meter = meters.judging(test, leg.unit)
    return uncertainty_as_typed(number, meter, leg.resolution) if meter else AsTyped(0.0, 0.0)


def read_with(test: Test, knowledge: Knowledge, meters: Meters) -> str:
    """The listed instruments that a test's number is judged by; empty where none is listed."""
    expected = expected_for(test, knowledge)
    return meters.named(test, expected[0].unit) if expected else ""


def stated_conditions(
    knowledge: Knowledge, unit: Unit, conditions: Mapping[str, str]
) -> dict[tuple[str, Place | None], Value]:
    """Conditions as people stated them, for every place of their kind; they count as exact."""
    found: dict[tuple[str, Place | None], Value] = {}
    for name, text in conditions.items():
        quantity = knowledge.quantities[name]
        value = Value(read_quantity(quantity, text).values[0].value)
        for place in (None, *unit.layout.places(quantity.per)):
            found[(name, place)] = value
    return found
