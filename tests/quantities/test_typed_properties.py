"""Whatever is typed, the reader answers with finite numbers or refuses; what it shows it reads."""

import math
from decimal import Decimal

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from troubleshoot.quantities.typed import Expected, NotUnderstood, Typed, read
from troubleshoot.quantities.units import UNITS

EXPECTED = st.builds(
    Expected,
    st.sampled_from(sorted(UNITS)),
    legs=st.booleans(),
    names=st.sampled_from([(), ("L1", "L2", "L3"), ("C-R", "C-S", "R-S"), ("A", "B", "C")]),
) | st.builds(
    Expected,
    st.sampled_from(["ohm", "kohm", "Mohm", "uF"]),
    allow_over_range=st.just(True),
    legs=st.booleans(),
)

# Text made of the pieces that answers are made of goes deeper into the grammar than any text.
MARKS = st.sampled_from(list("0123456789e.,/-+±<>=:;#%'\" ½²∞\x00"))
NAMES = st.sampled_from(["L1 ", "C-R ", "c to r ", "A=", "OL", "open", "over", "more than "])
SPELLINGS = st.sampled_from(["A", "psig", "mohm", "Meg", "in", "wc", "lb", "oz", "ft", "F", "µF"])
BLANKED = st.sampled_from([" / ", ", ", " ± ", " 12", " 1/2 "])
ANY_TEXT = st.text() | st.lists(MARKS | NAMES | SPELLINGS | BLANKED, max_size=20).map("".join)


def understood(text: str, expected: Expected) -> Typed | None:
    try:
        return read(text, expected)
    except NotUnderstood:
        return None


@given(ANY_TEXT, EXPECTED)
@example("9" * 100_000, Expected("V"))
@example("Cto R 5 r\u017f 6 \u212a 7", Expected("ohm", legs=True, names=("C-R", "R-S", "k")))
@example("1/" * 50, Expected("in", legs=True))
@example("L1 " * 33, Expected("A", legs=True, names=("L1",)))
def test_any_text_is_read_or_refused_and_never_breaks(text: str, expected: Expected) -> None:
    typed = understood(text, expected)
    for leg in typed.values if typed else ():
        assert leg.unit == expected.unit
        assert leg.over_range == math.isinf(leg.value)
        assert not math.isnan(leg.value)
        assert leg.over_range or (0.0 < leg.resolution < math.inf)
        assert expected.allow_over_range or not leg.over_range
        assert leg.name is None or leg.name in expected.names
    assert typed is None or expected.legs or len(typed.values) == 1


@given(ANY_TEXT, EXPECTED)
def test_a_refusal_is_one_printable_sentence(text: str, expected: Expected) -> None:
    try:
        read(text, expected)
    except NotUnderstood as refused:
        assert str(refused).endswith(".")
        assert str(refused).isprintable()
        assert len(str(refused)) < 500
    else:
        assert text.strip()


@given(
    st.decimals(min_value=-99999, max_value=99999, places=3),
    st.sampled_from(sorted(UNITS)),
    st.booleans(),
)
def test_a_value_shown_with_its_unit_is_read_back(
    value: Decimal, unit: str, as_spoken: bool
) -> None:
    written = UNITS[unit].spoken if as_spoken else unit
    if UNITS[unit].factor < 0:
        value = abs(value)  # a vacuum is counted downward already
    (leg,) = read(f"{value:f} {written}", Expected(unit)).values
    assert leg.value == float(value)
    assert leg.resolution == pytest.approx(0.001)
    assert leg.unit == unit


@given(
    st.decimals(min_value=-99999, max_value=Decimal("-0.001"), places=3),
    st.sampled_from(sorted(u for u in UNITS if UNITS[u].factor < 0)),
)
def test_a_vacuum_below_zero_is_asked_about(value: Decimal, unit: str) -> None:
    """Regression: -10 inHg of vacuum was taken for a pressure."""
    with pytest.raises(NotUnderstood, match="twice"):
        read(f"{value:f} {unit}", Expected(unit))


@given(st.lists(st.integers(min_value=0, max_value=999), min_size=3, max_size=6))
def test_legs_written_with_slashes_are_read_back(legs: list[int]) -> None:
    typed = read("/".join(map(str, legs)), Expected("V", legs=True))
    assert [leg.value for leg in typed.values] == legs


@given(st.integers(min_value=1000, max_value=10**12))
def test_thousands_with_commas_read_like_the_plain_number(value: int) -> None:
    (leg,) = read(f"{value:,} ohm", Expected("ohm")).values
    assert leg.value == value


@given(st.integers(min_value=0, max_value=9999), st.integers(min_value=0, max_value=99))
def test_a_comma_before_one_or_two_digits_is_never_a_number(whole: int, part: int) -> None:
    assert understood(f"{whole},{part}", Expected("A")) is None


@given(st.floats(), st.sampled_from(["mohm", "MOHM", "mF", "MF", "m"]))
def test_a_prefix_with_two_meanings_is_never_a_number(value: float, spelling: str) -> None:
    assert understood(f"{value} {spelling}", Expected("Mohm")) is None
    assert understood(f"{value} {spelling}", Expected("uF")) is None


@given(st.integers(min_value=1, max_value=999), st.sampled_from(sorted(UNITS)))
def test_a_unit_of_another_kind_is_never_a_number(value: int, unit: str) -> None:
    other = "V" if UNITS[unit].kind != "voltage" else "A"
    assert understood(f"{value} {unit}", Expected(other)) is None
