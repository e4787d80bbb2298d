"""Reading a typed answer: text -> values in the unit that the question asks for.

A closed grammar. Text that could mean two things is refused with the reason, never guessed; a
value without a unit is taken in the unit asked for and marked as assumed.
"""

import math
import re
from typing import Final, Literal

from troubleshoot.frozen import frozen
from troubleshoot.quantities.typed_legs import split_legs, split_names
from troubleshoot.quantities.typed_numbers import Number, take_number
from troubleshoot.quantities.typed_text import NotUnderstood, Unclear, clean
from troubleshoot.quantities.typed_units import read_unit
from troubleshoot.quantities.units import Unit, UnitError, convert, unit

__all__ = ["Bound", "Expected", "Leg", "NotUnderstood", "Typed", "read"]

Bound = Literal["more-than", "less-than"]

_OVER_RANGE_KINDS: Final = frozenset({"resistance", "capacitance"})
_OVER_RANGE: Final = re.compile(
    r"(?:(?:ol|o\.l|0l|0\.l|over[- ]?range|overload|infinit[ey])\b\.?|∞)(?P<tail>.*)",
    re.IGNORECASE,
)
_ABOUT: Final = re.compile(r"^(?:~|(?:about|around|roughly|approx|ca)\b\.?) ?", re.IGNORECASE)
_OPEN: Final = re.compile(r"open(?: circuit)?", re.IGNORECASE)
_BOUND: Final = re.compile(r"(>|<|more than |less than |over |under )=? ?", re.IGNORECASE)
_AT_LEAST: Final = re.compile(r"(?P<number>[0-9][0-9.,]*)\+ ?(?P<unit>[^0-9]*)")
_MORE: Final = frozenset({">", "more than ", "over "})
_SPREAD: Final = re.compile(r" ?(?:\+ ?/ ?-|\+-|±) ?")
_TWO_PARTS: Final = re.compile(
    r"(?P<whole>[0-9]+) ?(?P<large>[a-z#'][a-z.]*) ?"
    r"(?P<rest>[0-9]+(?: [0-9]+/[0-9]+|[./][0-9]+)?) ?(?P<small>[a-z\".]+)",
    re.IGNORECASE,
)
_PARTS_OF: Final = {"lb": "oz", "ft": "in", "min": "s", "h": "min", "year": "month"}
_PERCENT: Final = frozenset({"%", "percent", "pct"})


@frozen
class Expected:
    """What a question asks for; any unit of the same kind as `unit` is accepted.

    `legs` allows several values, `names` are the names that they (or one value) may carry; `alone`:
    mostly it is one value all the same.
    Raises UnitError for an unknown unit, or for over range where a meter has none.
    """

    unit: str
    allow_over_range: bool = False
    legs: bool = False
    names: tuple[str, ...] = ()
    alone: bool = False

    def __post_init__(self) -> None:
        kind = unit(self.unit).kind
        if self.allow_over_range and kind not in _OVER_RANGE_KINDS:
            raise UnitError(f"A {kind} is never over range; allow it for ohms and farads only.")


@frozen
class Leg:
    """One value: `value`, `plus_minus` and `resolution` are in `unit`, the unit asked for.

    `typed_unit` is None when the unit was assumed. Over range has an infinite `value` and no
    resolution. `bound` tells that only a limit was read (>200), the limit itself included.
    `resolution` is the worth of the last digit typed.
    """

    name: str | None
    value: float
    unit: str
    over_range: bool
    typed_unit: str | None
    bound: Bound | None
    plus_minus: float | None
    resolution: float


@frozen
class Typed:
    """All values of one answer in the order typed, and the answer exactly as typed."""

    values: tuple[Leg, ...]
    text: str

    @property
    def bounded(self) -> bool:
        """Whether only a limit was read of any of them."""
        return any(leg.bound is not None for leg in self.values)

    @property
    def at_its_ends(self) -> str:
        """The same with each limit told as a number: < 10 V as 10 V."""
        return "/".join(f"{leg.value:g} {unit(leg.unit).spoken}" for leg in self.values)


@frozen
class _Measure:
    """One value before units are settled; no number means over range."""

    name: str | None
    bound: Bound | None = None
    number: Number | None = None
    unit: str | None = None
    spread: float | None = None
    spread_unit: str | None = None


def read(text: str, expected: Expected) -> Typed:
    """Return the values that `text` holds, in the unit of `expected`.

    Raises NotUnderstood, and nothing else, for text that is no answer or could mean two things.
    """
    wanted = unit(expected.unit)
    try:
        cleaned = _SPREAD.sub("±", clean(text))
        if expected.legs:
            parts = split_legs(cleaned, wanted.kind, expected.names)
        else:
            parts = split_names(cleaned, expected.names) or ((None, cleaned),)
            if len(parts) > 1:
                raise Unclear("holds several values where one is asked for")
        measures = [_measure(name, part, expected, wanted) for name, part in parts]
        common = _unit_for_all(measures, wanted)
        return Typed(tuple(_leg(measure, common, wanted) for measure in measures), text)
    except Unclear as unclear:
        instead = unclear.instead or _example(expected, wanted)
        raise NotUnderstood(text, unclear.why, instead) from None


