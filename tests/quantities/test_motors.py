"""Windings, speeds, fans, belts and circuits: what holds whatever is put in."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.quantities import motors
from troubleshoot.quantities.ranges import OutOfRange

ohms = st.floats(min_value=0.5, max_value=200)
fahrenheit = st.floats(min_value=-40, max_value=300)
amps = st.floats(min_value=0.5, max_value=300)


@given(ohms, ohms)
def test_windings_that_add_up_are_consistent_and_halved_ones_are_not(
    run: float, start: float
) -> None:
    assert motors.winding_check(run, start, run + start).verdict == "consistent"
    assert motors.winding_check(run, start, (run + start) / 2).verdict == "inconsistent"


@pytest.mark.parametrize(
    ("c_r", "c_s", "r_s", "verdict"),
    [
        (math.inf, math.inf, 4.0, "common-open"),
        (math.inf, 3.0, math.inf, "run-open"),
        (1.0, math.inf, math.inf, "start-open"),
        (math.inf, math.inf, math.inf, "open"),
        (1.0, 3.0, math.inf, "inconsistent"),
        (0.0, 3.0, 3.0, "shorted"),
        (1.0, 3.0, 4.1, "consistent"),
    ],
)
def test_open_and_shorted_windings_are_told_apart(
    c_r: float, c_s: float, r_s: float, verdict: str
) -> None:
    assert motors.winding_check(c_r, c_s, r_s).verdict == verdict


def test_windings_that_add_up_differ_by_nothing() -> None:
    """Regression: 1.1 + 2.2 ohm against 3.3 differed by -4.441e-16 ohm."""
    found = motors.winding_check(1.1, 2.2, 3.3)
    assert str(found.difference_ohm) == "0.0"
    assert motors.winding_check(1.1, 2.2, 3.0).difference_ohm == -0.3


def test_an_open_pair_leaves_nothing_to_expect() -> None:
    found = motors.winding_check(math.inf, math.inf, 4.0)
    assert (found.expected_ohm, found.difference_ohm) == (None, None)


@pytest.mark.parametrize("wrong", [-0.1, math.nan])
def test_a_resistance_below_zero_is_refused(wrong: float) -> None:
    with pytest.raises(OutOfRange):
        motors.winding_check(wrong, 3, 4)


@given(ohms, fahrenheit, fahrenheit)
def test_resistance_taken_to_a_temperature_and_back_is_the_same(
    resistance: float, first: float, second: float
) -> None:
    there = motors.resistance_at_temperature(resistance, first, second)
    assert motors.resistance_at_temperature(there, second, first) == pytest.approx(resistance)
    if second > first + 1:
        assert there > resistance


@given(st.floats(min_value=0, max_value=1000))
def test_insulation_resistance_doubles_for_each_18_fahrenheit_of_reading(megohm: float) -> None:
    assert motors.insulation_resistance_at_40c(megohm, 104) == pytest.approx(megohm)
    assert motors.insulation_resistance_at_40c(megohm, 122) == pytest.approx(2 * megohm)


def test_insulation_is_not_corrected_from_freezing_cold() -> None:
    with pytest.raises(OutOfRange):
        motors.insulation_resistance_at_40c(50, 32)


@pytest.mark.parametrize("poles", [0, 1, 3, 2.5])
def test_poles_come_in_pairs(poles: float) -> None:
    with pytest.raises(OutOfRange):
        motors.synchronous_speed(60, poles)


def test_a_rotor_does_not_outrun_its_field() -> None:
    assert motors.slip(1800, 1800) == 0
    assert motors.slip(1800, 0) == 100
    with pytest.raises(OutOfRange):
        motors.slip(1800, 1801)


@given(st.floats(min_value=100, max_value=2000), st.floats(min_value=100, max_value=2000))
def test_fan_laws_there_and_back_cancel(first: float, second: float) -> None:
    there, back = motors.fan_laws(first, second), motors.fan_laws(second, first)
    assert there.flow * back.flow == pytest.approx(1)
    assert there.pressure == pytest.approx(there.flow**2)
    assert there.power * back.power == pytest.approx(1)


def test_equal_pulleys_keep_the_speed_and_a_larger_fan_pulley_slows_it() -> None:
    assert motors.belt_drive(1750, 4, 4) == 1750
    assert motors.belt_drive(1750, 4, 8) == 875
    with pytest.raises(OutOfRange):
        motors.belt_drive(1750, 4, 0)


@pytest.mark.parametrize(("power_factor", "phases"), [(1.1, 3), (-0.1, 1), (0.9, 2)])
def test_power_takes_a_power_factor_up_to_1_and_one_or_three_phases(
    power_factor: float, phases: float
) -> None:
    with pytest.raises(OutOfRange):
        motors.motor_power(460, 10, power_factor, phases)


@given(amps, st.lists(st.floats(min_value=0, max_value=1), max_size=5))
def test_a_standard_size_covers_the_minimum_and_stays_under_the_maximum_where_one_can(
    largest: float, shares: list[float]
) -> None:
    found = motors.circuit_ampacity(largest, [largest * share for share in shares])
    assert found.standard_size_a in motors.STANDARD_SIZES_A
    assert found.standard_size_a >= min(found.minimum_a, motors.STANDARD_SIZES_A[-1])
    between = [
        size for size in motors.STANDARD_SIZES_A if found.minimum_a <= size <= found.maximum_a
    ]
    if between:
        assert found.standard_size_a == between[-1]


def test_the_largest_load_must_be_named_as_the_largest() -> None:
    with pytest.raises(OutOfRange, match="name the largest"):
        motors.circuit_ampacity(5, [18])
