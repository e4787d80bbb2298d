"""Words that tell that something is not as it should be, or is, whatever it is: stuck, burnt; nice.

The first are read off the rules: words of an outcome of any test that is not sound, and of no sound
one.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Final

from troubleshoot.dialogue.clauses import DENYING, FILLING, SOUND, plainly, said_clauses
from troubleshoot.dialogue.in_part import THINGS
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.hearing.mending import RULE_BASES
from troubleshoot.safety.hearing.words import raw_words

_GOOD: Final = SOUND | {"clean", "easy", "even", "great", "perfect", "shiny", "smooth"}
"""What is said of what is as it should be."""


def tells_unsound(knowledge: Knowledge, typed: str) -> bool:
    """Whether a word of what was typed, but for what is denied, is said of nothing sound."""
    unsound = _unsound(knowledge)
    clauses = said_clauses(plainly(typed))
    return any(not unsound.isdisjoint(_affirmed(words, denies)) for words, denies in clauses)


def tells_only_good(typed: str) -> bool:
    """Whether a word says that something is good, and none denies that: nice, flat faces."""
    clauses = said_clauses(plainly(typed))
    return any(not _GOOD.isdisjoint(_affirmed(words, denies)) for words, denies in clauses)


@lru_cache(maxsize=RULE_BASES)
def _unsound(knowledge: Knowledge) -> frozenset[str]:
    sound: set[str] = {*FILLING, *THINGS}
    unsound: set[str] = set()
    for test in (each for each in knowledge.tests.values() if each.kind != "step"):
        sound |= {*raw_words(test.name)}
        for outcome in test.outcomes:
            told = raw_words(" ".join((outcome.spoken, *outcome.words)))
            if outcome.id in test.healthy:
                sound |= {*told, *raw_words(outcome.means)}
            else:
                unsound |= {*told}
    return frozenset(unsound - sound)


def _affirmed(words: list[str], denies: bool) -> list[str]:
    """The words of a clause before what denies; none where a denial goes on over it."""
    if denies:
        return []
    return words[: next((at for at, word in enumerate(words) if word in DENYING), len(words))]
