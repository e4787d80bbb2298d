"""Numbers as people say them read back as the number that was meant, or not at all."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from troubleshoot.quantities.spoken_numbers import in_figures

ONES = [
    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
    "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen",
    "nineteen",
]  # fmt: skip
TENS = [
    "-", "-", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety",
]  # fmt: skip


def below_100(number: int) -> str:
    if number < 20:
        return ONES[number]
    return TENS[number // 10] + (f" {ONES[number % 10]}" if number % 10 else "")


def ways(number: int) -> Iterator[str]:
    """Every way in which people say a whole number up to 9999."""
    thousands, hundreds, rest = number // 1000, number // 100 % 10, number % 100
    if number < 100:
        yield below_100(number)
        return
    full = [f"{ONES[thousands]} thousand"] * bool(thousands)
    full += [f"{ONES[hundreds]} hundred"] * bool(hundreds)
    end = [below_100(rest)] * bool(rest)
    yield " ".join((*full, *end))
    if end:
        yield " ".join((*full, "and", *end))
    many = number // 100
    if many % 10 or many < 10:
        yield " ".join((below_100(many), "hundred", *end))
        if rest >= 10:
            yield f"{below_100(many)} {below_100(rest)}"
        elif rest:
            yield f"{below_100(many)} oh {ONES[rest]}"
    for nought in ("oh", "zero"):
        figures = (nought if figure == "0" else ONES[int(figure)] for figure in str(number))
        yield " ".join(figures)


def with_decimal(whole: str, decimal: int) -> Iterator[str]:
    yield f"{whole} point {ONES[decimal]}"
    if decimal == 0:
        yield f"{whole} point oh"
    if decimal == 5:
        yield f"{whole} and a half"


@given(st.integers(0, 9999), st.integers(0, 9), st.data())
@example(120, 0, None)
@example(2100, 5, None)
def test_every_number_reads_back_in_each_way_it_is_said(
    number: int, decimal: int, data: st.DataObject | None
) -> None:
    for whole in ways(number):
        assert float(in_figures(whole)) == number, whole
        assert float(in_figures(whole.replace(" ", "-"))) == number, whole
        for said in with_decimal(whole, decimal):
            assert float(in_figures(said)) == pytest.approx(number + decimal / 10), said
            assert float(in_figures(f"minus {said}")) == pytest.approx(-number - decimal / 10)


@pytest.mark.parametrize(
    ("said", "read"),
    [
        ("one twenty eight psi", "128 psi"),
        ("one twenty", "120"),
        ("nineteen point two volts", "19.2 volts"),
        ("twelve and a half", "12.5"),
        ("three and three quarters", "3.75"),
        ("a half inch", "0.5 inch"),
        ("point oh five", "0.05"),
        ("oh point eight", "0.8"),
        ("eleven point twenty five", "11.25"),
        ("19 point 2", "19.2"),
        ("12 and a half", "12.5"),
        ("a hundred and five", "105"),
        ("suction one twenty eight and head three forty", "suction 128 and head 340"),
        ("circuit two head three forty", "circuit 2 head 340"),
        ("One Twenty-Eight over Three Forty", "128 over 340"),
        ("seventy-eight and fifty eight", "78 and 58"),
        ("negative seven", "-7"),
    ],
)
def test_the_rest_of_a_sentence_stays_as_it_is(said: str, read: str) -> None:
    assert in_figures(said) == read


@pytest.mark.parametrize(
    "said",
    ["one five", "ten five", "nineteen two", "oh", "and a", "hundred", "point", "128", "19.2 V",
     "c2 340", "L1 208", "half-open one's", "twenty hundred thousand", "five thousand thousand",
     "five oh", "two two", "half a zero"],
)  # fmt: skip
def test_what_may_be_two_numbers_or_is_none_is_left_as_typed(said: str) -> None:
    assert in_figures(said) == said


@example(["half", "a", "zero"])
@given(st.lists(st.sampled_from([*ONES, *TENS[2:], "and", "a", "half", "point", "hundred", "psi"])))
def test_what_is_read_once_is_read(words: list[str]) -> None:
    written = in_figures(" ".join(words))
    assert in_figures(written) == written or " point " in written or " and " in written
