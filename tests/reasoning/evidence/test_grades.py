"""The grade words: their order, and that each lies in the band printed beside it."""

from __future__ import annotations

import re

import pytest

from troubleshoot.knowledge.vocabulary import BANDS, PROBABILITY, Grade
from troubleshoot.reasoning.evidence.grades import (
    HOW_COMMON,
    PRIOR_NOTHING_WRONG_ON_COMPLAINT,
    PRIOR_NOTHING_WRONG_ON_ROUND,
    PRIOR_OUTSIDE,
    band,
    spoken,
)


def test_the_words_rise_in_order_and_are_never_certain() -> None:
    chances = list(PROBABILITY.values())
    assert chances == sorted(chances) and chances[0] > 0 and chances[-1] < 1
    assert list(PROBABILITY) == list(BANDS)


@pytest.mark.parametrize("grade", list(PROBABILITY))
def test_each_chance_lies_in_its_printed_band(grade: Grade) -> None:
    said = band(grade)
    numbers = [int(n) / 100 for n in re.findall(r"\d+", said)]
    low = 0.0 if said.startswith("under") else numbers[0]
    high = 1.0 if said.startswith("over") else numbers[-1]
    assert low <= PROBABILITY[grade] <= high
    assert spoken(grade) == f"{grade.replace('-', ' ')} ({said})"


def test_how_common_runs_from_ten_down_to_a_third() -> None:
    # Common practice, no source.
    assert list(HOW_COMMON.values()) == [10, 5, 2, 1, 0.3]


def test_the_special_hypotheses_leave_room_for_the_faults() -> None:
    assert 0.05 <= PRIOR_OUTSIDE <= 0.10
    assert PRIOR_OUTSIDE + PRIOR_NOTHING_WRONG_ON_COMPLAINT < 1
    assert PRIOR_OUTSIDE + PRIOR_NOTHING_WRONG_ON_ROUND < 1
