"""Whether the chances that are said come true: calibration and the Brier score of first calls."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from troubleshoot.measure.simulated import Visit


def calibration_error(visits: Sequence[Visit], bins: int = 10) -> float:
    """Expected calibration error of the first call's chance."""
    off = (
        abs(sum(v.right for v in inside) - math.fsum(v.among_faults for v in inside))
        for inside in _by_chance_said(visits, bins)
    )
    return math.fsum(off) / len(visits)


def calibration_error_by_luck(visits: Sequence[Visit], bins: int = 10) -> float:
    """The calibration error that a perfectly calibrated caller would show on as many visits.

    The number right in a bin scatters about what was said; the mean size of a normal error is
    sqrt(2 / pi) of its standard deviation.
    """
    spread = (
        math.sqrt(math.fsum(v.among_faults * (1 - v.among_faults) for v in inside))
        for inside in _by_chance_said(visits, bins)
    )
    return math.sqrt(2 / math.pi) * math.fsum(spread) / len(visits)


def _by_chance_said(visits: Sequence[Visit], bins: int) -> Iterator[list[Visit]]:
    """Visits by the chance that their call was given, in even bins."""
    for number in range(bins):
        yield [v for v in visits if min(int(v.among_faults * bins), bins - 1) == number]


def brier_score(visits: Sequence[Visit]) -> float:
    """Mean squared difference of the first call's chance and whether it was right."""
    return sum((v.among_faults - v.right) ** 2 for v in visits) / len(visits)
