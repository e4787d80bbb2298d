"""Subsets drawn from the rule base: what their tests tell, and what they take."""

from __future__ import annotations

import random

from tests.building import base, fault, test_of, unit_of
from troubleshoot.measure.subset import draw_subset
from troubleshoot.reasoning.conclude import Reasoner


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
