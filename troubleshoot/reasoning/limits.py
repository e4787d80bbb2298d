"""Limits of outcomes applied to numbers: which bounds, lines and outcomes hold.

A bound may be relative to another value; it then becomes a limit on its own quantity, which is how
one band of numbers is found for each outcome.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from troubleshoot.knowledge.model import Bound, LimitLine, Outcome
from troubleshoot.reasoning.places import Place
from troubleshoot.reasoning.values import Values

ROUNDING = 1e-9
"""Relative difference below which a reading is on a limit."""


def bounds_truth(bounds: tuple[Bound, ...], place: Place | None, values: Values) -> bool | None:
    """Whether all bounds hold at a place; nothing where a quantity or reference is not known."""
    here = [b for b in bounds if values.unit.proves(b.when, place)]
    names = [name for b in here for name in (b.quantity, b.relative_to) if name is not None]
    known = {name: values.get(name, place) for name in names}
    if not here or any(value is None for value in known.values()):
        return None
    numbers = {name: value.number for name, value in known.items() if value is not None}
    return all(_bound_holds(bound, numbers, place, values) for bound in here)


def deciding_quantities(
    outcomes: Sequence[Outcome], place: Place | None, values: Values
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


def outcome_at(
    outcomes: Sequence[Outcome],
    numbers: Mapping[str, float],
    place: Place | None,
    values: Values,
) -> str | None:
    """The first outcome any of whose lines holds at these numbers."""
    return next((o.id for o in outcomes if _holds(o, numbers, place, values)), None)


def signs_at(
    outcomes: Sequence[Outcome],
    healthy: Sequence[str],
    numbers: Mapping[str, float],
    place: Place | None,
    values: Values,
) -> tuple[str, ...]:
    """Every sign whose lines hold at these numbers: amps may be high and unbalanced at once."""
    return tuple(
        o.id for o in outcomes if o.id not in healthy and _holds(o, numbers, place, values)
    )


def _holds(
    outcome: Outcome, numbers: Mapping[str, float], place: Place | None, values: Values
) -> bool:
    return any(_line_holds(line, numbers, place, values) for line in outcome.limits)


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
        (bound.above is None or _side(x, scale.limit(bound.above)) > 0)
        and (bound.at_least is None or _side(x, scale.limit(bound.at_least)) >= 0)
        and (bound.below is None or _side(x, scale.limit(bound.below)) < 0)
        and (bound.at_most is None or _side(x, scale.limit(bound.at_most)) <= 0)
    )


def _side(x: float, limit: float) -> int:
    """Below (-1), on (0) or above (1) a limit, whatever the last bits of its arithmetic say."""
    if math.isclose(x, limit, rel_tol=ROUNDING, abs_tol=ROUNDING):
        return 0
    return 1 if x > limit else -1


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
class _Scale:
    """A bound turned into limits on the deciding quantity itself: x = offset + factor * number."""

    offset: float
    factor: float

    def limit(self, number: float) -> float:
        return self.offset + self.factor * number


def cuts_on(
    outcomes: Sequence[Outcome], main: str, place: Place | None, values: Values
) -> Iterator[float]:
    """Every limit on a quantity, in its own unit."""
    for outcome in outcomes:
        for line in outcome.limits:
            for bound in line.bounds:
                scale = _scale(bound, place, values) if bound.quantity == main else None
                if scale is not None:
                    for number in (bound.above, bound.at_least, bound.below, bound.at_most):
                        if number is not None:
                            yield scale.limit(number)
