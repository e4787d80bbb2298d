"""Motor capacitors: what the formulas keep to whatever is put in. Figures: see tests/checks."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.quantities import capacitors
from troubleshoot.quantities.ranges import OutOfRange

microfarads = st.floats(min_value=0.5, max_value=500)
volts = st.floats(min_value=1, max_value=660)


@given(microfarads, volts, st.sampled_from([50.0, 60.0]))
def test_capacitance_comes_back_from_the_current_it_draws(
    value: float, voltage: float, frequency: float
) -> None:
    current = 2 * 3.141592653589793 * frequency * value * 1e-6 * voltage
    assert capacitors.capacitance_under_load(current, voltage, frequency) == pytest.approx(value)


@pytest.mark.parametrize(
    ("current", "voltage", "frequency"), [(-1, 370, 60), (4, 0, 60), (4, 661, 60), (4, 370, 101)]
)
def test_outside_the_scope_of_the_standard_there_is_no_capacitance(
    current: float, voltage: float, frequency: float
) -> None:
    with pytest.raises(OutOfRange):
        capacitors.capacitance_under_load(current, voltage, frequency)


def test_a_value_on_the_limit_is_within_and_one_past_it_is_outside() -> None:
    low, high = capacitors.capacitance_limits(40, 6)
    assert capacitors.capacitance_deviation(40, low, 6).verdict == "within"
    assert capacitors.capacitance_deviation(40, high, 6).verdict == "within"
    assert capacitors.capacitance_deviation(40, low - 1e-6, 6).verdict == "outside"
    assert capacitors.capacitance_deviation(40, 0, 6).deviation_percent == -100


@given(microfarads, st.floats(min_value=50.001, max_value=1000))
def test_a_bleed_resistor_brings_the_voltage_down_to_the_safe_one(
    value: float, start: float
) -> None:
    time = capacitors.discharge_time(value, 20_000, start, 50)
    constant = capacitors.time_constant(value, 20_000)
    assert start * 2.718281828459045 ** (-time / constant) == pytest.approx(50)


def test_what_is_below_the_safe_voltage_needs_no_time() -> None:
    assert capacitors.discharge_time(45, 20_000, 49, 50) == 0


@given(st.lists(microfarads, min_size=1, max_size=6))
def test_in_series_lies_below_the_smallest_and_in_parallel_above_the_largest(
    values: list[float],
) -> None:
    assert capacitors.capacitors_in_series(values) <= min(values) * (1 + 1e-12)
    assert capacitors.capacitors_in_parallel(values) >= max(values)


@given(microfarads, volts)
def test_twice_the_voltage_holds_four_times_the_energy(value: float, voltage: float) -> None:
    once = capacitors.stored_energy(value, voltage)
    twice = capacitors.stored_energy(value, 2 * voltage)
    assert twice.energy_j == pytest.approx(4 * once.energy_j)
    assert twice.peak_v == pytest.approx(2 * once.peak_v)
