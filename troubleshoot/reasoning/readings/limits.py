"""Limits of outcomes applied to numbers: which bounds, lines and outcomes hold.

A bound may be relative to another value; it then becomes a limit on its own quantity, which is how
one band of numbers is found for each outcome.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from troubleshoot.knowledge.bounds import bound_holds, cuts_of
from troubleshoot.knowledge.model import Bound, Outcome
from troubleshoot.reasoning.readings.values import Values
from troubleshoot.reasoning.unit.equipment import ENDS
from troubleshoot.reasoning.unit.places import Place


def bounds_truth(bounds: tuple[Bound, ...], place: Place | None, values: Values) -> bool | None:
    """Whether all bounds hold at a place; nothing where a quantity or reference is not known."""
    here = [b for b in bounds if values.proves(b.when, place)]
    names = [name for b in here for name in (b.quantity, b.relative_to) if name is not None]
    known = {name: values.get(name, place) for name in names}
    if not here or any(value is None for value in known.values()):
        return None
    numbers = {name: value.number for name, value in known.items() if value is not None}
    return all(_bound_holds(bound, numbers, place, values) for bound in here)


Here = Sequence[tuple[str, Sequence[Sequence[Bound]]]]
"""The limits of a test that hold at one place: each outcome with its lines, each of its bounds."""


def limits_here(outcomes: Iterable[Outcome], place: Place | None, values: Values) -> Here:
    """The lines and bounds that this equipment and what is known of it leave, whatever is read."""
    return [(outcome.id, list(_lines(outcome, place, values))) for outcome in outcomes]


def _lines(outcome: Outcome, place: Place | None, values: Values) -> Iterator[Sequence[Bound]]:
    for line in outcome.limits:
        if values.proves(line.when, place):
            bounds = [bound for bound in line.bounds if values.proves(bound.when, place)]
            if bounds:
                yield bounds


def deciding_quantities(here: Here) -> tuple[str, ...]:
    """The quantities that these limits speak of, in order of first mention."""
    return tuple(
        dict.fromkeys(bound.quantity for _, lines in here for line in lines for bound in line)
    )


def outcome_at(
    here: Here, numbers: Mapping[str, float], place: Place | None, values: Values
) -> str | None:
    """The first outcome any of whose lines holds at these numbers."""
    for outcome, lines in here:
        if any(_line_holds(line, numbers, place, values) for line in lines):
            return outcome
    return None


def signs_at(
    here: Here,
    healthy: Sequence[str],
    numbers: Mapping[str, float],
    place: Place | None,
    values: Values,
) -> tuple[str, ...]:
    """Every sign whose lines hold at these numbers: amps may be high and unbalanced at once."""
    return tuple(
        outcome
        for outcome, lines in here
        if outcome not in healthy
        and any(_line_holds(line, numbers, place, values) for line in lines)
    )


def _line_holds(
    bounds: Iterable[Bound], numbers: Mapping[str, float], place: Place | None, values: Values
) -> bool:
    return all(_bound_holds(bound, numbers, place, values) for bound in bounds)


def _bound_holds(
    bound: Bound, numbers: Mapping[str, float], place: Place | None, values: Values
) -> bool:
    x = numbers.get(bound.quantity)
    return x is not None and bound_holds(bound, x, reference(bound, place, values, x))


def reference(bound: Bound, place: Place | None, values: Values, near: float) -> float | None:
    """The value that a bound is relative to, where it is known; of a range what lies nearest."""
    return None if bound.relative_to is None else values.nearest(bound.relative_to, place, near)


def cuts_on(
    outcomes: Sequence[Outcome], main: str, place: Place | None, values: Values
) -> Iterator[float]:
    """Every limit on a quantity, in its own unit."""
    for outcome in outcomes:
        for line in outcome.limits:
            for bound in line.bounds:
                if bound.quantity == main:
                    ends = (reference(bound, place, values, near) for near in ENDS)
                    for end in dict.fromkeys(ends):
                        yield from cuts_of(bound, end)
