"""Text as it is seen: letters of one shape are one letter, and what cannot be seen is none.

Checked against the names that the Unicode Character Database gives them.
"""

from __future__ import annotations

import unicodedata

import pytest

from troubleshoot.outside.look_alike import as_seen


@pytest.mark.parametrize(
    ("typed", "seen"),
    [
        ("Marlow Row, RTU-4", "Marlow Row, RTU-4"),
        ("\u041carlow", "Marlow"),
        ("\uff2darlow \uff14", "Marlow 4"),
        ("RTU \u0664", "RTU 4"),
        ("Mar\u00adlow", "Marlow"),
        ("J\u0301umper b\u00e1kery", "Jumper bakery"),
        ("\u0440r\u0435ssur\u0435", "pressure"),
        ("\u039carl\u03bfw", "Marlow"),
        ("12 \u03bcF, 0 \u03a9", "12 \u03bcF, 0 \u03a9"),
    ],
)
def test_it_is_read_as_it_looks(typed: str, seen: str) -> None:
    assert as_seen(typed) == seen


@pytest.mark.parametrize(
    ("name", "letter"),
    [
        ("CYRILLIC CAPITAL LETTER A", "A"), ("CYRILLIC CAPITAL LETTER IE", "E"),
        ("CYRILLIC CAPITAL LETTER ER", "P"), ("CYRILLIC SMALL LETTER ES", "c"),
        ("CYRILLIC SMALL LETTER HA", "x"), ("GREEK CAPITAL LETTER ALPHA", "A"),
        ("GREEK CAPITAL LETTER RHO", "P"), ("GREEK SMALL LETTER OMICRON", "o"),
    ],
)  # fmt: skip
def test_a_letter_of_another_alphabet_is_the_one_of_its_shape(name: str, letter: str) -> None:
    assert as_seen(unicodedata.lookup(name)) == letter
