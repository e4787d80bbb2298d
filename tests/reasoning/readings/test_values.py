"""Known numbers: where a value holds, plate values, derived quantities and their uncertainty."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.building import base, unit_of
from troubleshoot.knowledge.model import Derivation, PlateValue, Quantity
from troubleshoot.reasoning.readings.values import Value, Values
from troubleshoot.reasoning.unit.places import Place

KNOWLEDGE = base(
    quantities=[
        Quantity("outdoor", "F", "outdoor temperature"),
        Quantity("line", "F", "line temperature", per="circuit"),
        Quantity("approach", "F-diff", "line over outdoor", per="circuit",
                 computed=(Derivation("difference", ("line", "outdoor")),)),
        Quantity("twice", "F-diff", "approach by another name", per="circuit",
                 computed=(Derivation("copy", ("approach",)),)),
        Quantity("evaporating", "F", "dew point", per="circuit",
                 computed=(Derivation("dew-temperature", ("refrigerant", "suction")),)),
        Quantity("suction", "psig", "low side", per="circuit"),
        Quantity("amps", "A", "amps", per="compressor"),
        Quantity("ring", "A", "in a ring", computed=(Derivation("copy", ("ring-2",)),)),
        Quantity("ring-2", "A", "in a ring", computed=(Derivation("copy", ("ring",)),)),
    ],
    plates=[PlateValue("rated", "A", "nameplate", "rated amps", per="compressor")],
)  # fmt: skip
UNIT = unit_of(KNOWLEDGE, circuits=2)
ONE, TWO = Place("circuit", 1), Place("circuit", 2)


def known(typed: dict[tuple[str, Place | None], Value], **plate: float) -> Values:
    return Values(KNOWLEDGE, replace(UNIT, plate={(n, None): v for n, v in plate.items()}), typed)


def test_a_value_of_the_unit_serves_every_circuit_and_one_of_a_circuit_its_own() -> None:
    values = known({("outdoor", None): Value(95), ("line", ONE): Value(105)})
    assert values.get("outdoor", TWO) == Value(95)
    assert values.get("line", ONE) == Value(105)
    assert values.get("line", TWO) is None
    assert values.get("line", None) is None


def test_what_is_on_one_line_is_seen_from_all_of_it() -> None:
    values = known({("amps", Place("compressor", 2)): Value(9)})
    for kind in ("circuit", "compressor", "contactor"):
        assert values.get("amps", Place(kind, 2)) == Value(9)
        assert values.get("amps", Place(kind, 1)) is None


def test_with_one_of_a_kind_no_place_is_needed() -> None:
    single = unit_of(KNOWLEDGE, circuits="one")
    values = Values(KNOWLEDGE, single, {("line", ONE): Value(105)})
    assert values.get("line", None) == Value(105)


def test_a_derived_quantity_is_that_of_its_place() -> None:
    typed = {("outdoor", None): Value(95), ("line", ONE): Value(105), ("line", TWO): Value(120)}
    values = known(typed)
    assert [values.get("twice", place).number for place in (ONE, TWO)] == [10, 25]  # type: ignore[union-attr]


def test_a_typed_value_wins_over_a_derived_one() -> None:
    typed = {("outdoor", None): Value(95), ("line", ONE): Value(105), ("approach", ONE): Value(7)}
    assert known(typed).get("twice", ONE) == Value(7, typed=False)


def test_each_compressor_has_its_own_plate_value() -> None:
    plate: dict[tuple[str, Place | None], float] = {
        ("rated", Place("compressor", n)): float(10 * n) for n in (1, 2)
    }
    values = Values(KNOWLEDGE, replace(UNIT, plate=plate), {})
    for n in (1, 2):
        for kind in ("compressor", "circuit"):
            assert values.get("rated", Place(kind, n)) == Value(10.0 * n, typed=False)


def test_quantities_defined_by_each_other_are_simply_not_known() -> None:
    assert known({}).get("ring", None) is None


def test_an_unknown_refrigerant_or_one_without_a_table_derives_nothing() -> None:
    assert known({("suction", ONE): Value(118.0)}).get("evaporating", ONE) is None


@given(st.floats(-200, 200), st.floats(-200, 200), st.floats(0, 5), st.floats(0, 5))
def test_uncertainties_of_a_difference_add_in_squares(
    line: float, outdoor: float, u_line: float, u_outdoor: float
) -> None:
    # JCGM 100, 5.1.2, for a difference of independent inputs.
    typed = {("line", ONE): Value(line, u_line), ("outdoor", None): Value(outdoor, u_outdoor)}
    found = known(typed).get("approach", ONE)
    assert found is not None
    assert found.number == line - outdoor
    assert found.u == pytest.approx(math.hypot(u_line, u_outdoor), abs=1e-9)


def test_what_rests_on_several_legs_is_judged_hard() -> None:
    typed = {("line", ONE): Value(105, 1, soft=False), ("outdoor", None): Value(95, 1)}
    found = known(typed).get("approach", ONE)
    assert found is not None and not found.soft and not found.typed


def test_more_typed_values_leave_the_first_as_they_were() -> None:
    first = known({("outdoor", None): Value(95), ("line", ONE): Value(105)})
    assert first.get("approach", ONE) == Value(10, typed=False)
    second = first.with_typed({("outdoor", None): Value(85)})
    assert second.get("approach", ONE) == Value(20, typed=False)
    assert first.get("approach", ONE) == Value(10, typed=False)
