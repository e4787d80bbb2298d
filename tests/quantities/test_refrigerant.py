"""Superheat, subcooling, targets and leaks: what holds whatever is put in."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.quantities import refrigerant
from troubleshoot.quantities.ranges import OutOfRange
from troubleshoot.quantities.saturation import REFRIGERANTS

gauge = st.floats(min_value=30, max_value=300)
fluids = st.sampled_from(REFRIGERANTS)


@given(fluids, gauge, st.floats(min_value=-20, max_value=150))
def test_a_warmer_line_has_that_much_more_superheat_and_less_subcooling(
    fluid: str, pressure: float, line: float
) -> None:
    cold, warm = (refrigerant.superheat(fluid, pressure, line + step) for step in (0, 5))
    assert warm.difference_f - cold.difference_f == pytest.approx(5)
    cold, warm = (refrigerant.subcooling(fluid, pressure, line + step) for step in (0, 5))
    assert cold.difference_f - warm.difference_f == pytest.approx(5)


@given(fluids, gauge)
def test_superheat_uses_the_dew_point_which_is_never_below_the_bubble_point(
    fluid: str, pressure: float
) -> None:
    dew = refrigerant.superheat(fluid, pressure, 60).saturation_f
    bubble = refrigerant.subcooling(fluid, pressure, 60).saturation_f
    assert dew >= bubble - 1e-9


@given(fluids, gauge)
def test_the_same_gauge_reading_on_a_mountain_is_a_colder_saturation(
    fluid: str, pressure: float
) -> None:
    low = refrigerant.superheat(fluid, pressure, 60)
    high = refrigerant.superheat(fluid, pressure, 60, atmosphere_psia=12.228)
    assert high.saturation_f < low.saturation_f
    assert high.difference_f > low.difference_f


def test_condensing_over_ambient_is_the_bubble_point_less_the_air() -> None:
    found = refrigerant.condensing_over_ambient("R-407C", 250, 95)
    assert found.saturation_f == refrigerant.subcooling("R-407C", 250, 95).saturation_f
    assert found.difference_f == pytest.approx(found.saturation_f - 95)


def test_a_ratio_of_swapped_hoses_or_below_vacuum_is_refused() -> None:
    with pytest.raises(OutOfRange, match="swapped"):
        refrigerant.compression_ratio(300, 100)
    with pytest.raises(OutOfRange):
        refrigerant.compression_ratio(-15, 100)


@given(st.floats(min_value=-10, max_value=200))
def test_equal_pressures_have_a_ratio_of_one(pressure: float) -> None:
    assert refrigerant.compression_ratio(pressure, pressure) == 1


@pytest.mark.parametrize(("wet_bulb", "outdoor"), [(60, 54), (50, 75), (62, 97), (90, 95)])
def test_where_charge_cannot_be_judged_there_is_no_target(wet_bulb: float, outdoor: float) -> None:
    with pytest.raises(OutOfRange):
        refrigerant.target_superheat(wet_bulb, outdoor)


def test_the_charging_table_runs_straight_between_its_entries_both_ways() -> None:
    """Source: makers' installation manuals for fixed-orifice systems, rows for 70 and 75 F."""
    assert refrigerant.table_target_superheat(60, 70) == 16
    assert refrigerant.table_target_superheat(60, 75) == 12
    assert refrigerant.table_target_superheat(60, 72.5) == 14
    assert refrigerant.table_target_superheat(61, 70) == 17.5
    assert refrigerant.table_target_superheat(61, 72.5) == pytest.approx(15.5)


@pytest.mark.parametrize(
    ("wet_bulb", "outdoor"), [(50, 65), (51, 65), (60, 86), (49, 60), (77, 80), (70, 111), (70, 54)]
)
def test_beside_a_dash_and_outside_the_table_there_is_no_target(
    wet_bulb: float, outdoor: float
) -> None:
    with pytest.raises(OutOfRange):
        refrigerant.table_target_superheat(wet_bulb, outdoor)


def test_the_corners_of_the_charging_table_can_be_read() -> None:
    assert refrigerant.table_target_superheat(50, 55) == 9
    assert refrigerant.table_target_superheat(76, 110) > 0


@given(st.floats(min_value=50, max_value=76), st.floats(min_value=55, max_value=110))
def test_shortcut_and_table_stay_as_close_as_is_said(wet_bulb: float, outdoor: float) -> None:
    try:
        by_table = refrigerant.table_target_superheat(wet_bulb, outdoor)
    except OutOfRange:
        return
    assert -6 - 1e-9 <= refrigerant.target_superheat(wet_bulb, outdoor) - by_table <= 3 + 1e-9


@given(
    st.floats(min_value=0, max_value=50),
    st.floats(min_value=1, max_value=100),
    st.floats(min_value=1, max_value=365),
)
def test_a_leak_over_half_the_days_is_twice_the_rate(
    added: float, charge: float, days: float
) -> None:
    rate = refrigerant.leak_rate(added, charge, days)
    assert refrigerant.leak_rate(added, charge, days / 2) == pytest.approx(2 * rate)


def test_more_than_a_year_counts_as_a_year() -> None:
    """Source: 40 CFR 82.152, annualizing method."""
    assert refrigerant.leak_rate(3, 30, 700) == pytest.approx(10)
    with pytest.raises(OutOfRange):
        refrigerant.leak_rate(3, 30, 0)
