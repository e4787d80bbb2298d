"""Several values in one answer: legs, pairs and sections, with names and without."""

import math

import pytest

from troubleshoot.quantities.typed import Expected, read

PHASES = ("L1", "L2", "L3")
LOAD_SIDE = ("T1", "T2", "T3")
PAIRS = ("AB", "BC", "CA")
TERMINALS = ("C-R", "C-S", "R-S")


def values(text: str, unit: str) -> list[float]:
    return [leg.value for leg in read(text, Expected(unit, legs=True)).values]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("208/209/207", [208.0, 209.0, 207.0]),
        ("479 / 481 / 480 V", [479.0, 481.0, 480.0]),
        ("479 V/481 V/480 V", [479.0, 481.0, 480.0]),
        ("0.3/0.3/416 V", [0.3, 0.3, 416.0]),
        ("208, 209, 207", [208.0, 209.0, 207.0]),
        ("208; 209; 207 volts", [208.0, 209.0, 207.0]),
        ("12/24", [12.0, 24.0]),
        ("1 1/2, 2 1/2", [1.5, 2.5]),
        ("480", [480.0]),
        ("480 V / 481 / 479", [480.0, 481.0, 479.0]),
        ("500 mV / 600 / 700 mV", [0.5, 0.6, 0.7]),
        ("1 / 2", [1.0, 2.0]),
        ("5,000 / 5,100", [5000.0, 5100.0]),
        ("481, 479 and 480", [481.0, 479.0, 480.0]),
        ("481 and 479 V", [481.0, 479.0]),
        ("13.1 13.3 13.0", [13.1, 13.3, 13.0]),
        ("208 209 207 V", [208.0, 209.0, 207.0]),
        (".08 .09 .08", [0.08, 0.09, 0.08]),
    ],
)
def test_several_legs_are_read_in_the_order_typed(text: str, expected: list[float]) -> None:
    assert values(text, "V") == pytest.approx(expected)


@pytest.mark.parametrize(
    ("text", "names", "unit", "expected"),
    [
        ("L1 6.7, L2 6.6, L3 6.8 A", PHASES, "A", {"L1": 6.7, "L2": 6.6, "L3": 6.8}),
        ("l1: 6.7 l2: 6.6 l3: 6.8", PHASES, "A", {"L1": 6.7, "L2": 6.6, "L3": 6.8}),
        ("L1=6.7 A / L2=6.6 A", PHASES, "A", {"L1": 6.7, "L2": 6.6}),
        ("T1 13.1, T2 13.3 and T3 13.0", LOAD_SIDE, "A", {"T1": 13.1, "T2": 13.3, "T3": 13.0}),
        ("AB 208 BC 209 CA 207", PAIRS, "V", {"AB": 208.0, "BC": 209.0, "CA": 207.0}),
        ("a-b 208; c-b 209; a to c 207", PAIRS, "V", {"AB": 208.0, "BC": 209.0, "CA": 207.0}),
        ("C-R 1.2, C-S 2.3, R-S 3.5 ohm", TERMINALS, "ohm", {"C-R": 1.2, "C-S": 2.3, "R-S": 3.5}),
        ("C TO R 1.2 c-to s 2.3", TERMINALS, "ohm", {"C-R": 1.2, "C-S": 2.3}),
        ("l1-l2 480, L1 277", ("L1", "L1-L2"), "V", {"L1-L2": 480.0, "L1": 277.0}),
        ("L2-L1 480", ("L1-L2", "L2-L1"), "V", {"L2-L1": 480.0}),
        ("S-C 2.3 CR 1.2", TERMINALS, "ohm", {"C-S": 2.3, "C-R": 1.2}),
        (
            "condenser fan 4.8, compressor 44",
            ("condenser fan", "compressor"),
            "uF",
            {"condenser fan": 4.8, "compressor": 44.0},
        ),
        ("A 6.7 A, B 6.6 A", ("A", "B", "C"), "A", {"A": 6.7, "B": 6.6}),
    ],
)
def test_named_legs_are_read_under_the_name_allowed(
    text: str, names: tuple[str, ...], unit: str, expected: dict[str, float]
) -> None:
    typed = read(text, Expected(unit, legs=True, names=names))
    assert {leg.name: leg.value for leg in typed.values} == expected


def test_a_single_value_may_carry_its_name() -> None:
    (leg,) = read("suction 118", Expected("psig", names=("suction",))).values
    assert (leg.name, leg.value) == ("suction", 118.0)


def test_the_unit_at_the_end_serves_all_legs() -> None:
    typed = read("479 / 481 / 480 mV", Expected("V", legs=True))
    assert [leg.typed_unit for leg in typed.values] == ["mV"] * 3


def test_one_leg_over_range_leaves_the_others_their_values() -> None:
    typed = read("2.3/OL/2.4 ohm", Expected("ohm", allow_over_range=True, legs=True))
    assert [leg.over_range for leg in typed.values] == [False, True, False]
    assert [leg.value for leg in typed.values] == [2.3, math.inf, 2.4]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("1/2", [0.5]),
        ("1 1/2", [1.5]),
        ("3/8 in", [0.375]),
        ("1/2 / 3/4", [0.5, 0.75]),
        ("\u00bd/\u00be in", [0.5, 0.75]),
        ("1/2/3", [1.0, 2.0, 3.0]),
        ("12/24", [12.0, 24.0]),
    ],
)
def test_a_slash_in_inches_is_a_fraction_where_a_ruler_has_it(
    text: str, expected: list[float]
) -> None:
    assert values(text, "in") == expected
