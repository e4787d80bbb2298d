"""Moist air against a second library and against itself."""

import pytest
from CoolProp.HumidAirProp import HAPropsSI
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.quantities import moist_air
from troubleshoot.quantities.atmosphere import density_ratio, standard_pressure
from troubleshoot.quantities.ranges import OutOfRange

PSI = 6894.757293168
dry_bulbs = st.floats(min_value=35, max_value=115)
humidities = st.floats(min_value=5, max_value=100)
altitudes = st.floats(min_value=-1000, max_value=12000)


def kelvin(fahrenheit: float) -> float:
    return (fahrenheit + 459.67) / 1.8


@pytest.mark.parametrize(
    ("dry_bulb", "humidity", "pressure"),
    [(40, 80, 14.696), (75, 50, 14.696), (95, 40, 14.696), (80, 60, 12.228), (105, 20, 13.2)],
)
def test_a_state_agrees_with_coolprop(dry_bulb: float, humidity: float, pressure: float) -> None:
    """Source: CoolProp, real moist air (Herrmann, Kretzschmar and Gatley, RP-1485)."""
    found = moist_air.from_relative_humidity(dry_bulb, humidity, pressure)
    state = ("T", kelvin(dry_bulb), "P", pressure * PSI, "R", humidity / 100)
    assert found.humidity_ratio == pytest.approx(HAPropsSI("W", *state), rel=0.008)
    assert found.wet_bulb_f == pytest.approx(HAPropsSI("B", *state) * 1.8 - 459.67, abs=0.15)
    assert found.dew_point_f == pytest.approx(HAPropsSI("D", *state) * 1.8 - 459.67, abs=0.1)
    assert found.volume == pytest.approx(HAPropsSI("V", *state) * 16.018463, rel=0.002)


@given(dry_bulbs, humidities, altitudes)
def test_the_three_ways_in_lead_to_one_state(
    dry_bulb: float, humidity: float, altitude: float
) -> None:
    pressure = standard_pressure(altitude)
    state = moist_air.from_relative_humidity(dry_bulb, humidity, pressure)
    by_wet_bulb = moist_air.from_wet_bulb(dry_bulb, state.wet_bulb_f, pressure)
    by_dew_point = moist_air.from_dew_point(dry_bulb, state.dew_point_f, pressure)
    assert by_wet_bulb.relative_humidity == pytest.approx(humidity, abs=0.2)
    assert by_dew_point.relative_humidity == pytest.approx(humidity, abs=0.2)
    assert state.dew_point_f <= state.wet_bulb_f + 0.05 <= dry_bulb + 0.1


@given(dry_bulbs, st.floats(min_value=5, max_value=95))
def test_wetter_air_holds_more_heat(dry_bulb: float, humidity: float) -> None:
    dry, wet = (moist_air.from_relative_humidity(dry_bulb, humidity + step) for step in (0, 5))
    assert wet.humidity_ratio > dry.humidity_ratio
    assert wet.enthalpy > dry.enthalpy
    assert wet.wet_bulb_f > dry.wet_bulb_f


def test_saturated_air_has_all_temperatures_alike() -> None:
    state = moist_air.from_wet_bulb(60, 60)
    assert state.relative_humidity == pytest.approx(100, abs=0.01)
    assert state.dew_point_f == pytest.approx(60, abs=0.01)


@pytest.mark.parametrize(("dry_bulb", "wet_bulb"), [(80, 81), (80, 40), (300, 70), (80, -50)])
def test_impossible_thermometers_are_refused(dry_bulb: float, wet_bulb: float) -> None:
    with pytest.raises(OutOfRange):
        moist_air.from_wet_bulb(dry_bulb, wet_bulb)


@pytest.mark.parametrize("humidity", [-1, 101])
def test_relative_humidity_lies_from_0_to_100(humidity: float) -> None:
    with pytest.raises(OutOfRange):
        moist_air.from_relative_humidity(75, humidity)


def test_moist_air_ends_at_the_boiling_point() -> None:
    with pytest.raises(OutOfRange, match="boiling"):
        moist_air.from_relative_humidity(230, 100)
    with pytest.raises(OutOfRange, match="boiling"):
        moist_air.from_dew_point(230, 225)
    assert moist_air.from_relative_humidity(230, 10).humidity_ratio > 0


@pytest.mark.parametrize("pressure", [7.9, 16.1])
def test_only_pressures_that_a_site_can_have_are_taken(pressure: float) -> None:
    with pytest.raises(OutOfRange):
        moist_air.from_relative_humidity(75, 50, pressure)


@given(altitudes, altitudes)
def test_the_higher_the_site_the_thinner_the_air(first: float, second: float) -> None:
    low, high = sorted((first, second))
    assert standard_pressure(low) >= standard_pressure(high) - 1e-12
    assert density_ratio(standard_pressure(0)) == pytest.approx(1)


@pytest.mark.parametrize("altitude", [-1501, 15001])
def test_no_rooftop_is_lower_or_higher_than_this(altitude: float) -> None:
    with pytest.raises(OutOfRange):
        standard_pressure(altitude)
