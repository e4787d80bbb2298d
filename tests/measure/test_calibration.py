"""Calibration and the Brier score, by hand and against callers whose chances are true."""

from __future__ import annotations

import random

import pytest

from troubleshoot.measure.calibration import (
    brier_score,
    calibration_error,
    calibration_error_by_luck,
)
from troubleshoot.measure.simulated import Visit


def called(chance: float, right: bool) -> Visit:
    return Visit("a", "a" if right else "b", chance / 2, chance, 10, 2)


def test_calibration_and_brier_score_by_hand() -> None:
    visits = [called(0.95, True), called(0.95, False), called(0.55, True), called(1.0, True)]
    # In 0.9 to 1: said 2.90 / 3, right 2 / 3; in 0.5 to 0.6: said 0.55, right 1.
    expected = (abs(2 / 3 - 2.9 / 3) * 3 + 0.45) / 4
    assert calibration_error(visits) == pytest.approx(expected)
    squares = 0.05**2 + 0.95**2 + 0.45**2 + 0.0
    assert brier_score(visits) == pytest.approx(squares / 4)


def test_luck_alone_gives_what_callers_with_true_chances_show() -> None:
    """Checked against five hundred throws of 200 visits whose chances are true."""
    dice = random.Random(1)
    said = [dice.betavariate(4, 1) for _ in range(200)]
    shown = [
        calibration_error([called(chance, dice.random() < chance) for chance in said])
        for _ in range(500)
    ]
    by_luck = calibration_error_by_luck([called(chance, True) for chance in said])
    assert by_luck == pytest.approx(sum(shown) / len(shown), rel=0.05)


def test_who_is_always_sure_has_no_luck() -> None:
    assert calibration_error_by_luck([called(1.0, True), called(0.0, False)]) == 0.0
