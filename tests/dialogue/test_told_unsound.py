"""A word that is said of nothing sound tells that something is not; any other tells nothing."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.building import base, test_of
from troubleshoot.dialogue.told_unsound import tells_unsound
from troubleshoot.knowledge.model import Outcome

RULES = base(
    tests=[
        replace(
            test_of("belt"),
            name="Drive belt",
            words=("vee belt",),
            outcomes=(
                Outcome("normal", words=("snug",), means="Runs true."),
                Outcome("torn", words=("frayed on the vee belt", "no drive"), means="Threads."),
            ),
        ),
        replace(
            test_of("pan"),
            outcomes=(Outcome("normal"), Outcome("not-snug", words=("runs over",))),
        ),
    ]
)


@pytest.mark.parametrize("word", ["torn", "Frayed", "over", "it is torn badly"])
def test_a_word_of_an_outcome_that_is_not_sound_tells_so(word: str) -> None:
    assert tells_unsound(RULES, word)


@pytest.mark.parametrize(
    "word", ["normal", "snug", "runs", "drive", "the", "threads", "belt", "hello", ""]
)
def test_a_word_that_is_said_of_something_sound_or_of_nothing_does_not(word: str) -> None:
    """As a sound outcome is called or explained, or as what is looked at is called."""
    assert not tells_unsound(RULES, word)
