"""Student's t distribution for whole degrees of freedom, without a library."""

from __future__ import annotations

import math
from functools import cache
from itertools import accumulate
from operator import mul
from typing import Final

_LARGEST: Final = 1e9
"""No quantile that is asked for lies beyond it."""


def student_within(t: float, freedom: int) -> float:
    """Return the chance that t of so many degrees of freedom lies between -t and t.

    Formula: finite series in the angle atan(t / sqrt(freedom)).
    Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4.
    Raises ValueError for less than one degree of freedom.
    """
    if freedom < 1:
        raise ValueError("Student's t has one degree of freedom or more.")
    angle = math.atan2(abs(t), math.sqrt(freedom))
    sine, cosine = math.sin(angle), math.cos(angle)
    if freedom == 1:
        return 2.0 * angle / math.pi
    is_odd = freedom % 2 == 1
    ratios = (n / (n + 1) * cosine * cosine for n in range(1 + is_odd, freedom - 2, 2))
    series = math.fsum(accumulate(ratios, mul, initial=cosine if is_odd else 1.0))
    return 2.0 / math.pi * (angle + sine * series) if is_odd else sine * series


@cache
def student_quantile(within: float, freedom: int) -> float:
    """Return the t between -t and t of which the chance is `within`, to twelve digits.

    Raises ValueError where no t has that chance.
    """
    if not 0.0 <= within < 1.0:
        raise ValueError("A band holds a part of the whole, never all of it.")
    low, high = 0.0, 1.0
    while student_within(high, freedom) < within and high < _LARGEST:
        low, high = high, 2.0 * high
    while high - low > 1e-12 * high:
        middle = (low + high) / 2.0
        low, high = (middle, high) if student_within(middle, freedom) < within else (low, middle)
    return (low + high) / 2.0
