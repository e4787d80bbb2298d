"""Whether what is told is that something is as it should be, in the rules' own words."""

from __future__ import annotations

from functools import lru_cache

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.text import plain_words
from troubleshoot.safety.hearing.mending import RULE_BASES
from troubleshoot.safety.hearing.vocabulary import LOOSE, stem
from troubleshoot.safety.hearing.words import raw_words

Stems = frozenset[str]


def is_told_sound(knowledge: Knowledge, typed: str) -> bool:
    """Whether a line names a test and its sound outcome and nothing else: rollout closed."""
    said = _stems(typed) - LOOSE
    return any(
        said & named and said & sound and said <= named | sound
        for named, sound in _sound_lines(knowledge)
    )


@lru_cache(maxsize=RULE_BASES)
def _sound_lines(knowledge: Knowledge) -> tuple[tuple[Stems, Stems], ...]:
    """The words of each look or reading, and those of what is sound there."""
    return tuple(
        (_stems(f"{test.name} {plain_words(test.id)}"), _stems(" ".join(test.healthy)))
        for test in knowledge.tests.values()
        if test.kind != "step" and test.healthy
    )


def _stems(text: str) -> Stems:
    return frozenset(stem(word) for word in raw_words(text))
