"""From a number to an outcome word, and how sure: the limits of a test applied to known values.

Where one quantity decides, the reading is soft evidence near a limit: the chance of each outcome
is the part of the reading's normal distribution that falls in that outcome's band (uncertainty
from the meter). Where two or three quantities or several legs decide, the class is hard. The words
shown to people follow the guard band of JCGM 106 / ISO 14253-1.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise

from troubleshoot.knowledge.model import Bound, LimitLine, Outcome, Test
from troubleshoot.quantities.conformance import conformance
from troubleshoot.reasoning.equipment import Unit
from troubleshoot.reasoning.places import Place
from troubleshoot.reasoning.values import Values

FAR = 1e12
"""Beyond any value a mechanic meets; stands for infinity so that arithmetic stays finite."""


@dataclass(frozen=True, slots=True)
class Classified:
    """The outcome a number falls in, the chance of each outcome, and the verdict in words.

    `verdict` is "within", "outside" or "too close to call with this meter" against the healthy
    band; `low` and `high` are that band in the deciding quantity's unit, where there is one.
    """

    outcome: str
    chances: Mapping[str, float]
    quantity: str
    value: float
    u: float
    verdict: str
    low: float | None
    high: float | None


@dataclass(frozen=True, slots=True)
class _Scale:
    """A bound turned into limits on the deciding quantity itself: x = offset + factor * number."""

    offset: float
    factor: float

    def limit(self, number: float) -> float:
        return self.offset + self.factor * number


def outcomes_here(test: Test, unit: Unit) -> tuple[Outcome, ...]:
    """The outcomes this equipment can show."""
    return tuple(o for o in test.outcomes if unit.allows(o.exists_when))


def classify(test: Test, place: Place | None, values: Values) -> Classified | None:
    """The outcome of a test from known values; nothing where they do not decide it."""
    outcomes = [o for o in outcomes_here(test, values.unit) if o.limits]
    if not outcomes:
        return None
    names = _deciding_quantities(outcomes, place, values)
    present = {name: values.get(name, place) for name in names}
    numbers = {name: value.number for name, value in present.items() if value is not None}
    outcome = _outcome_at(outcomes, numbers, place, values)
    if outcome is None:
        return None
    measured = [
        n for n in names if (v := present[n]) is not None and not _is_plate(n, place, v, values)
    ]
    main = measured[0] if measured else names[0]
    value = present[main]
    if value is None:
        return None
    exact = value.number == 0 or math.isinf(value.number)
    soft = len(measured) == 1 and value.soft and value.u > 0 and not exact
    if not soft:
        chances: Mapping[str, float] = {outcome: 1.0}
        low = high = None
        verdict = "within" if outcome in test.healthy else "outside"
        if len(measured) == 1 and not exact:
            low, high = _healthy_band(
                test, _bands(outcomes, main, numbers, place, values), value.number
            )
    else:
        bands = _bands(outcomes, main, numbers, place, values)
        chances = _chances(bands, value.number, value.u)
        low, high = _healthy_band(test, bands, value.number)
        verdict = _verdict(value.number, value.u, low, high)
    return Classified(outcome, chances, main, value.number, value.u, verdict, low, high)


def bounds_truth(bounds: tuple[Bound, ...], place: Place | None, values: Values) -> bool | None:
    """Whether all bounds hold at a place; nothing where a quantity is not known."""
    known = {b.quantity: values.get(b.quantity, place) for b in bounds}
    if any(value is None for value in known.values()):
        return None
    numbers = {name: value.number for name, value in known.items() if value is not None}
    return all(_bound_holds(bound, numbers, place, values) for bound in bounds)


def _is_plate(name: str, place: Place | None, value: object, values: Values) -> bool:
    return values.unit.plate_value(name, place) is not None and not getattr(value, "typed", True)


def _deciding_quantities(
    outcomes: list[Outcome], place: Place | None, values: Values
) -> tuple[str, ...]:
    """The quantities that the limits speak of here, in order of first mention."""
    seen: dict[str, None] = {}
    for outcome in outcomes:
        for line in outcome.limits:
            if values.unit.proves(line.when, place):
                for bound in line.bounds:
                    if values.unit.proves(bound.when, place):
                        seen.setdefault(bound.quantity)
    return tuple(seen)


def _outcome_at(
    outcomes: list[Outcome],
    numbers: Mapping[str, float],
    place: Place | None,
    values: Values,
) -> str | None:
    """The first outcome any of whose lines holds at these numbers."""
    for outcome in outcomes:
        for line in outcome.limits:
            if _line_holds(line, numbers, place, values):
                return outcome.id
    return None


def _line_holds(
    line: LimitLine, numbers: Mapping[str, float], place: Place | None, values: Values
) -> bool:
    if not values.unit.proves(line.when, place):
        return False
    bounds = [b for b in line.bounds if values.unit.proves(b.when, place)]
    return bool(bounds) and all(_bound_holds(b, numbers, place, values) for b in bounds)


def _bound_holds(
    bound: Bound, numbers: Mapping[str, float], place: Place | None, values: Values
) -> bool:
    x = numbers.get(bound.quantity)
    if x is None:
        return False
    if bound.reads == "zero":
        return x == 0
    if bound.reads == "open":
        return math.isinf(x)
    scale = _scale(bound, place, values)
    if scale is None:
        return False
    return (
        (bound.above is None or x > scale.limit(bound.above))
        and (bound.at_least is None or x >= scale.limit(bound.at_least))
        and (bound.below is None or x < scale.limit(bound.below))
        and (bound.at_most is None or x <= scale.limit(bound.at_most))
    )


def _scale(bound: Bound, place: Place | None, values: Values) -> _Scale | None:
    """How the numbers of a bound become limits on its quantity; nothing without the reference."""
    if bound.relative_to is None:
        return _Scale(0.0, 1.0)
    reference = values.get(bound.relative_to, place)
    if reference is None:
        return None
    r = reference.number
    return {
        "difference": _Scale(r, 1.0),
        "percent-difference": _Scale(r, r / 100),
        "percent-of": _Scale(0.0, r / 100),
        "times": _Scale(0.0, r),
        "value": _Scale(0.0, 1.0),
    }[bound.compared_as]


@dataclass(frozen=True, slots=True)
class _Band:
    low: float
    high: float
    outcome: str | None


def _bands(
    outcomes: list[Outcome],
    main: str,
    numbers: Mapping[str, float],
    place: Place | None,
    values: Values,
) -> tuple[_Band, ...]:
    """The line of real numbers cut at every limit on `main`, with the outcome of each piece."""
    cuts = sorted({c for c in _cuts(outcomes, main, place, values) if abs(c) < FAR})
    edges = [-FAR, *cuts, FAR]
    bands: list[_Band] = []
    for low, high in pairwise(edges):
        middle = _middle(low, high)
        at = _outcome_at(outcomes, {**numbers, main: middle}, place, values)
        if bands and bands[-1].outcome == at:
            bands[-1] = _Band(bands[-1].low, high, at)
        else:
            bands.append(_Band(low, high, at))
    return tuple(bands)


def _middle(low: float, high: float) -> float:
    if low == -FAR and high == FAR:
        return 0.0
    if low == -FAR:
        return high - 1.0 - abs(high)
    if high == FAR:
        return low + 1.0 + abs(low)
    return (low + high) / 2


def _cuts(
    outcomes: list[Outcome], main: str, place: Place | None, values: Values
) -> Iterator[float]:
    for outcome in outcomes:
        for line in outcome.limits:
            for bound in line.bounds:
                scale = _scale(bound, place, values) if bound.quantity == main else None
                if scale is not None:
                    for number in (bound.above, bound.at_least, bound.below, bound.at_most):
                        if number is not None:
                            yield scale.limit(number)


def _chances(bands: tuple[_Band, ...], x: float, u: float) -> Mapping[str, float]:
    """The part of a normal distribution around x in each outcome's bands, scaled to 1."""
    parts: dict[str, float] = {}
    for band in bands:
        if band.outcome is not None:
            part = _below((band.high - x) / u) - _below((band.low - x) / u)
            parts[band.outcome] = parts.get(band.outcome, 0.0) + part
    total = math.fsum(parts.values())
    return {outcome: part / total for outcome, part in parts.items() if part > 0}


def _below(z: float) -> float:
    """Standard normal distribution function."""
    return 0.5 * math.erfc(-z / math.sqrt(2))


def _healthy_band(
    test: Test, bands: tuple[_Band, ...], x: float
) -> tuple[float | None, float | None]:
    """The healthy band that holds x, or the one nearest to it."""
    healthy = [band for band in bands if band.outcome in test.healthy]
    if not healthy:
        return None, None
    nearest = min(healthy, key=lambda b: max(b.low - x, x - b.high, 0.0))
    return (
        None if nearest.low == -FAR else nearest.low,
        None if nearest.high == FAR else nearest.high,
    )


def _verdict(x: float, u: float, low: float | None, high: float | None) -> str:
    if low is None and high is None:
        return "within"
    return conformance(x, u, low=low, high=high)[1]
