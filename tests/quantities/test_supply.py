"""Unbalance, derating and voltage limits: what holds whatever is put in."""

from itertools import permutations

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from troubleshoot.quantities import supply
from troubleshoot.quantities.ranges import OutOfRange

legs = st.floats(min_value=100, max_value=700)
percents = st.floats(min_value=0, max_value=5)


@given(legs, legs, legs)
def test_unbalance_does_not_depend_on_the_order_of_the_legs_nor_on_the_unit(
    first: float, second: float, third: float
) -> None:
    wanted = supply.unbalance(first, second, third).percent
    for order in permutations((first, second, third)):
        assert supply.unbalance(*order).percent == pytest.approx(wanted)
    thousandth = supply.unbalance(first / 1000, second / 1000, third / 1000)
    assert thousandth.percent == pytest.approx(wanted)


@given(legs)
def test_equal_legs_are_in_balance_by_both_measures(leg: float) -> None:
    assert supply.unbalance(leg, leg, leg).percent == pytest.approx(0, abs=1e-9)
    assert supply.negative_sequence_factor(leg, leg, leg) == pytest.approx(0, abs=1e-3)


@given(legs, legs, legs)
def test_the_factor_lies_from_0_to_100_percent(first: float, second: float, third: float) -> None:
    assume(2 * max(first, second, third) <= first + second + third)
    assert 0 <= supply.negative_sequence_factor(first, second, third) <= 100


def test_a_lost_phase_has_a_factor_of_100_percent() -> None:
    assert supply.negative_sequence_factor(208, 104, 104) == pytest.approx(100, abs=0.1)


def test_three_volts_that_close_no_triangle_are_refused() -> None:
    with pytest.raises(OutOfRange, match="read all three pairs again"):
        supply.negative_sequence_factor(480, 200, 200)


@pytest.mark.parametrize("function", [supply.unbalance, supply.negative_sequence_factor])
def test_a_dead_supply_has_no_unbalance(function: object) -> None:
    assert callable(function)
    with pytest.raises(OutOfRange, match="read zero"):
        function(0, 0, 0)


@given(percents, percents)
def test_more_unbalance_never_lets_a_motor_carry_more(first: float, second: float) -> None:
    low, high = sorted((first, second))
    assert supply.derating_factor(low) >= supply.derating_factor(high) - 1e-12
    assert 0.7 < supply.derating_factor(high) <= 1


def test_above_5_percent_nothing_is_promised() -> None:
    for function in (
        supply.derating_factor,
        supply.added_temperature_rise,
        supply.expected_current_unbalance,
    ):
        with pytest.raises(OutOfRange):
            function(5.01)


@pytest.mark.parametrize(
    ("nominal", "measured", "verdict"),
    [
        ((208,), 208, "range-a"),
        ((208,), 195, "range-b"),
        ((208,), 185, "outside"),
        ((208,), 219, "range-b"),
        ((460,), 420, "within"),
        ((460,), 410, "outside"),
        ((208, 230), 190, "within"),
        ((208, 230), 250, "within"),
        ((208, 230), 180, "outside"),
    ],
)
def test_a_system_is_judged_by_its_ranges_and_a_motor_by_its_nameplate(
    nominal: tuple[float, ...], measured: float, verdict: str
) -> None:
    # Range limits: ANSI C84.1, from memory, so that no limit itself is checked here.
    assert supply.service_voltage(nominal, measured).verdict == verdict


@pytest.mark.parametrize(
    "nominal", [(460, 3, 60), (120, 240), (277, 480), (208, 240, 277), (24, 120)]
)
def test_volts_of_two_supplies_are_no_nominal(nominal: tuple[float, ...]) -> None:
    """Regression: 60 V on 460/3/60 was within; 150 V lay between 120 and 240, and was too."""
    with pytest.raises(OutOfRange, match="one supply"):
        supply.service_voltage(nominal, 60)


def test_the_deviation_is_from_the_nearest_nominal() -> None:
    assert supply.service_voltage((208, 230), 228).deviation_percent == pytest.approx(-0.8696, 1e-3)