def _example(expected: Expected, wanted: Unit) -> str:
    several = expected.legs and not expected.alone
    number = "12/13/12" if several else "12"
    if several and expected.names:
        number = ", ".join(f"{name} 12" for name in expected.names[:3])
    example = f"{number} {wanted.spoken}".rstrip()
    return f"write a number and its unit, like {example}{' or OL' * expected.allow_over_range}"


def _measure(name: str | None, text: str, expected: Expected, wanted: Unit) -> _Measure:
    over_range = _read_over_range(name, text, expected, wanted)
    if over_range:
        return over_range
    bound, text = _take_bound(_ABOUT.sub("", text))
    two_parts = _read_two_parts(text, wanted)
    if two_parts:
        return _Measure(name, bound, *two_parts)
    value_text, sign, spread_text = text.partition("±")
    number, tail = take_number(value_text)
    typed = read_unit(tail, wanted, below_zero=number.value < 0)
    if not sign:
        return _Measure(name, bound, number, typed)
    if bound:
        raise Unclear("has both a bound and a plus-or-minus", "give one of the two")
    return _with_spread(name, number, typed, spread_text, wanted)


def _with_spread(
    name: str | None, number: Number, typed: str | None, spread_text: str, wanted: Unit
) -> _Measure:
    """Return the value with its plus-or-minus, which may be a percentage of the value."""
    spread, tail = take_number(spread_text)
    if spread.value < 0:
        raise Unclear("has a plus-or-minus below zero")
    if tail in _PERCENT and not (typed or wanted.id).startswith("percent"):
        part = abs(number.value) * spread.value / 100.0
        return _Measure(name, None, number, typed, part, typed)
    spread_unit = read_unit(tail, wanted)
    return _Measure(name, None, number, typed or spread_unit, spread.value, spread_unit or typed)


def _read_over_range(
    name: str | None, text: str, expected: Expected, wanted: Unit
) -> _Measure | None:
    """Return over range as a meter shows it (OL); an open circuit is one for ohms only."""
    match = _OVER_RANGE.fullmatch(text)
    is_open = wanted.kind == "resistance" and _OPEN.fullmatch(text) is not None
    if not (match or is_open):
        return None
    if not expected.allow_over_range:
        raise Unclear("is over range, which this reading cannot be")
    return _Measure(name, unit=read_unit(match["tail"], wanted) if match else None)


def _take_bound(text: str) -> tuple[Bound | None, str]:
    at_least = _AT_LEAST.fullmatch(text)
    if at_least:
        return "more-than", f"{at_least['number']} {at_least['unit']}".rstrip()
    match = _BOUND.match(text)
    if not match:
        return None, text
    return "more-than" if match[1].lower() in _MORE else "less-than", text[match.end() :]


def _read_two_parts(text: str, wanted: Unit) -> tuple[Number, str] | None:
    """Return 8 lb 4 oz, or 3 ft 6 in, as one number with its smaller unit; None if it is none."""
    match = _TWO_PARTS.fullmatch(text)
    if not match:
        return None
    large, small = read_unit(match["large"], wanted), read_unit(match["small"], wanted)
    if large is None or small is None or _PARTS_OF.get(large) != small:
        raise Unclear("holds more than one number where one is asked for")
    rest, _ = take_number(match["rest"])
    in_small = convert(float(match["whole"]), large, small)
    if rest.value >= convert(1.0, large, small):
        raise Unclear(f"has more {small} than one {large} holds")
    return Number(in_small + rest.value, rest.resolution), small


def _unit_for_all(measures: list[_Measure], wanted: Unit) -> str | None:
    """Return the unit for the legs that carry none: the one at the end, or None (assumed).

    Raises Unclear where the legs carry units or a plus-or-minus in a way that leaves it open.
    """
    typed = {measure.unit for measure in measures if measure.unit}
    bare = any(measure.unit is None and measure.number for measure in measures)
    last = measures[-1].unit
    if bare and typed and not (len(typed) == 1 and (last or typed == {wanted.id})):
        raise Unclear("leaves open the unit of some legs", "write the unit behind every leg")
    if len({measure.spread is None for measure in measures}) > 1:
        raise Unclear("leaves open which legs the plus-or-minus is for", "write it behind each")
    return last if bare else None


def _leg(measure: _Measure, common: str | None, wanted: Unit) -> Leg:
    typed = measure.unit or common
    if measure.number is None:
        return Leg(measure.name, math.inf, wanted.id, True, measure.unit, None, None, 0.0)
    given = unit(typed or wanted.id)
    if given.factor < 0 and measure.number.value < 0:
        raise Unclear("says twice that it lies below zero", "write the vacuum without a minus")
    spread_step = _step(unit(measure.spread_unit or given.id), wanted)
    return Leg(
        name=measure.name,
        value=convert(measure.number.value, given.id, wanted.id),
        unit=wanted.id,
        over_range=False,
        typed_unit=typed,
        bound=_turned(measure.bound) if given.factor * wanted.factor < 0 else measure.bound,
        plus_minus=None if measure.spread is None else measure.spread * spread_step,
        resolution=measure.number.resolution * _step(given, wanted),
    )


def _step(given: Unit, wanted: Unit) -> float:
    """Return what a difference of one `given` unit is in `wanted` units, always above zero."""
    return abs(given.factor / wanted.factor)


def _turned(bound: Bound | None) -> Bound | None:
    """Return the bound after the sign of its value changed, as with inches of vacuum."""
    if bound is None:
        return None
    return "less-than" if bound == "more-than" else "more-than"
