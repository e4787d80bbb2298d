"""Lines through readings over time, held against SciPy's and the normal equations."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy import stats

from troubleshoot.quantities.student import student_quantile, student_within
from troubleshoot.quantities.trend import Point, fitted

FLEETING = 1e-9
POINTS = st.lists(
    st.tuples(st.floats(0.0, 20.0), st.floats(-500.0, 500.0)), min_size=3, max_size=30
)
CAPACITOR = tuple(map(Point, (0.0, 0.2, 1.0, 1.2, 2.0, 2.2), (45.5, 45.6, 44.8, 45.2, 43.5, 43.6)))


@pytest.mark.parametrize("freedom", [1, 2, 3, 4, 5, 8, 17, 40])
@pytest.mark.parametrize("within", [0.5, 0.9, 0.95, 0.99, 0.999])
def test_students_quantile_is_scipys(within: float, freedom: int) -> None:
    expected = stats.t.ppf((1.0 + within) / 2.0, freedom)
    assert student_quantile(within, freedom) == pytest.approx(expected, rel=1e-10)
    assert student_within(expected, freedom) == pytest.approx(within, rel=1e-10)


def test_a_band_of_everything_or_of_no_readings_is_refused() -> None:
    for within, freedom in ((1.0, 3), (-0.1, 3), (0.95, 0)):
        with pytest.raises(ValueError):
            student_quantile(within, freedom)


@given(POINTS)
def test_the_line_and_its_band_are_scipys(pairs: list[tuple[float, float]]) -> None:
    times, values = zip(*pairs, strict=True)
    assume(max(times) - min(times) > 0.1 and max(values) > min(values))  # theirs is nan there
    trend = fitted([Point(*pair) for pair in pairs])
    assert trend is not None
    theirs = stats.linregress(times, values)
    size = max(map(abs, values)) + 1.0
    assert trend.slope == pytest.approx(theirs.slope, abs=1e-7 * size)
    assert trend.at(0.0) == pytest.approx(theirs.intercept, abs=1e-6 * size)
    assert trend.error == pytest.approx(theirs.stderr, abs=1e-6 * size)
    half = stats.t.ppf(0.975, len(pairs) - 2) * theirs.stderr
    assert trend.band[1] - trend.slope == pytest.approx(half, rel=1e-6, abs=1e-5 * size)


def test_the_band_of_the_line_is_that_of_the_normal_equations() -> None:
    """Var(line at x) = s2 * [1 x] (X'X)^-1 [1 x]' (Draper and Smith, 5.3)."""
    trend = fitted(CAPACITOR)
    assert trend is not None
    times, values = map(np.array, zip(*CAPACITOR, strict=True))
    design = np.column_stack([np.ones_like(times), times])
    inverse = np.linalg.inv(design.T @ design)
    off = values - design @ (inverse @ design.T @ values)
    for when in (-1.0, 0.0, 1.1, 5.0):
        row = np.array([1.0, when])
        half = stats.t.ppf(0.975, 4) * math.sqrt(off @ off / 4 * (row @ inverse @ row))
        assert trend.half_width(when) == pytest.approx(half, rel=1e-9)


def test_the_limit_is_crossed_where_the_line_and_the_ends_of_its_band_meet_it() -> None:
    trend = fitted(CAPACITOR)
    assert trend is not None and trend.is_sure
    crossing = trend.crosses(42.3)
    assert crossing is not None
    assert trend.at(crossing.time) == pytest.approx(42.3)
    early, late = crossing.earliest, crossing.latest
    assert early < crossing.time < late
    assert trend.at(early) - trend.half_width(early) == pytest.approx(42.3)
    assert trend.at(late) + trend.half_width(late) == pytest.approx(42.3)


def test_what_may_not_change_at_all_crosses_nothing() -> None:
    trend = fitted([Point(0, 5.0), Point(1, 5.2), Point(2, 4.9), Point(3, 5.1)])
    assert trend is not None and not trend.is_sure
    assert trend.crosses(4.0) is None


@pytest.mark.parametrize(
    "points", [(), (Point(0, 1),), (Point(0, 1), Point(1, 2)), (Point(1, 1),) * 3]
)
def test_too_few_readings_or_all_of_one_day_make_no_line(points: tuple[Point, ...]) -> None:
    assert fitted(points) is None


def test_readings_on_one_line_have_no_scatter() -> None:
    trend = fitted([Point(0, 4.0), Point(1, 3.0), Point(2, 2.0)])
    assert trend is not None
    assert trend.scatter == pytest.approx(0.0, abs=FLEETING)
    crossing = trend.crosses(1.0)
    assert crossing is not None and crossing.time == pytest.approx(3.0)
