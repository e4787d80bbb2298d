"""The figures of many visits: what a wrong first call was, in three that add up."""

from __future__ import annotations

import random

import pytest

from troubleshoot.measure.searched import searched
from troubleshoot.measure.simulated import Visit


def ended(chance: float, *listed: str, truth: str = "truth", stopped: bool = False) -> Visit:
    """A visit that ends on this list."""
    call = listed[0] if listed else "other"
    return Visit(truth, call, chance, chance, 10.0, 2, stopped, listed)


def test_wrong_calls_are_told_apart_by_hand() -> None:
    found = searched(
        [
            ended(0.95, "truth"),
            ended(0.5, "truth", "other"),
            ended(0.95, "other", "truth"),  # named: its repair is told, the second is not tried
            ended(0.5, "other", "truth"),
            ended(0.5, "other", "more", "truth"),
            ended(0.4, "other", "more", "still more", "truth"),
            ended(0.5, "other", "more"),
            ended(0.02),
            ended(0.02, stopped=True),
        ]
    )
    assert found.wrong == pytest.approx(6 / 8)
    apart = found.named_and_wrong, found.truth_further_down, found.truth_not_listed
    assert apart == pytest.approx((1 / 8, 2 / 8, 3 / 8))
    assert (found.sure, found.wrong_when_sure) == pytest.approx((2 / 8, 1 / 2))
    assert found.stopped == pytest.approx(1 / 9)


@pytest.mark.parametrize("seed", range(20))
def test_the_three_add_up_to_the_wrong_calls(seed: int) -> None:
    dice = random.Random(seed)
    names = ["truth", "other", "more", "still more"]
    visits = [ended(0.1, "truth")] + [
        ended(dice.random(), *dice.sample(names, dice.randint(0, 4)), stopped=dice.random() < 0.1)
        for _ in range(30)
    ]
    found = searched(visits)
    apart = (found.named_and_wrong, found.truth_further_down, found.truth_not_listed)
    assert sum(apart) == pytest.approx(found.wrong) and min(apart) >= 0
