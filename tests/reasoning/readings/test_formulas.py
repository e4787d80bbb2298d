"""Formulas that rule files may name: they answer with a number or with nothing, never an error."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.quantities.expected import Conditions, expected_ends
from troubleshoot.reasoning.readings.formulas import FORMULAS, compute

TAKES_REFRIGERANT = {"dew-temperature", "bubble-temperature", "dew-pressure", "bubble-pressure"}
OF_ITS_LIKE = {
    "evaporating-least", "evaporating-most",
    "condensing-over-ambient-least", "condensing-over-ambient-most",
}  # fmt: skip
WORDS = dict.fromkeys(TAKES_REFRIGERANT, ("R-410A",)) | dict.fromkeys(
    OF_ITS_LIKE, ("R-410A", "txv")
)
NUMBERS = {
    **dict.fromkeys(TAKES_REFRIGERANT, 1), **dict.fromkeys(OF_ITS_LIKE, 4),
    "copy": 1, "target-superheat": 2, "outdoor-air-fraction": 3, "compression-ratio": 2,
    "difference": 2, "absolute-difference": 2, "ratio": 2, "percent-difference": 2,
    "capacitance-under-load": 2, "gas-flow": 2, "gas-input": 2,
    "input-at-altitude": 2, "co-air-free": 2,
    "airflow-per-ton": 2, "sum": 3, "average": 2, "mixed-air-temperature": 3, "meter-time": 3,
    "target-split": 2,
}  # fmt: skip
ANY = st.floats(allow_nan=True, allow_infinity=True) | st.floats(-1000, 1000)


@pytest.mark.parametrize("name", sorted(FORMULAS))
@given(data=st.data())
def test_no_number_makes_a_formula_fail(name: str, data: st.DataObject) -> None:
    numbers = data.draw(st.tuples(*([ANY] * NUMBERS[name])))
    value = compute(name, (*WORDS.get(name, ()), *numbers))
    assert value is None or math.isfinite(value)


@pytest.mark.parametrize("name", sorted(OF_ITS_LIKE))
def test_what_its_like_shows_is_that_of_the_table(name: str) -> None:
    """The ends of `calc expected` before rounding; a wet bulb of other air says nothing."""
    column, _, end = name.rpartition("-")
    ends = expected_ends(Conditions("R-410A", "txv", 95.0, 80.0, 67.0))
    known = compute(name, ("R-410A", "txv", 95.0, 80.0, 80.0, 67.0))
    assert known == ends[column][end == "most"]
    without = compute(name, ("R-410A", "txv", 95.0, 80.0))
    assert compute(name, ("R-410A", "txv", 95.0, 80.0, 78.0, 67.0)) == without
    assert compute(name, ("R-404A", "txv", 95.0, 80.0)) is None


@pytest.mark.parametrize("name", sorted(TAKES_REFRIGERANT))
def test_a_refrigerant_without_a_table_gives_nothing(name: str) -> None:
    assert compute(name, ("R-none", 100.0)) is None


@pytest.mark.parametrize(
    ("name", "inputs", "expected"),
    [
        ("difference", (54.0, 45.5), 8.5),
        ("absolute-difference", (45.5, 54.0), 8.5),
        ("percent-difference", (37.6, 40.0), -6.0),
        ("ratio", (9.0, 3.0), 3.0),
        ("copy", (5.0,), 5.0),
        ("sum", (), 0.0),
        ("sum", (5.0, 2.5), 7.5),
        ("average", (30.0, 60.0), 45.0),
        ("meter-time", (2.0, 1030.0, 120000.0), 61.8),
        ("mixed-air-temperature", (75.0, 95.0, 20.0), 79.0),
        ("airflow-per-ton", (2000.0, 5.0), 400.0),
        ("outdoor-air-fraction", (75.0, 80.0, 95.0), 25.0),
    ],
)
def test_plain_formulas_are_plain_arithmetic(
    name: str, inputs: tuple[float, ...], expected: float
) -> None:
    assert compute(name, inputs) == pytest.approx(expected)


def test_what_overflows_gives_nothing() -> None:
    assert compute("outdoor-air-fraction", (0.0, 1.0, 2.2e-308)) is None
    assert compute("ratio", (1e308, 1e-308)) is None


def test_dividing_by_nothing_gives_nothing() -> None:
    assert compute("ratio", (1.0, 0.0)) is None
    assert compute("percent-difference", (1.0, 0.0)) is None


@given(st.floats(20, 130))
def test_dew_temperature_and_dew_pressure_are_inverse(fahrenheit: float) -> None:
    psig = compute("dew-pressure", ("R-410A", fahrenheit))
    assert psig is not None
    assert compute("dew-temperature", ("R-410A", psig)) == pytest.approx(fahrenheit, abs=0.05)
