"""Which word a mistyped one is put right to: a slip of the fingers, and no other word.

How people mistype is common practice, no source. Two letters off are counted as in the distance of
Damerau and Levenshtein, a swap of neighbours as one (from memory).
"""

from __future__ import annotations

from string import ascii_lowercase

import pytest

from troubleshoot.safety.hearing.typing_errors import mender, one_error, two_errors

LETTERS = tuple(ascii_lowercase)


def put_right(word: str, *known: str, ordinary: str = "") -> str:
    return mender(frozenset(known), lambda: frozenset(ordinary.split()))(word)


def test_one_error_is_a_letter_left_out_swapped_changed_or_put_in() -> None:
    assert one_error("abc") == {
        *("bc", "ac", "ab"), *("bac", "acb"),
        *(word for c in LETTERS for word in (f"{c}bc", f"a{c}c", f"ab{c}")),
        *(word for c in LETTERS for word in (f"{c}abc", f"a{c}bc", f"ab{c}c", f"abc{c}")),
    }  # fmt: skip
    assert "abdc" in one_error("abcd") and "badc" not in one_error("abcd")


def test_what_is_longer_than_any_word_is_no_slip() -> None:
    assert one_error("a" * 40) and not one_error("a" * 41)


@pytest.mark.parametrize(
    ("typed", "meant", "near"),
    [
        ("thunder", "thunder", True), ("thundr", "thunder", True), ("htudner", "thunder", True),
        ("litening", "lightening", True), ("elektrik", "electric", True), ("abc", "abcde", True),
        ("abcde", "abc", True), ("abc", "abcdef", False), ("abcdef", "abc", False),
        ("bcdefxy", "abcdef", False), ("xyzdef", "abcdef", False), ("cba", "abc", True),
        ("xbcyez", "abcdef", False), ("ba", "abcd", False), ("bxcab", "abxca", True),
        ("xacdeg", "abcdef", False), ("bxcdeg", "abcdef", False), ("badcfe", "abcdef", False),
    ],
)  # fmt: skip
def test_two_errors_make_one_word_of_another_and_three_do_not(
    typed: str, meant: str, near: bool
) -> None:
    assert two_errors(typed, meant) is near


@pytest.mark.parametrize(
    ("typed", "known", "meant"),
    [
        ("somke", "smoke", "smoke"), ("smke", "smoke", "smoke"), ("smooke", "smoke", "smoke"),
        ("smokd", "smoke", "smoked"), ("smokng", "smoke", "smoking"), ("smkes", "smoke", "smokes"),
        ("sparkd", "spark", "spark"), ("dripss", "drip", "drips"), ("starp", "strap", "strap"),
        ("moltan", "molten", "molten"), ("leakings", "leaking", "leaking"),
    ],
)  # fmt: skip
def test_a_slip_in_a_word_of_five_letters_is_seen_through(
    typed: str, known: str, meant: str
) -> None:
    assert put_right(typed, known) == meant


@pytest.mark.parametrize(
    ("typed", "known"),
    [
        ("sttop", "stop"), ("osmoke", "smoke"), ("smoka", "smoke"), ("vapar", "vapor"),
        ("smo2ke", "smoke"), ("smokes", "smoke"), ("sparks", "spark"), ("moltezs", "molten"),
        ("dripng", "drip"), ("dripd", "drip"), ("leakingss", "leaking"), ("molt", "molten"),
    ],
)  # fmt: skip
def test_what_may_be_another_word_stays(typed: str, known: str) -> None:
    """Short, with another first letter, changed in a short word, with a figure, or its own."""
    assert put_right(typed, known) == typed


@pytest.mark.parametrize(
    "word", ["badly", "clamp", "alarm", "clear", "smell", "empty", "bared", "without"]
)
def test_a_word_of_any_table_is_mistyped_for_none(word: str) -> None:
    assert put_right(word, f"{word[0]}{word[2]}{word[1]}{word[3:]}") == word


def test_an_ordinary_word_of_the_rules_stays() -> None:
    assert put_right("somke", "smoke", ordinary="some somke") == "somke"
    assert put_right("somke", "smoke", ordinary="some") == "smoke"


@pytest.mark.parametrize("pair", ["ab", "cd", "ef", "gh", "ij", "kl", "mn", "op", "qr", "st"])
def test_of_two_near_words_one_that_is_known_comes_first_then_by_the_alphabet(pair: str) -> None:
    assert put_right("barrked", "bark", "barred") == "barred"
    one, other = (f"mol{letter}ten" for letter in pair)
    assert put_right("molten", one, other) == one


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("expload", "explode"), ("elektrik", "electric"), ("litening", "lightening"),
        ("ixplode", "ixplode"), ("elctrc", "elctrc"),
    ],
)  # fmt: skip
def test_two_errors_are_seen_through_in_long_words_that_are_hard_to_spell(
    typed: str, meant: str
) -> None:
    assert put_right(typed) == meant


def test_one_error_comes_before_two() -> None:
    assert put_right("expload", "exploat") == "exploat"
