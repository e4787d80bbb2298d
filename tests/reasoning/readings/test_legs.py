"""Several legs of one reading reduced to one value."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.reasoning.readings.legs import OVER_RANGE, REDUCERS, farthest, unbalance

LEGS = st.lists(st.floats(0.1, 1000), min_size=1, max_size=4)


@pytest.mark.parametrize(
    ("name", "legs", "expected"),
    [
        ("highest", [6.7, 6.6, 6.9], 6.9),
        ("lowest", [6.7, 6.6, 6.9], 6.6),
        ("lowest-of-pairs", [2.31, 2.33, 2.30], 2.30),
        ("average", [208, 209, 207], 208),
        ("average-of-others", [1, 5, 7], 6),
        ("ratio", [2, 3, 4], 2),
        ("sum-error", [1.0, 2.0, 3.0], 0),
        ("sum-error", [1.0, 2.0, 3.3], 10),
        ("count-open", [OVER_RANGE, 2, OVER_RANGE], 2),
        ("count-zero", [0, 2, 0], 2),
    ],
)
def test_each_reducer_does_what_its_name_says(
    name: str, legs: list[float], expected: float
) -> None:
    assert REDUCERS[name](legs) == pytest.approx(expected)


def test_unbalance_is_the_largest_deviation_from_the_average() -> None:
    # NEMA MG 1, 12.45 / 14.36: per cent unbalance = 100 x max deviation from average / average.
    assert unbalance([230, 232, 225]) == pytest.approx(100 * 4 / 229)


@pytest.mark.parametrize(
    ("name", "legs"),
    [
        ("unbalance", [208]), ("unbalance", [0, 0, 0]), ("unbalance", [OVER_RANGE, 2, 2]),
        ("ratio", [5]), ("ratio", [0, 5]), ("average-of-others", [5]),
        ("sum-error", [1, 2]), ("sum-error", [0, 2, 3]), ("sum-error", [1, 2, OVER_RANGE]),
    ],
)  # fmt: skip
def test_what_legs_cannot_say_is_nothing(name: str, legs: list[float]) -> None:
    assert REDUCERS[name](legs) is None


@given(LEGS)
def test_no_reducer_depends_on_the_order_of_the_legs(legs: list[float]) -> None:
    for name, reduce in REDUCERS.items():
        forward, backward = reduce(legs), reduce(legs[::-1])
        assert (forward is None) == (backward is None), name
        assert forward is None or math.isclose(forward, backward or 0.0, abs_tol=1e-12), name


@given(LEGS)
def test_equal_legs_have_no_unbalance(legs: list[float]) -> None:
    same = [legs[0]] * 3
    assert unbalance(same) == pytest.approx(0, abs=1e-9)
    assert REDUCERS["ratio"](same) == 1


def test_the_farthest_leg_is_the_worst_against_a_reference() -> None:
    assert farthest([208, 212, 190], 208) == 190
    assert farthest([208, 230, 200], 208) == 230
    assert farthest([204, 212], 208) == 204
    assert farthest([204, 212], None) == 204


def test_the_farthest_leg_is_the_worst_against_a_range() -> None:
    assert farthest([215, 200, 228], 208, 230) == 200
    assert farthest([215, 240, 205], 208, 230) == 240
    assert farthest([210, 220], 208, 230) == 210
