"""JSON and plain data from outside: bounded in depth, in number and in length."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.outside.plain_data import MOST_DEPTH, MOST_ENTRIES, check_plain, from_json
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import MOST_TYPED


@pytest.mark.parametrize("levels", [MOST_DEPTH + 1, 900, 100_000])
@pytest.mark.parametrize(("opening", "closing"), [("[", "]"), ('{"a":', "}")])
def test_what_is_too_deep_is_refused(levels: int, opening: str, closing: str) -> None:
    for text in (opening * levels + "1" + closing * levels, opening * levels):
        with pytest.raises(NotUsable):
            from_json(text, "file")


def test_a_number_of_thousands_of_digits_is_refused_in_our_words() -> None:
    """Python's own words told a mechanic to set sys.set_int_max_str_digits()."""
    with pytest.raises(NotUsable, match="more digits than any meter shows"):
        from_json("[" + "1" * 6_000 + "]", "file")


def test_the_deepest_that_is_taken() -> None:
    data = from_json("[" * MOST_DEPTH + "]" * MOST_DEPTH, "file")
    for _ in range(MOST_DEPTH - 1):
        assert isinstance(data, list)
        (data,) = data
    assert data == []


@given(st.text(max_size=20) | st.binary(max_size=20))
def test_any_text_is_data_or_refused(text: str | bytes) -> None:
    try:
        check_plain(from_json(text, "file"), "file")
    except NotUsable as error:
        assert error.where and error.what and error.instead


@pytest.mark.parametrize("text", ["1" * 5000, "NaN" * 2, '"\\ud800"', "\ufeff{}", "{1:2}"])
def test_odd_numbers_and_halves_of_characters_are_refused(text: str) -> None:
    with pytest.raises(NotUsable):
        check_plain(from_json(text, "file"), "file")


@pytest.mark.parametrize(
    ("data", "where"),
    [
        ({"readings": [1] * (MOST_ENTRIES + 1)}, "readings"),
        ({"unit": {"name": "x" * (MOST_TYPED + 1)}}, "unit.name"),
        ({"readings": [{"text": "\x1b[2J"}]}, "readings[0].text"),
        ({"un\u202eit": 1}, "a key of file"),
    ],
)
def test_what_is_wrong_is_named_by_its_key(data: Any, where: str) -> None:
    with pytest.raises(NotUsable) as caught:
        check_plain(data, "file")
    assert caught.value.where == where
