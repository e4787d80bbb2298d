"""Two faults at once: leaky noisy-OR on "normal", against the formula written out."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.reasoning.evidence.outcome_chances import Row, Signs
from troubleshoot.reasoning.evidence.two_faults import combined, combined_signs, together

USUAL = {"normal": 0.9, "low": 0.06, "high": 0.04}


def rows() -> st.SearchStrategy[dict[str, float]]:
    parts = st.tuples(*([st.floats(0.02, 1.0)] * 3))
    return parts.map(lambda p: dict(zip(USUAL, (x / sum(p) for x in p), strict=True)))


def close(one: Row, other: Row) -> None:
    assert one == pytest.approx(dict(other), abs=1e-12)


@given(rows())
def test_a_fault_that_says_nothing_changes_nothing(row: dict[str, float]) -> None:
    close(combined(row, USUAL, USUAL, ("normal",)), row)
    close(combined(USUAL, row, USUAL, ("normal",)), row)


@given(rows(), rows())
def test_normal_is_seen_only_where_neither_fault_nor_the_leak_disturbs_it(
    one: dict[str, float], other: dict[str, float]
) -> None:
    both = combined(one, other, USUAL, ("normal",))
    assert math.fsum(both.values()) == pytest.approx(1.0)
    assert all(p > 0 for p in both.values())
    # Henrion 1989: (1 - a)(1 - b)(1 - leak), with each row holding the leak once already.
    product = one["normal"] * other["normal"] / USUAL["normal"]
    assert both["normal"] == pytest.approx(min(product, max(one["normal"], other["normal"])))


@given(rows(), rows())
def test_which_fault_was_named_first_does_not_matter(
    one: dict[str, float], other: dict[str, float]
) -> None:
    close(combined(one, other, USUAL, ("normal",)), combined(other, one, USUAL, ("normal",)))


def test_bad_outcomes_are_shared_by_what_the_faults_make_of_them() -> None:
    lows = {"normal": 0.2, "low": 0.77, "high": 0.03}
    highs = {"normal": 0.5, "low": 0.06, "high": 0.44}
    both = combined(lows, highs, USUAL, ("normal",))
    low, high = 0.77 + 0.06 - 0.06, 0.03 + 0.44 - 0.04
    assert both["low"] / both["high"] == pytest.approx(low / high)


def test_without_a_healthy_outcome_the_ratios_multiply() -> None:
    usual = {"a": 0.5, "b": 0.5}
    both = combined({"a": 0.8, "b": 0.2}, {"a": 0.6, "b": 0.4}, usual, ())
    assert both["a"] / both["b"] == pytest.approx((0.8 / 0.2) * (0.6 / 0.4))


SIGNS = Signs({"dirty": 0.05, "bent": 0.06}, 0.9)


def test_each_sign_may_come_from_either_fault_or_from_neither() -> None:
    one, other = Signs({"dirty": 0.7, "bent": 0.06}, 0.25), Signs({"dirty": 0.3, "bent": 0.5}, 0.3)
    both = combined_signs(one, other, SIGNS)
    assert both.signs["dirty"] == pytest.approx(1 - 0.3 * 0.7 / 0.95)
    assert both.signs["bent"] == pytest.approx(1 - 0.94 * 0.5 / 0.94)
    assert both.none == pytest.approx(0.25 * 0.3 / 0.9)


def test_signs_that_say_nothing_change_nothing() -> None:
    one = Signs({"dirty": 0.7, "bent": 0.06}, 0.25)
    both = together(one, SIGNS, SIGNS, ("normal",))
    assert isinstance(both, Signs)
    close(both.signs, one.signs)
    assert both.none == pytest.approx(one.none)


def test_a_row_and_signs_are_put_together_sign_by_sign() -> None:
    usual = SIGNS.patterns()
    both = together(dict(usual), Signs({"dirty": 0.7, "bent": 0.06}, 0.25), SIGNS, ("normal",))
    assert not isinstance(both, Signs)
    close(both, Signs({"dirty": 0.7, "bent": 0.06}, 0.25).patterns())
