"""What is said over the work and tells of nobody's danger; common practice, no source."""

from __future__ import annotations

import pytest

from troubleshoot.safety.hearing.small_talk import is_small_talk


@pytest.mark.parametrize("said", ["nobody hurt", "pretty rusty", "no lightning and pretty rusty"])
def test_talk_is_of_its_phrases_or_its_words(said: str) -> None:
    assert is_small_talk(said)


@pytest.mark.parametrize("said", ["", "...", "pretty rusty and hissing", "it bit her"])
def test_one_word_that_is_no_talk_none_at_all_or_a_hint_makes_it_none(said: str) -> None:
    """Each word of "it bit her" is one of talk: it, a bit, here."""
    assert not is_small_talk(said)
