"""Whole numbers that a person types: plain digits, and few of them."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.outside.numbers import choice, whole_number


@given(st.text(st.characters(categories=["Nd", "No", "Nl", "Po", "Zs"]), max_size=12))
def test_whatever_is_typed_is_a_plain_number_or_none(typed: str) -> None:
    number = whole_number(typed)
    plain = typed.isascii() and typed.isdigit() and len(typed) <= 9
    assert number == (int(typed) if plain else None)


@pytest.mark.parametrize("typed", ["²", "１", "٣", "1" * 4301, "", " 1", "+1", "-1", "1_0", "1\n"])
def test_what_python_might_count_is_no_number(typed: str) -> None:
    assert whole_number(typed) is None


@given(st.integers(0, 30), st.integers(0, 20))
def test_a_choice_is_one_of_those_offered(number: int, most: int) -> None:
    assert choice(str(number), most) == (number if 1 <= number <= most else None)
