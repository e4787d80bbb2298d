"""The words of the trade: those that the rule base itself uses of units, dangers and repairs."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from functools import lru_cache
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.text import as_said
from troubleshoot.safety.hearing.mending import RULE_BASES

_WORD: Final = re.compile(r"[^\W\d_]{3,}")
_ENDINGS: Final = ("ing", "ied", "ed", "es", "s", "y", "e")
_EVERYDAY: Final = frozenset(
    (
        "a", "again", "all", "also", "and", "any", "are", "back", "been", "before", "but", "came",
        "can", "could", "day", "did", "does", "done", "down", "each", "every", "everything",
        "fine", "for", "from", "get", "gone", "good", "had", "has", "have", "her", "here", "him",
        "his", "home", "how", "into", "its", "just", "let", "like", "made", "make", "man", "may",
        "more", "most", "much", "new", "nor", "not", "nothing", "now", "off", "old", "one",
        "only", "other", "our", "out", "over", "own", "people", "per", "put", "said", "same",
        "say", "says", "see", "she", "should", "since", "some", "something", "such", "take",
        "than", "that", "the", "their", "them", "then", "there", "these", "they", "thing", "this",
        "those", "three", "time", "today", "too", "two", "under", "until", "upon", "use", "very",
        "was", "way", "well", "were", "what", "whatever", "when", "where", "which", "while",
        "who", "why", "will", "with", "without", "would", "yes", "yet", "you", "your",
    )
)  # fmt: skip
"""Words that say nothing of a unit."""


def trade_words(knowledge: Knowledge) -> Callable[[str], bool]:
    """Whether a word, in lower case, is one of the trade's, in any of its forms."""
    stems = _stems(knowledge)

    def known(word: str) -> bool:
        return word not in _EVERYDAY and _stem(word) in stems

    return known


@lru_cache(maxsize=RULE_BASES)
def _stems(knowledge: Knowledge) -> frozenset[str]:
    words = (word for text in _texts(knowledge) for word in _WORD.findall(as_said(text)))
    return frozenset(_stem(word) for word in words if word not in _EVERYDAY)


def _texts(knowledge: Knowledge) -> Iterator[str]:
    for hazard in knowledge.hazards.values():
        yield from (hazard.what_to_do, hazard.tag, *hazard.words)
    for test in knowledge.tests.values():
        yield from (test.name, *test.how, *(outcome.means for outcome in test.outcomes))
    for fault in knowledge.faults.values():
        yield from (fault.name, fault.repair.what, *(proof.text for proof in fault.proof))


def _stem(word: str) -> str:
    """A word without its ending, so that tightened and tighten are one."""
    for ending in _ENDINGS:
        if word.endswith(ending) and len(word) - len(ending) >= 3:
            return word.removesuffix(ending)
    return word
