"""Gas flow, orifices, rise, altitude and flue gas: what holds whatever is put in."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.quantities import combustion, gas
from troubleshoot.quantities.ranges import OutOfRange

oxygen = st.floats(min_value=0, max_value=15)
gases = st.sampled_from(sorted(combustion.GASES))


@given(st.floats(min_value=0.25, max_value=10), st.floats(min_value=5, max_value=600))
def test_twice_the_time_is_half_the_gas(dial: float, time: float) -> None:
    assert gas.gas_flow(dial, 2 * time) == pytest.approx(gas.gas_flow(dial, time) / 2)


@given(st.floats(min_value=0.1, max_value=14), st.floats(min_value=0.1, max_value=14))
def test_input_ratio_there_and_back_cancel(first: float, second: float) -> None:
    there = gas.manifold_input_ratio(first, second)
    assert there * gas.manifold_input_ratio(second, first) == pytest.approx(1)
    flows = [gas.orifice_flow(0.09, pressure) for pressure in (first, second)]
    assert flows[1] / flows[0] == pytest.approx(there)


@given(st.floats(min_value=0.02, max_value=0.4))
def test_twice_the_diameter_passes_four_times_the_gas(diameter: float) -> None:
    once = gas.orifice_flow(diameter, 3.5)
    assert gas.orifice_flow(2 * diameter, 3.5) == pytest.approx(4 * once)
    assert gas.orifice_flow(diameter, 3.5, specific_gravity=1.5) < once


@given(st.floats(min_value=-1000, max_value=10000), st.floats(min_value=-1000, max_value=10000))
def test_a_higher_site_never_burns_more(first: float, second: float) -> None:
    low, high = sorted((first, second))
    assert 0 < gas.altitude_derate(high) <= gas.altitude_derate(low) + 1e-12 <= 1 + 1e-12


def test_derating_starts_above_2000_ft_and_ends_where_nothing_is_said() -> None:
    """Source: NFPA 54 / ANSI Z223.1: 4 % for each 1000 ft above sea level, above 2000 ft."""
    assert gas.altitude_derate(2000) == 1
    assert gas.altitude_derate(5000) == pytest.approx(0.80)
    with pytest.raises(OutOfRange):
        gas.altitude_derate(10001)


def test_the_input_due_at_5200_ft_is_a_fifth_less_than_the_plate() -> None:
    """Source: NFPA 54 / ANSI Z223.1: 4 % x 5.2 = 20.8 % off 100,000 Btu/h."""
    assert gas.input_at_altitude(100_000, 5200) == pytest.approx(79_200)
    assert gas.input_at_altitude(100_000, 1900) == 100_000


def test_a_colder_supply_is_no_heating() -> None:
    assert gas.temperature_rise(120, 70) == 50
    with pytest.raises(OutOfRange, match="swapped"):
        gas.temperature_rise(60, 70)


@pytest.mark.parametrize("heating_value", [299, 3501])
def test_a_heating_value_that_no_gas_has_is_refused(heating_value: float) -> None:
    with pytest.raises(OutOfRange):
        gas.gas_input(100, heating_value)


@given(st.floats(min_value=0, max_value=2000), oxygen)
def test_air_free_is_never_below_measured(co: float, o2: float) -> None:
    assert combustion.co_air_free(co, o2) >= co * (1 - 1e-12)
    assert combustion.co_air_free(co, 0) == pytest.approx(co)


@given(gases, oxygen, oxygen)
def test_more_oxygen_is_more_excess_air_and_less_carbon_dioxide(
    fuel: combustion.Gas, first: float, second: float
) -> None:
    low, high = sorted((first, second))
    assert combustion.excess_air(low, fuel) <= combustion.excess_air(high, fuel) + 1e-12
    assert combustion.carbon_dioxide(low, fuel) >= combustion.carbon_dioxide(high, fuel) - 1e-12
    assert combustion.excess_air(0, fuel) == 0


def test_plain_air_is_no_flue_gas() -> None:
    for function in (combustion.excess_air, combustion.carbon_dioxide):
        with pytest.raises(OutOfRange, match="plain air"):
            function(20.8)
    with pytest.raises(OutOfRange, match="plain air"):
        combustion.co_air_free(10, 20.8)


@given(st.floats(min_value=212, max_value=900), oxygen)
def test_a_hotter_stack_and_more_air_lose_more_heat(stack: float, o2: float) -> None:
    here = combustion.combustion_efficiency(stack, 70, o2)
    assert combustion.combustion_efficiency(stack + 50, 70, o2).higher < here.higher
    assert combustion.combustion_efficiency(stack, 70, o2 + 1).higher < here.higher
    assert here.lower > here.higher


def test_cold_flue_gas_without_excess_air_loses_only_its_water_vapour() -> None:
    """Source: methane, lower over higher heating value 0.901 (NIST heats of combustion)."""
    found = combustion.combustion_efficiency(212, 200, 0)
    assert found.lower > 99
    assert found.higher == pytest.approx(0.901 * found.lower, rel=1e-3)


@pytest.mark.parametrize(("stack", "o2"), [(211, 5), (1001, 5), (900, 20.4), (400, 20.6)])
def test_condensing_and_diluted_flue_gas_are_refused(stack: float, o2: float) -> None:
    with pytest.raises(OutOfRange):
        combustion.combustion_efficiency(stack, 70, o2)
