"""The arithmetic of limits: a bound against a number, and against the value it is relative to."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Bound

ROUNDING: Final = 1e-9
"""Relative difference below which a reading is on a limit."""


def bound_holds(bound: Bound, x: float, reference: float | None) -> bool:
    """Whether a number fits a bound; never where the value it is relative to is not known."""
    if bound.reads == "zero":
        return x == 0
    if bound.reads == "open":
        return math.isinf(x)
    scale = _scale(bound, reference)
    if scale is None:
        return False
    offset, factor = scale
    return (
        (bound.above is None or _side(x, offset + factor * bound.above) > 0)
        and (bound.at_least is None or _side(x, offset + factor * bound.at_least) >= 0)
        and (bound.below is None or _side(x, offset + factor * bound.below) < 0)
        and (bound.at_most is None or _side(x, offset + factor * bound.at_most) <= 0)
    )


def cuts_of(bound: Bound, reference: float | None) -> Iterator[float]:
    """Every limit of a bound as a number on its own quantity; none without the reference."""
    scale = _scale(bound, reference)
    if scale is not None:
        offset, factor = scale
        for number in (bound.above, bound.at_least, bound.below, bound.at_most):
            if number is not None:
                yield offset + factor * number


def _side(x: float, limit: float) -> int:
    """Below (-1), on (0) or above (1) a limit, whatever the last bits of its arithmetic say."""
    if math.isclose(x, limit, rel_tol=ROUNDING, abs_tol=ROUNDING):
        return 0
    return 1 if x > limit else -1


def _scale(bound: Bound, r: float | None) -> tuple[float, float] | None:
    """Offset and factor that turn the bound's numbers into limits on the quantity itself."""
    if bound.relative_to is None:
        return 0.0, 1.0
    if r is None:
        return None
    return {
        "value": (0.0, 1.0),
        "difference": (r, 1.0),
        "percent-difference": (r, r / 100),
        "percent-of": (0.0, r / 100),
        "times": (0.0, r),
    }[bound.compared_as]
