"""Our linear factors against pint, against published tables, and against themselves."""

import subprocess
import sys
from itertools import permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.quantities.pint_bridge import pint_convert
from troubleshoot.quantities.units import (
    STANDARD_ATMOSPHERE_PSIA,
    UNITS,
    UnitMismatch,
    UnknownUnit,
    absolute_pressure,
    convert,
    gauge_pressure,
    same_kind,
    unit,
)

PAIRS_OF_ONE_KIND = [
    (first, second) for first, second in permutations(UNITS, 2) if same_kind(first, second)
]
PAIRS_OF_TWO_KINDS = [
    (first, second) for first, second in permutations(UNITS, 2) if not same_kind(first, second)
]
ordinary_values = st.floats(min_value=-1e6, max_value=1e6, allow_nan=False)


@pytest.mark.parametrize(("first", "second"), PAIRS_OF_ONE_KIND)
@pytest.mark.parametrize("value", [-40.0, 0.0, 1.0, 118.0])
def test_our_factors_agree_with_pint(value: float, first: str, second: str) -> None:
    expected = pint_convert(value, first, second)
    assert convert(value, first, second) == pytest.approx(expected, rel=1e-8, abs=1e-9)


@pytest.mark.parametrize("unit_id", UNITS)
def test_pint_understands_the_expression_of_every_unit(unit_id: str) -> None:
    assert pint_convert(7.0, unit_id, unit_id) == pytest.approx(7.0)


# NIST SP 811 (2008), Appendix B.8: factors printed to seven digits.
@pytest.mark.parametrize(
    ("value", "given", "wanted", "expected"),
    [
        (1.0, "Btu", "J", 1055.056),
        (1.0, "in-Hg", "kPa", 3.386389),
        (1.0, "psi", "kPa-diff", 6.894757),
        (1.0, "hp", "W", 745.6999),
        (1.0, "Btu/h", "W", 0.2930711),
        (1.0, "lb", "kg", 0.4535924),
        (212.0, "F", "C", 100.0),
        (0.0, "C", "K", 273.15),
        (9.0, "F-diff", "C-diff", 5.0),
        (1.0, "ton", "Btu/h", 12000.0),
        (1.0, "lb/lb", "grains/lb", 7000.0),
    ],
)
def test_a_conversion_gives_the_published_figure(
    value: float, given: str, wanted: str, expected: float
) -> None:
    assert convert(value, given, wanted) == pytest.approx(expected, rel=2e-7)


@pytest.mark.parametrize(("first", "second"), PAIRS_OF_TWO_KINDS[::37])
def test_units_of_two_kinds_do_not_convert(first: str, second: str) -> None:
    with pytest.raises(UnitMismatch, match="cannot become"):
        convert(1.0, first, second)
    with pytest.raises(UnitMismatch):
        pint_convert(1.0, first, second)


@pytest.mark.parametrize(
    ("first", "second"), [("F", "F-diff"), ("psig", "psia"), ("psig", "psi"), ("psia", "psi")]
)
def test_things_of_one_dimension_that_must_not_mix_are_two_kinds(first: str, second: str) -> None:
    assert not same_kind(first, second)


def test_a_mismatch_says_what_to_give_instead() -> None:
    with pytest.raises(UnitMismatch) as refused:
        convert(12.0, "V", "A")
    assert str(refused.value) == (
        "V (voltage) cannot become A (current); give a value in a unit of current."
    )


def test_an_unknown_unit_brings_the_nearest_word() -> None:
    with pytest.raises(UnknownUnit, match="did you mean psig"):
        unit("psigg")


def test_an_unknown_unit_like_none_brings_the_whole_list() -> None:
    with pytest.raises(UnknownUnit, match="use one of: F, C, K"):
        unit("@" * 5000)


@given(st.sampled_from(PAIRS_OF_ONE_KIND), ordinary_values)
def test_there_and_back_again_gives_the_same_value(pair: tuple[str, str], value: float) -> None:
    back = convert(convert(value, *pair), pair[1], pair[0])
    assert back == pytest.approx(value, rel=1e-9, abs=1e-6)


@given(st.sampled_from(sorted(UNITS)), ordinary_values)
def test_a_unit_into_itself_changes_nothing(unit_id: str, value: float) -> None:
    assert convert(value, unit_id, unit_id) == value


def test_the_standard_atmosphere_is_101_325_kilopascal() -> None:
    assert convert(STANDARD_ATMOSPHERE_PSIA, "psia", "kPa") == pytest.approx(101.325, rel=1e-7)


def test_a_gauge_reading_needs_the_pressure_of_the_air() -> None:
    assert absolute_pressure(118.0, atmosphere=12.2) == pytest.approx(130.2)
    assert absolute_pressure(0.0, atmosphere=29.92, absolute_unit="in-Hg") == pytest.approx(29.92)


def test_inches_of_mercury_of_vacuum_lie_below_zero_on_the_gauge() -> None:
    assert absolute_pressure(29.92, 29.92, "in-Hg-vacuum", "in-Hg") == pytest.approx(0.0)


def test_a_gauge_pressure_helper_refuses_what_is_no_gauge_pressure() -> None:
    with pytest.raises(UnitMismatch):
        absolute_pressure(1.0, 14.7, "psi")


@given(ordinary_values, st.floats(min_value=8.0, max_value=15.5))
def test_gauge_and_absolute_are_each_other_s_inverse(gauge: float, atmosphere: float) -> None:
    absolute = absolute_pressure(gauge, atmosphere)
    assert gauge_pressure(absolute, atmosphere) == pytest.approx(gauge, abs=1e-6)


def test_converting_never_loads_pint() -> None:
    program = (
        "import sys; from troubleshoot.quantities import units, pint_bridge; "
        "units.convert(1.0, 'psig', 'kPa-gauge'); sys.exit('pint' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", program], check=False).returncode == 0
