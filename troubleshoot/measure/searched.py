"""What a way of choosing tests came to over many simulated visits."""

from __future__ import annotations

import random
from collections.abc import Mapping, Sequence
from statistics import fmean, median
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Complaint
from troubleshoot.measure.calibration import (
    brier_score,
    calibration_error,
    calibration_error_by_luck,
)
from troubleshoot.measure.simulated import SimulatedVisit, Visit
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.evidence.hypotheses import Hypothesis

NEXT_TRIED: Final = slice(1, 3)
"""Whoever has a shortlist whose first cause is not it looks at its second and third."""


@frozen
class Searched:
    """The figures of many visits; shares are of the first calls, minutes of all visits.

    `wrong` is the sum of three: named all the same; not named, and the true fault second or third
    on the list; not named, and the true fault not even there.
    """

    minutes_mean: float
    minutes_median: float
    stopped: float
    wrong: float
    named_and_wrong: float
    truth_not_listed: float
    truth_further_down: float
    sure: float
    wrong_when_sure: float
    calibration: float
    calibration_by_luck: float
    brier: float


def searched(visits: Sequence[Visit]) -> Searched:
    """The figures of many visits."""
    called = [v for v in visits if not v.stopped]
    sure = [v for v in called if v.named]
    unsure = [v for v in called if not v.named and not v.right]
    further_down = sum(v.truth in v.listed[NEXT_TRIED] for v in unsure)
    return Searched(
        fmean(v.minutes for v in visits),
        median(v.minutes for v in visits),
        1 - len(called) / len(visits),
        fmean(not v.right for v in called),
        sum(not v.right for v in sure) / len(called),
        (len(unsure) - further_down) / len(called),
        further_down / len(called),
        len(sure) / len(called),
        fmean(not v.right for v in sure) if sure else 0.0,
        calibration_error(called),
        calibration_error_by_luck(called),
        brier_score(called),
    )


def visits_of(
    kind: type[SimulatedVisit],
    reasoner: Reasoner,
    facts: Mapping[str, object],
    drawn: Sequence[tuple[Hypothesis, Complaint]],
) -> list[Visit]:
    """A visit of this kind to a unit with each fault drawn, on its call."""
    return [
        kind(reasoner, facts, truth, complaint, random.Random(number)).visit()
        for number, (truth, complaint) in enumerate(drawn)
    ]
