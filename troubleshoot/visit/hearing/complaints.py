"""From the caller's words to one of the complaints the rule base knows."""

from __future__ import annotations

from functools import lru_cache

from troubleshoot.knowledge.model import Complaint, Knowledge
from troubleshoot.outside.text import plain_words
from troubleshoot.reasoning.matching.lexicon import lexicon_of
from troubleshoot.reasoning.matching.matcher import Heard, Matcher


def heard_complaint(knowledge: Knowledge, words: str) -> Heard:
    """The complaint that the caller's words are, or those that they may be.

    One word that is no phrase of any is asked about, and so is the word of a safety step: it was
    meant for another prompt.
    """
    heard = _matcher(knowledge).heard(words)
    said = plain_words(words)
    is_astray = " " not in said or said in _words_of_steps(knowledge)
    if heard.taken is None or heard.taken in heard.said or not is_astray:
        return heard
    return Heard(None, heard.which, heard.said)


def match_complaints(knowledge: Knowledge, words: str) -> tuple[Complaint, ...]:
    """Every complaint that any of the caller's words may speak of, the likeliest first."""
    return tuple(knowledge.complaints[name] for name in _matcher(knowledge).ranked(words))


@lru_cache(maxsize=2)
def _words_of_steps(knowledge: Knowledge) -> frozenset[str]:
    """What is typed at a safety step of what came of it."""
    outcomes = (o for t in knowledge.tests.values() if t.kind == "step" for o in t.outcomes)
    return frozenset(plain_words(words) for o in outcomes for words in (o.spoken, *o.words))


@lru_cache(maxsize=2)
def _matcher(knowledge: Knowledge) -> Matcher:
    complaints = knowledge.complaints.values()
    named = {c.id: (c.says, *c.words, plain_words(c.id)) for c in complaints}
    return Matcher(lexicon_of(knowledge), named)
