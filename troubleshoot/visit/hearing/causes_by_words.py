"""Which cause a person means: `why not valve bulb`, `repaired the contactor`."""

from __future__ import annotations

from functools import lru_cache
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.text import plain_words
from troubleshoot.reasoning.matching.lexicon import lexicon_of
from troubleshoot.reasoning.matching.matcher import Heard, Matcher

MOST: Final = 8


def heard_fault(knowledge: Knowledge, words: str) -> Heard:
    """The fault that the words mean, or those that they may mean."""
    return _matcher(knowledge).heard(words, MOST)


@lru_cache(maxsize=2)
def _matcher(knowledge: Knowledge) -> Matcher:
    named = {
        fault.id: (fault.name, *fault.words, plain_words(fault.id))
        for fault in knowledge.faults.values()
    }
    return Matcher(lexicon_of(knowledge), named)
