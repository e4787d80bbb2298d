"""A straight line through readings over time, with its band, and when it crosses a limit."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Final, NamedTuple

from troubleshoot.frozen import frozen
from troubleshoot.quantities.student import student_quantile

BAND: Final = 0.95
"""How often a band holds what it is of."""
LEAST: Final = 3
"""Readings under which no line says anything: two always lie on one."""


class Point(NamedTuple):
    """A reading at a time, in years."""

    time: float
    value: float


class Crossing(NamedTuple):
    """When the line reaches a limit, and between which times by its band, in years."""

    time: float
    earliest: float
    latest: float


@frozen
class Trend:
    """A line fitted by least squares.

    `mean_time`, `mean_value`: of the points; `slope` a year and its standard error; `scatter`: the
    standard deviation about the line; `spread`: of the times about their mean, squared and summed.
    """

    points: int
    mean_time: float
    mean_value: float
    slope: float
    error: float
    scatter: float
    spread: float

    @property
    def quantile(self) -> float:
        """Student's t of the band."""
        return student_quantile(BAND, self.points - 2)

    @property
    def band(self) -> tuple[float, float]:
        """The slopes that the readings leave possible, 95 in 100 times."""
        half = self.quantile * self.error
        return self.slope - half, self.slope + half

    @property
    def is_sure(self) -> bool:
        """Whether the band leaves no room for no change at all."""
        low, high = self.band
        return low > 0.0 or high < 0.0

    def at(self, time: float) -> float:
        """The line at a time."""
        return self.mean_value + self.slope * (time - self.mean_time)

    def half_width(self, time: float) -> float:
        """How far the band of the line reaches either way of it at a time."""
        far = (time - self.mean_time) ** 2 / self.spread
        return self.quantile * self.scatter * math.sqrt(1.0 / self.points + far)

    def crosses(self, limit: float) -> Crossing | None:
        """When the line reaches a limit; None where it does not change for sure.

        Formula: (mean + slope x - limit)^2 = (t s)^2 (1/n + x^2/spread), solved for x.
        Source: E. C. Fieller (1954), "Some problems in interval estimation".
        """
        if not self.is_sure:
            return None
        gap = self.mean_value - limit
        reach = (self.quantile * self.scatter) ** 2
        square = self.slope**2 - reach / self.spread
        half, rest = self.slope * gap, gap**2 - reach / self.points
        root = math.sqrt(max(half**2 - square * rest, 0.0))
        ends = sorted(self.mean_time + (-half + sign * root) / square for sign in (-1.0, 1.0))
        return Crossing(self.mean_time - gap / self.slope, ends[0], ends[1])


def fitted(points: Sequence[Point]) -> Trend | None:
    """The line of least squares through points; None where there are too few, or all at one time.

    Source: Draper and Smith, Applied Regression Analysis, 3rd edition, 1.2 to 1.4.
    """
    count = len(points)
    if count < LEAST:
        return None
    mean_time = math.fsum(point.time for point in points) / count
    mean_value = math.fsum(point.value for point in points) / count
    spread = math.fsum((point.time - mean_time) ** 2 for point in points)
    if spread <= 0.0:
        return None
    together = math.fsum((p.time - mean_time) * (p.value - mean_value) for p in points)
    slope = together / spread
    off = math.fsum((p.value - mean_value - slope * (p.time - mean_time)) ** 2 for p in points)
    scatter = math.sqrt(off / (count - 2))
    error = scatter / math.sqrt(spread)
    return Trend(count, mean_time, mean_value, slope, error, scatter, spread)
