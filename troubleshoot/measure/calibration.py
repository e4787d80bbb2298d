"""Whether the chances that are said come true: calibration and the Brier score of first calls."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import Protocol


class Called(Protocol):
    """A first call, of a visit or of readings: its chance among the faults, and if it is right."""

    @property
    def among_faults(self) -> float: ...

    @property
    def right(self) -> bool: ...


def calibration_error(calls: Sequence[Called], bins: int = 10) -> float:
    """Expected calibration error of the first call's chance."""
    off = (
        abs(sum(c.right for c in inside) - math.fsum(c.among_faults for c in inside))
        for inside in _by_chance_said(calls, bins)
    )
    return math.fsum(off) / len(calls)


def calibration_error_by_luck(calls: Sequence[Called], bins: int = 10) -> float:
    """The calibration error that a perfectly calibrated caller would show on as many calls.

    The number right in a bin scatters about what was said; the mean size of a normal error is
    sqrt(2 / pi) of its standard deviation.
    """
    spread = (
        math.sqrt(math.fsum(c.among_faults * (1 - c.among_faults) for c in inside))
        for inside in _by_chance_said(calls, bins)
    )
    return math.sqrt(2 / math.pi) * math.fsum(spread) / len(calls)


def _by_chance_said(calls: Sequence[Called], bins: int) -> Iterator[list[Called]]:
    """Calls by the chance that they were given, in even bins."""
    for number in range(bins):
        yield [c for c in calls if min(int(c.among_faults * bins), bins - 1) == number]


def brier_score(calls: Sequence[Called]) -> float:
    """Mean squared difference of the first call's chance and whether it was right."""
    return sum((c.among_faults - c.right) ** 2 for c in calls) / len(calls)
