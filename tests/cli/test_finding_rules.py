"""`rules find WORDS` and `rules explain WORDS`."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Call = Callable[..., tuple[int, str, str]]


def test_words_that_name_one_thing_show_its_page(command: Call) -> None:
    by_words = command("rules", "explain", "contactor", "coil", "open")
    assert by_words == command("rules", "explain", "contactor-coil-open")


@pytest.mark.parametrize("words", [("nest",), ("insulation",)])
def test_words_that_stand_in_several_list_them(command: Call, words: tuple[str, ...]) -> None:
    """Regression: "nest is not in the rules", exit code 2."""
    code, out, _ = command("rules", "explain", *words)
    assert code == 0 and words[0] in out.lower()
    assert out == command("rules", "find", *words)[1]


def test_what_is_found_stands_under_what_it_is_with_its_id(command: Call) -> None:
    _, out, _ = command("rules", "find", "dust", "on", "the", "blower", "wheel")
    lines = out.splitlines()
    assert lines[0] == "Looks and readings:"
    assert "  Blower wheel dirty, its cups filled  (blower-wheel-dirty)" in lines
    assert lines[-1] == "A page of its own for each: troubleshoot rules explain ID"


@pytest.mark.parametrize("which", ["find", "explain"])
@pytest.mark.parametrize("words", [("qqqzzz",), ("",), (",", "'\u2019"), ("the", "of")])
def test_what_stands_nowhere_is_told(command: Call, which: str, words: tuple[str, ...]) -> None:
    code, out, failed = command("rules", which, *words)
    assert (code, out) == (2, "") and "is not in the rules" in failed
