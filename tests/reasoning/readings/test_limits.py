"""Limits on numbers: a boundary pair for every kind of bound, and values they are relative to."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.building import base, unit_of
from troubleshoot.knowledge.model import Bound, LimitLine, Outcome, PlateValue, Quantity
from troubleshoot.reasoning.readings.limits import (
    bounds_truth,
    cuts_on,
    deciding_quantities,
    limits_here,
    outcome_at,
)
from troubleshoot.reasoning.readings.values import Value, Values
from troubleshoot.reasoning.unit.places import Place

KNOWLEDGE = base(
    quantities=[Quantity("amps", "A", "amps"), Quantity("volts", "V", "volts")],
    plates=[
        PlateValue("rated", "A", "nameplate", "rated amps"),
        PlateValue("own-amps", "A", "own-record", "usual amps"),
    ],
)
HAIR = 1e-6


def values(x: float | None = None, **plates: float) -> Values:
    from dataclasses import replace

    unit = unit_of(KNOWLEDGE, metering="txv")
    unit = replace(unit, plate={(name.replace("_", "-"), None): v for name, v in plates.items()})
    return Values(KNOWLEDGE, unit, {} if x is None else {("amps", None): Value(x)})


def holds(x: float, rated: float = 40.0, **bound: Any) -> bool | None:
    return bounds_truth((Bound("amps", **bound),), None, values(x, rated=rated))


@pytest.mark.parametrize(
    ("bound", "true", "false"),
    [
        ({"above": 10}, 10 + HAIR, 10),
        ({"at_least": 10}, 10, 10 - HAIR),
        ({"below": 10}, 10 - HAIR, 10),
        ({"at_most": 10}, 10, 10 + HAIR),
        ({"at_least": 5, "at_most": 10}, 5, 5 - HAIR),
        ({"at_least": 5, "at_most": 10}, 10, 10 + HAIR),
        ({"reads": "zero"}, 0, HAIR),
        ({"reads": "open"}, float("inf"), 1e9),
    ],
)
def test_each_bound_includes_or_excludes_its_limit(
    bound: dict[str, Any], true: float, false: float
) -> None:
    assert holds(true, **bound) is True
    assert holds(false, **bound) is False


@pytest.mark.parametrize(
    ("compared_as", "number", "limit"),
    [
        ("value", 12.0, 12.0),
        ("difference", -5.0, 35.0),
        ("percent-difference", -6.0, 37.6),
        ("percent-difference", 6.0, 42.4),
        ("percent-of", 110.0, 44.0),
        ("times", 1.25, 50.0),
    ],
)
def test_each_way_to_lean_on_a_plate_value_has_its_limit_where_it_says(
    compared_as: str, number: float, limit: float
) -> None:
    bound: dict[str, Any] = {"relative_to": "rated", "compared_as": compared_as}
    assert holds(limit, **bound, at_least=number) is True
    assert holds(limit, **bound, at_most=number) is True
    assert holds(limit, **bound, above=number) is False
    assert holds(limit, **bound, below=number) is False
    assert holds(limit + HAIR, **bound, above=number) is True
    assert holds(limit - HAIR, **bound, below=number) is True


@given(st.integers(1, 9_999), st.integers(-30, 30))
def test_a_reading_typed_on_a_percent_limit_is_on_it(tenths: int, percent: int) -> None:
    # 6 % of 40.0 is 2.4, though the machine's own arithmetic makes it a hair more.
    rated = tenths / 10
    typed = float(f"{tenths * (100 + percent) / 1000:.4f}")
    bound: dict[str, Any] = {"relative_to": "rated", "compared_as": "percent-difference"}
    assert holds(typed, rated, **bound, at_least=percent) is True
    assert holds(typed, rated, **bound, above=percent) is False


def test_what_is_not_known_is_neither_true_nor_false() -> None:
    plain = Bound("amps", above=1)
    leaning = Bound("amps", relative_to="rated", compared_as="percent-of", above=100)
    assert bounds_truth((plain,), None, values()) is None
    assert bounds_truth((leaning,), None, values(5)) is None
    assert bounds_truth((leaning,), None, values(5, rated=4)) is True


def test_a_bound_whose_condition_does_not_hold_is_left_out() -> None:
    here = Bound("amps", above=10)
    elsewhere = Bound("volts", above=10, when={"metering": ("fixed-orifice",)})
    assert bounds_truth((here, elsewhere), None, values(11)) is True
    assert bounds_truth((elsewhere,), None, values(11)) is None


def outcome(name: str, *lines: LimitLine) -> Outcome:
    return Outcome(name, limits=lines)


def at(outcomes: list[Outcome], numbers: dict[str, float], known: Values) -> str | None:
    return outcome_at(limits_here(outcomes, None, known), numbers, None, known)


def test_any_one_line_is_enough_and_all_its_bounds_must_hold() -> None:
    both = LimitLine((Bound("amps", above=5), Bound("volts", below=200)))
    alone = LimitLine((Bound("amps", above=100),))
    outcomes = [outcome("bad", both, alone)]
    assert at(outcomes, {"amps": 6, "volts": 190}, values()) == "bad"
    assert at(outcomes, {"amps": 6, "volts": 210}, values()) is None
    assert at(outcomes, {"amps": 6}, values()) is None
    assert at(outcomes, {"amps": 101}, values()) == "bad"


@pytest.mark.parametrize(("word", "expected"), [("known", True), ("not-known", False)])
def test_a_line_may_ask_whether_a_plate_value_is_known(word: str, expected: bool) -> None:
    line = LimitLine((Bound("amps", above=5),), when={"own-amps": (word,)})
    outcomes = [outcome("bad", line)]
    kept, bare = values(own_amps=4), values()
    assert (at(outcomes, {"amps": 6}, kept) == "bad") is expected
    assert (at(outcomes, {"amps": 6}, bare) == "bad") is not expected
    assert deciding_quantities(limits_here(outcomes, None, kept)) == (("amps",) if expected else ())


def test_the_first_outcome_that_holds_is_the_one() -> None:
    outcomes = [
        outcome("low", LimitLine((Bound("amps", below=5),))),
        outcome("any", LimitLine((Bound("amps", below=50),))),
    ]
    assert at(outcomes, {"amps": 4}, values()) == "low"
    assert at(outcomes, {"amps": 6}, values()) == "any"


def test_cuts_are_the_limits_in_the_quantity_s_own_unit() -> None:
    line = LimitLine(
        (
            Bound("amps", relative_to="rated", compared_as="percent-of", at_least=50, below=110),
            Bound("volts", above=3),
        )
    )
    assert list(cuts_on([outcome("x", line)], "amps", None, values(rated=20))) == [10, 22]


def test_a_plate_value_kept_by_place_serves_the_limits_of_that_place() -> None:
    from dataclasses import replace

    know = base(
        quantities=[Quantity("amps", "A", "amps", per="compressor")],
        plates=[PlateValue("rated", "A", "nameplate", "rated", per="compressor")],
    )
    one, two = Place("compressor", 1), Place("compressor", 2)
    unit = replace(unit_of(know, circuits=2), plate={("rated", one): 10.0, ("rated", two): 20.0})
    known = Values(know, unit, {("amps", one): Value(15), ("amps", two): Value(15)})
    bound = Bound("amps", relative_to="rated", compared_as="percent-of", above=100)
    assert bounds_truth((bound,), one, known) is True
    assert bounds_truth((bound,), two, known) is False
    # Seen from the circuit, the compressor's value is that of the circuit's own compressor.
    assert bounds_truth((bound,), Place("circuit", 1), known) is True
