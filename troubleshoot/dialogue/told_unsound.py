"""Words that tell that something is not as it should be, whatever it is: stuck, plugged, burnt.

They are read off the rules: words of an outcome of any test that is not sound, and of no sound one.
"""

from __future__ import annotations

from functools import lru_cache

from troubleshoot.dialogue.clauses import FILLING
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.hearing.mending import RULE_BASES
from troubleshoot.safety.hearing.words import raw_words


def tells_unsound(knowledge: Knowledge, typed: str) -> bool:
    """Whether a word of what was typed is said of nothing that is sound."""
    return not _unsound(knowledge).isdisjoint(raw_words(typed))


@lru_cache(maxsize=RULE_BASES)
def _unsound(knowledge: Knowledge) -> frozenset[str]:
    sound: set[str] = {*FILLING}
    unsound: set[str] = set()
    for test in knowledge.tests.values():
        sound |= {*raw_words(" ".join((test.name, *test.words)))}
        for outcome in test.outcomes:
            told = raw_words(" ".join((outcome.spoken, *outcome.words)))
            if outcome.id in test.healthy:
                sound |= {*told, *raw_words(outcome.means)}
            else:
                unsound |= {*told}
    return frozenset(unsound - sound)
