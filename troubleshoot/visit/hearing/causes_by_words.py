"""Which cause a person means: `why not valve bulb`, `repaired the contactor`."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.text import plain_words
from troubleshoot.reasoning.matching.lexicon import lexicon_of
from troubleshoot.reasoning.matching.matcher import Heard, Matcher

MOST: Final = 8
LEADING: Final = 0.5
"""A cause above this chance is likelier than all others together."""


def heard_fault(knowledge: Knowledge, words: str) -> Heard:
    """The fault that the words mean, or those that they may mean."""
    return _matcher(knowledge).heard(words, MOST)


def best_fitting(
    knowledge: Knowledge, causes: Sequence[tuple[str, float]], words: str
) -> tuple[str, ...]:
    """The faults that words may mean: those with most of them first, of these the likeliest.

    What is done to put a fault right speaks for it too: coil cleaned. `causes`: as below.
    """
    lexicon, chances = lexicon_of(knowledge), dict(causes)
    said = {*lexicon.words(words)}

    def fit(name: str) -> tuple[int, float]:
        fault = knowledge.faults[name]
        own = {*lexicon.words(" ".join((fault.name, *fault.words, fault.repair.what)))}
        return -len(said & own), -chances.get(name, 0.0)

    return tuple(sorted(_matcher(knowledge).ranked(words), key=fit))[:MOST]


def leading_fault(
    knowledge: Knowledge, causes: Sequence[tuple[str, float]], words: str
) -> str | None:
    """The leading cause, where every word that tells something is one of its own; else None.

    `causes`: faults with their chances, the likeliest first.
    """
    if not causes or causes[0][1] <= LEADING:
        return None
    fault, lexicon = knowledge.faults[causes[0][0]], lexicon_of(knowledge)
    said = {*lexicon.words(words)}
    own = {*lexicon.words(" ".join((fault.name, *fault.words)))}
    return fault.id if said and said <= own else None


@lru_cache(maxsize=2)
def _matcher(knowledge: Knowledge) -> Matcher:
    named = {
        fault.id: (fault.name, *fault.words, plain_words(fault.id))
        for fault in knowledge.faults.values()
    }
    return Matcher(lexicon_of(knowledge), named)
