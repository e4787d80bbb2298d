"""How several legs of one reading (three amps, three winding pairs) reduce to one value."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence

OVER_RANGE = math.inf
"""What a leg that read OL counts as."""


def highest(legs: Sequence[float]) -> float:
    return max(legs)


def lowest(legs: Sequence[float]) -> float:
    return min(legs)


def size(legs: Sequence[float]) -> float:
    """The largest number, its sign left out: a draft, or a current with the leads swapped."""
    return max(abs(leg) for leg in legs)


def average(legs: Sequence[float]) -> float:
    return math.fsum(legs) / len(legs)


def unbalance(legs: Sequence[float]) -> float | None:
    """100 x largest deviation from the average / average, in per cent (NEMA MG 1)."""
    mean = average(legs)
    if len(legs) < 2 or mean <= 0 or math.isinf(mean):
        return None
    return 100 * max(abs(leg - mean) for leg in legs) / mean


def ratio(legs: Sequence[float]) -> float | None:
    """Highest over lowest; nothing for a single leg or a leg at zero."""
    return max(legs) / min(legs) if len(legs) > 1 and min(legs) > 0 else None


def average_of_others(legs: Sequence[float]) -> float | None:
    """Average of all legs but the lowest."""
    return average(sorted(legs)[1:]) if len(legs) > 1 else None


def sum_error(legs: Sequence[float]) -> float | None:
    """Per cent by which the largest of three differs from the sum of the two others."""
    if len(legs) != 3 or math.isinf(max(legs)) or min(legs) <= 0:
        return None
    small, middle, large = sorted(legs)
    return 100 * (large - small - middle) / (small + middle)


def count_open(legs: Sequence[float]) -> float:
    return float(sum(math.isinf(leg) for leg in legs))


def count_zero(legs: Sequence[float]) -> float:
    return float(sum(leg == 0 for leg in legs))


REDUCERS: Mapping[str, Callable[[Sequence[float]], float | None]] = {
    "highest": highest,
    "lowest": lowest,
    "lowest-of-pairs": lowest,
    "average": average,
    "size": size,
    "unbalance": unbalance,
    "ratio": ratio,
    "average-of-others": average_of_others,
    "sum-error": sum_error,
    "count-open": count_open,
    "count-zero": count_zero,
}
"""Reducers by the name rule files use. `farthest` needs a reference value: see `farthest`."""

SPREAD_OF_LEGS = frozenset({"unbalance", "ratio", "sum-error"})
"""Reducers that turn legs of one unit into a pure number, so a bare number may be typed too."""
PURE_NUMBERS = SPREAD_OF_LEGS | {"count-open", "count-zero"}
"""Reducers whose result is in another unit than the legs: the meter's accuracy is not theirs."""


def farthest(legs: Sequence[float], reference: float | None, top: float | None = None) -> float:
    """The leg farthest from a reference value, or from a range up to `top`; else the lowest."""
    if reference is None:
        return min(legs)
    low, high = reference, reference if top is None else top
    return max(legs, key=lambda leg: (max(low - leg, leg - high, 0.0), -leg))
