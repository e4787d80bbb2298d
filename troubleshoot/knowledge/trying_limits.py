"""Trying the limits of a test on numbers: which outcomes hold where, on one kind of unit.

The axis of each quantity is cut at every limit on it; the cuts and the middles between them stand
for all numbers. A value that a limit is relative to is tried at one usual size: what matters is
how the limits meet, not where.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Mapping, Sequence
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.bounds import bound_holds, cuts_of
from troubleshoot.knowledge.model import Bound, Knowledge, LimitLine, Outcome, Test
from troubleshoot.knowledge.variants import Variant, holds

MOST_POINTS: Final = 4_000

_SIGNED: Final = frozenset(
    {
        "temperature",
        "temperature difference",
        "gauge pressure",
        "pressure difference",
        "difference of percentages",
    }
)
_SIZES: Final = (
    (("-low", "-minimum", "-least", "-dropout"), 50.0),
    (("-high", "-maximum", "-most"), 110.0),
)
_USUAL_SIZE: Final = 80.0

Point = Mapping[str, float]


@frozen
class Line:
    """The bounds of a limit line that count on one kind of unit."""

    outcome: str
    bounds: tuple[Bound, ...]


def lines_here(test: Test, variant: Variant) -> list[Line]:
    """The limit lines of a test that can hold on a kind of unit, in the order of outcomes."""
    return [
        Line(outcome.id, bounds)
        for outcome in test.outcomes
        if holds(outcome.exists_when, variant)
        for line in outcome.limits
        if holds(line.when, variant)
        and (bounds := _bounds_here(line, variant))
        and not _cannot_be_compared(bounds, variant)
    ]


def lacks_a_comparison(test: Test, variant: Variant) -> bool:
    """Whether a limit of a test leans on what nobody knows of a kind of unit: numbers then stay
    without an outcome."""
    return any(
        _cannot_be_compared(_bounds_here(line, variant), variant)
        for outcome in test.outcomes
        for line in outcome.limits
    )


def _cannot_be_compared(bounds: tuple[Bound, ...], variant: Variant) -> bool:
    """Whether a bound leans on a plate value, or on a quantity, that is not known there."""
    names = {name for bound in bounds for name in (bound.quantity, bound.relative_to) if name}
    return any(variant.get(name) == "not-known" for name in names)


def points(knowledge: Knowledge, lines: Sequence[Line]) -> Iterator[Point]:
    """Yield points that stand for all numbers; nothing where they would be too many."""
    axes: dict[str, list[float]] = {}
    for line in lines:
        for bound in line.bounds:
            axes.setdefault(bound.quantity, []).extend(_cuts(bound))
    tried = {name: _tried(cuts, _is_signed(knowledge, name)) for name, cuts in axes.items()}
    if math.prod(len(numbers) for numbers in tried.values()) > MOST_POINTS:
        return
    for numbers in itertools.product(*tried.values()):
        yield dict(zip(tried, numbers, strict=True))


def outcomes_at(lines: Sequence[Line], point: Point) -> list[str]:
    """The outcomes that hold at a point. What a meter reads as zero or open goes before numbers."""
    held = [line for line in lines if all(_holds(bound, point) for bound in line.bounds)]
    read = [line for line in held if any(bound.reads for bound in line.bounds)]
    return list(dict.fromkeys(line.outcome for line in read or held))


def numeric_outcomes(test: Test) -> list[Outcome]:
    return [outcome for outcome in test.outcomes if outcome.limits]


def _holds(bound: Bound, point: Point) -> bool:
    return bound_holds(bound, point[bound.quantity], _reference(bound))


def _bounds_here(line: LimitLine, variant: Variant) -> tuple[Bound, ...]:
    return tuple(bound for bound in line.bounds if holds(bound.when, variant))


def _is_signed(knowledge: Knowledge, quantity: str) -> bool:
    from troubleshoot.quantities.units import UNITS

    return UNITS[knowledge.quantities[quantity].unit].kind in _SIGNED


def usual_size(reference: str) -> float:
    """The size at which a value that limits are relative to is tried."""
    for endings, size in _SIZES:
        if reference.endswith(endings):
            return size
    return _USUAL_SIZE


def _reference(bound: Bound) -> float | None:
    return None if bound.relative_to is None else usual_size(bound.relative_to)


def _cuts(bound: Bound) -> Iterator[float]:
    yield from cuts_of(bound, _reference(bound))
    if bound.reads is not None:
        yield 0.0 if bound.reads == "zero" else math.inf


def _tried(cuts: list[float], signed: bool) -> list[float]:
    """Every cut, a number between each two, and one beyond each end."""
    edges = sorted({cut for cut in cuts if not math.isinf(cut)})
    if not signed and (not edges or edges[0] >= 0):
        edges = sorted({0.0, *edges})
        ends = [edges[-1] + 1 + abs(edges[-1])]
    else:
        edges = edges or [0.0]
        ends = [edges[0] - 1 - abs(edges[0]), edges[-1] + 1 + abs(edges[-1])]
    middles = [(low + high) / 2 for low, high in itertools.pairwise(edges)]
    open_end = [math.inf] if math.inf in cuts else []
    return sorted([*edges, *middles, *ends]) + open_end
