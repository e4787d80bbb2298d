"""A reading typed with its word: the number is taken where both say the same."""

from __future__ import annotations

import pytest

from troubleshoot.dialogue.by_word import NearlyAnAnswer
from troubleshoot.dialogue.word_and_number import number_beside_word
from troubleshoot.knowledge.model import Knowledge

SHELL = "compressor-shell-heat"


def told(shipped: Knowledge, typed: str, *outcomes: str, test: str = SHELL) -> str:
    of = shipped.tests[test]
    return number_beside_word(shipped, of, typed, outcomes or tuple(o.id for o in of.outcomes))


@pytest.mark.parametrize(
    ("typed", "number"),
    [
        ("hot, 170", "170"), ("hot 170", "170"), (" Hot: 170 F.", "170 F"), ("HOT; 170!", "170"),
        ("170, hot", "170"), ("170;hot", "170"), ("170:  HOT", "170"), ("cool, -5", "-5"),
    ],
)  # fmt: skip
def test_the_number_is_taken_as_it_was_typed(typed: str, number: str, shipped: Knowledge) -> None:
    assert told(shipped, typed) == number


@pytest.mark.parametrize(
    "typed",
    [
        "170 hot", "hot and cool, 170", "zebra, 170", "hot, zebra", "hot, 170 psi", "170 psi, hot",
        "hot", "170", "hot, 170, 180",
    ],
)  # fmt: skip
def test_without_a_word_of_the_test_or_a_number_it_reads_it_is_none(
    typed: str, shipped: Knowledge
) -> None:
    assert told(shipped, typed) == ""


def test_only_what_is_asked_for_is_its_word(shipped: Knowledge) -> None:
    assert told(shipped, "hot, 170", "cool") == ""
    assert told(shipped, "very hot, 300", test="discharge-temperature") == "300"


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("cool, 170", '"cool" and 170 do not say the same. Type the number alone, or the word'),
        ("hot,.5", '"hot" and .5 do not say the same'),
    ],
)
def test_what_says_two_things_is_asked_about(typed: str, why: str, shipped: Knowledge) -> None:
    with pytest.raises(NearlyAnAnswer) as refused:
        told(shipped, typed)
    assert str(refused.value).startswith(why)


def test_what_nothing_judges_yet_is_taken_with_any_word(shipped: Knowledge) -> None:
    """Without the plate a rise is neither high nor low."""
    assert told(shipped, "high, 40", test="heat-temperature-rise") == "40"
