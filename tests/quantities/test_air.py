"""Capacity, mixing, airflow, velocity and split: what holds whatever is put in."""

import subprocess
import sys

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from troubleshoot.quantities import air
from troubleshoot.quantities.ranges import OutOfRange

temperatures = st.floats(min_value=0, max_value=110)
fractions = st.floats(min_value=0, max_value=100)


@given(temperatures, temperatures, fractions)
def test_a_mixture_gives_back_the_fraction_it_was_made_with(
    back: float, outdoor: float, fraction: float
) -> None:
    assume(abs(back - outdoor) > 1)
    mixed = air.mixed_air_temperature(back, outdoor, fraction)
    assert min(back, outdoor) - 1e-9 <= mixed <= max(back, outdoor) + 1e-9
    assert air.outdoor_air_fraction(back, mixed, outdoor).percent == pytest.approx(
        fraction, abs=1e-6
    )


@given(st.floats(min_value=11, max_value=60))
def test_the_closer_the_two_airs_the_less_certain_the_fraction(difference: float) -> None:
    near, far = (
        air.outdoor_air_fraction(75, 75 - 0.2 * apart, 75 - apart)
        for apart in (difference, 2 * difference)
    )
    assert near.uncertainty_percent == pytest.approx(2 * far.uncertainty_percent)


def test_without_a_difference_or_with_a_stray_mixture_there_is_no_fraction() -> None:
    with pytest.raises(OutOfRange, match="equally warm"):
        air.outdoor_air_fraction(75, 75, 75)
    with pytest.raises(OutOfRange, match="not between"):
        air.outdoor_air_fraction(75, 90, 35)


def test_a_mixture_just_past_the_return_is_still_explained_by_the_sensors() -> None:
    assert air.outdoor_air_fraction(75, 75.5, 35).percent == pytest.approx(-1.25)


def test_swapped_thermometers_are_no_cooling() -> None:
    with pytest.raises(OutOfRange, match="swapped"):
        air.air_side_capacity(2000, (58, 56.5), (80, 67))


@given(st.floats(min_value=200, max_value=20000))
def test_capacity_goes_with_airflow_and_with_the_density_of_the_air(airflow: float) -> None:
    once = air.air_side_capacity(airflow, (80, 67), (58, 56.5))
    twice = air.air_side_capacity(2 * airflow, (80, 67), (58, 56.5))
    assert twice.total == pytest.approx(2 * once.total)
    assert twice.sensible_heat_ratio == pytest.approx(once.sensible_heat_ratio)
    assert once.tons == pytest.approx(once.total / 12000, rel=1e-3)
    thin = air.air_side_capacity(airflow, (80, 67), (58, 56.5), 12.228)
    assert thin.sensible == pytest.approx(once.sensible * 12.228 / 14.695949)


@given(st.floats(min_value=5000, max_value=400000), st.floats(min_value=10, max_value=90))
def test_airflow_carries_the_heat_it_was_computed_from(output: float, rise: float) -> None:
    assert air.airflow_from_heat_rise(output, rise) * 1.08 * rise == pytest.approx(output)


def test_no_rise_and_no_heat_give_no_airflow() -> None:
    for output, rise in ((80000, 0), (0, 50), (-1, 50)):
        with pytest.raises(OutOfRange):
            air.airflow_from_heat_rise(output, rise)
    with pytest.raises(OutOfRange):
        air.airflow_from_electric_heat(0, 30)


@given(st.floats(min_value=0, max_value=2))
def test_four_times_the_velocity_pressure_is_twice_the_velocity(pressure: float) -> None:
    assert air.air_velocity(4 * pressure) == pytest.approx(2 * air.air_velocity(pressure))


@given(st.floats(min_value=70, max_value=84), st.floats(min_value=50, max_value=69))
def test_wetter_return_air_shows_a_smaller_split_and_warmer_a_larger(
    dry_bulb: float, wet_bulb: float
) -> None:
    split = air.target_temperature_split(dry_bulb, wet_bulb)
    assert air.target_temperature_split(dry_bulb, wet_bulb + 1) < split
    if dry_bulb <= 83:
        assert air.target_temperature_split(dry_bulb + 1, wet_bulb) > split


@pytest.mark.parametrize(
    ("dry_bulb", "wet_bulb"), [(69, 60), (85, 60), (75, 49), (75, 77), (71, 72)]
)
def test_outside_its_table_there_is_no_target_split(dry_bulb: float, wet_bulb: float) -> None:
    with pytest.raises(OutOfRange):
        air.target_temperature_split(dry_bulb, wet_bulb)


def test_what_needs_no_moist_air_does_not_import_psychrolib() -> None:
    program = (
        "import sys; from troubleshoot.quantities import air;"
        "air.airflow_from_heat_rise(80000, 50); print('psychrolib' in sys.modules)"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "False"
