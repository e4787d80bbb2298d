"""From the caller's words to one of the complaints the rule base knows."""

from __future__ import annotations

from functools import lru_cache

from troubleshoot.knowledge.model import Complaint, Knowledge
from troubleshoot.outside.text import plain_words
from troubleshoot.reasoning.matching.lexicon import lexicon_of
from troubleshoot.reasoning.matching.matcher import Heard, Matcher


def heard_complaint(knowledge: Knowledge, words: str) -> Heard:
    """The complaint that the caller's words are, or those that they may be."""
    return _matcher(knowledge).heard(words)


def match_complaints(knowledge: Knowledge, words: str) -> tuple[Complaint, ...]:
    """Every complaint that any of the caller's words may speak of, the likeliest first."""
    return tuple(knowledge.complaints[name] for name in _matcher(knowledge).ranked(words))


@lru_cache(maxsize=2)
def _matcher(knowledge: Knowledge) -> Matcher:
    complaints = knowledge.complaints.values()
    named = {c.id: (c.says, *c.words, plain_words(c.id)) for c in complaints}
    return Matcher(lexicon_of(knowledge), named)
