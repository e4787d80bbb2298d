"""Error limits, uncertainty and repeatability, against worked examples of the published rules."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.quantities.instruments import (
    INSTRUMENTS,
    Instrument,
    agree,
    default_instrument,
    reading_limits,
    repeatability,
    repeatability_limit,
    standard_uncertainty,
    uncertainty_as_typed,
)
from troubleshoot.quantities.units import UNITS

readings = st.floats(min_value=-1000, max_value=1000)
instruments = st.sampled_from(list(INSTRUMENTS.values()))


# The convention of meter specifications, +/-(% of reading + counts): worked examples in print.
@pytest.mark.parametrize(
    ("reading", "percent", "counts", "resolution", "error", "low", "high"),
    [
        (100.0, 1, 2, 0.1, 1.2, 98.8, 101.2),
        (2.0, 0.5, 3, 0.001, 0.013, 1.987, 2.013),
        (1.755, 0.5, 1, 0.001, 0.00977, 1.7452, 1.7648),
        (2.0, 0.08, 2, 0.001, 0.0036, 1.9964, 2.0036),
        (79.999, 0.03, 10, 0.001, 0.034, 79.965, 80.033),
    ],
)
def test_the_error_limit_is_percent_of_reading_and_counts(
    reading: float,
    percent: float,
    counts: float,
    resolution: float,
    error: float,
    low: float,
    high: float,
) -> None:
    limits = reading_limits(reading, percent, counts, resolution)
    assert limits.error == pytest.approx(error, rel=0.01)
    assert limits.low == pytest.approx(low, abs=1e-4)
    assert limits.high == pytest.approx(high, abs=1e-4)


# Counts belong to the range in use: 24.5 V at 1 % + 3 counts is 0.545 V off on the 600 V range,
# 0.275 V on the 60 V range (arithmetic from the convention; the mix-up is in print).
@pytest.mark.parametrize(("resolution", "error"), [(0.1, 0.545), (0.01, 0.275)])
def test_counts_are_worth_the_resolution_of_the_range_in_use(
    resolution: float, error: float
) -> None:
    assert reading_limits(24.5, 1, 3, resolution).error == pytest.approx(error, abs=0.001)


def test_a_fixed_part_adds_to_the_error_limit() -> None:
    assert reading_limits(50.0, 0.1, 0, 1.0, fixed=1.3).error == pytest.approx(1.35)


@pytest.mark.parametrize("reading", [math.inf, -math.inf, math.nan])
def test_a_reading_over_range_has_no_error_limit(reading: float) -> None:
    with pytest.raises(ValueError, match="over range"):
        reading_limits(reading, 1, 2, 0.1)


# JCGM 100:2008, 4.3.7: a limit of 1.5 with nothing known between gives u = 1.5 / sqrt(3) = 0.866.
def test_a_specification_limit_is_a_rectangular_distribution() -> None:
    meter = Instrument("any", "V", 1.5, 0)
    assert standard_uncertainty(100.0, meter, 0.1) == pytest.approx(0.866, abs=0.001)


# ISO 5725-6: repeatability limit = 2.8 repeatability standard deviations.
def test_two_readings_may_differ_by_the_repeatability_limit() -> None:
    meter = Instrument("any", "A", 2.0, 5, repeat_percent=3.0, repeat_counts=4.0)
    assert repeatability_limit(100.0, meter, 1.0) == pytest.approx(2.8 * 5.0)


def test_a_second_reading_close_by_bears_the_first_out() -> None:
    meter = INSTRUMENTS["capacitance-meter"]
    assert agree(37.9, 38.1, meter, 0.1)
    assert not agree(37.9, 39.5, meter, 0.1)


def test_only_over_range_agrees_with_over_range() -> None:
    meter = INSTRUMENTS["insulation-tester"]
    assert agree(math.inf, math.inf, meter, 1.0)
    assert not agree(math.inf, 200.0, meter, 1.0)


@given(readings, readings, instruments, st.sampled_from([0.01, 0.1, 1.0]))
def test_agreement_does_not_depend_on_which_reading_came_first(
    first: float, second: float, meter: Instrument, resolution: float
) -> None:
    assert agree(first, second, meter, resolution) == agree(second, first, meter, resolution)
    assert agree(first, first, meter, resolution)


@given(readings, instruments, st.sampled_from([0.01, 0.1, 1.0]))
def test_a_coarser_last_digit_never_makes_a_reading_surer(
    value: float, meter: Instrument, resolution: float
) -> None:
    fine = standard_uncertainty(value, meter, resolution)
    assert 0.0 <= fine <= standard_uncertainty(value, meter, 10.0 * resolution)


# JCGM 100:2008, F.2.2.1: an indication rounded to a step of dx has u = 0.29 dx.
def test_noughts_left_off_are_rounding_and_make_the_meter_no_worse() -> None:
    meter = INSTRUMENTS["manometer"]
    typed, shown = (uncertainty_as_typed(10.0, meter, digit) for digit in (1.0, 0.01))
    assert shown == (standard_uncertainty(10.0, meter, 0.01), 0.0)
    assert typed == (shown.meter, pytest.approx(0.2887, abs=1e-4))


# JCGM 100:2008, 4.2: the mean is the estimate, n - 1 the divisor. Worked by hand.
def test_repeated_readings_give_mean_and_standard_deviation() -> None:
    repeated = repeatability([10.0, 12.0, 14.0])
    assert (repeated.mean, repeated.standard_deviation) == (12.0, 2.0)


@pytest.mark.parametrize("values", [[], [10.0]])
def test_one_reading_shows_nothing_about_repeatability(values: list[float]) -> None:
    with pytest.raises(ValueError, match="two or more"):
        repeatability(values)


@pytest.mark.parametrize("meter", INSTRUMENTS.values(), ids=list(INSTRUMENTS))
def test_every_instrument_has_a_known_unit_a_doubt_and_a_source(meter: Instrument) -> None:
    assert meter.unit in UNITS
    assert standard_uncertainty(100.0, meter, 1.0) > 0.0
    assert meter.source
    assert INSTRUMENTS[meter.id] is meter


@pytest.mark.parametrize(
    ("unit", "expected"),
    [("V", "voltmeter"), ("A", "clamp-ammeter"), ("uF", "capacitance-meter"), ("F", "thermometer")],
)
def test_a_unit_has_its_usual_instrument(unit: str, expected: str) -> None:
    usual = default_instrument(unit)
    assert usual is not None
    assert usual.id == expected


@pytest.mark.parametrize("unit", ["count", "percent", "year"])
def test_what_is_counted_or_measured_many_ways_has_no_usual_instrument(unit: str) -> None:
    assert default_instrument(unit) is None


# California Title 24 (2008), RA3.2.2.2.1: thermometer +/-(0.1 % of reading + 1.3 F).
# California Title 24 (2013), RA3.2.2.2: gauges +/-3.5 psi suction, +/-7.0 psi liquid.
# IEC 61557-2:2019, 6.2: insulation tester within +/-30 % of the measured value.
@pytest.mark.parametrize(
    ("instrument", "reading", "error"),
    [
        ("thermometer", 100.0, 1.4),
        ("clamp-probe", 50.0, 1.35),
        ("low-side-gauge", 118.0, 3.5),
        ("high-side-gauge", 380.0, 7.0),
        ("insulation-tester", 200.0, 60.0),
    ],
)
def test_an_instrument_with_a_source_has_the_published_error(
    instrument: str, reading: float, error: float
) -> None:
    u = standard_uncertainty(reading, INSTRUMENTS[instrument], 1.0)
    assert u * math.sqrt(3.0) == pytest.approx(error)
