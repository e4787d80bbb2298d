"""The engine's way against the exact optimum, on trees small enough to reckon by hand."""

from __future__ import annotations

import random

import pytest

from tests.building import base, fault, test_of, unit_of
from troubleshoot.measure.optimum import Subset, draw_subset, ratio_to_optimum
from troubleshoot.reasoning.conclude import Reasoner


def test_a_test_that_settles_it_is_taken_and_nothing_is_lost() -> None:
    certain = Subset((0.5, 0.5), ((1.0, 0.0),), (5.0,), ("any",))
    assert ratio_to_optimum(certain) == pytest.approx(1.0)


def test_a_test_too_dear_for_what_it_spares_is_left() -> None:
    dear = Subset((0.5, 0.5), ((1.0, 0.0),), (5000.0,), ("any",))
    assert ratio_to_optimum(dear) == pytest.approx(1.0)


@pytest.mark.parametrize("seed", range(8))
def test_the_engine_never_beats_the_optimum_and_comes_near_it(seed: int) -> None:
    dice = random.Random(seed)
    priors = [dice.random() for _ in range(4)]
    subset = Subset(
        tuple(p / sum(priors) for p in priors),
        tuple(tuple(dice.choice((0.02, 0.14, 0.41, 0.73, 0.92)) for _ in range(4)) for _ in "abc"),
        (2.0, 5.0, 12.0),
        ("any", "running", "locked-out"),
        {("any", "running"): 5.0, ("any", "locked-out"): 20.0, ("running", "locked-out"): 20.0,
         ("locked-out", "running"): 5.0},
    )  # fmt: skip
    assert 1 - 1e-9 <= ratio_to_optimum(subset) < 1.2


def test_a_drawn_subset_takes_the_tests_its_faults_speak_of() -> None:
    """Regression: an outcome named "none" once counted as sound."""
    tests = [test_of("volts", "low", "none"), test_of("noise", "loud")]
    open_ = fault("open", {"almost-always": [{"volts": "none"}]})
    weak = fault("weak", {"almost-always": [{"volts": "low"}], "never": [{"noise": "loud"}]})
    knowledge = base(tests, [open_, weak])
    hypotheses, _ = Reasoner(knowledge).hypotheses(unit_of(knowledge))
    subset = draw_subset(hypotheses, 2, 2, random.Random(1))
    assert subset.priors == (0.5, 0.5) and subset.minutes == (2.0, 2.0)
    # "Not sound" under each fault: 0.92 of the stated outcome and a share of the rest, less slips.
    assert all(chance > 0.9 for chance in subset.unsound[0])
