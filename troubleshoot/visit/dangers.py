"""A danger that a person reports in their own words, and which hazard it is.

The words are the hazards' own. What nobody foresaw is still a danger: it is taken as the hazard
that stands for all others. Nothing here weighs whether it is true.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import Final

from troubleshoot.knowledge.model import Hazard, Knowledge

ANY_DANGER: Final = "danger-reported"
"""The hazard of a danger that no other hazard's words name."""

_WORD: Final = re.compile(r"[a-z0-9]+")
_FILLING: Final = frozenset(
    ("a", "an", "and", "at", "i", "in", "is", "it", "my", "of", "on", "or", "the", "there", "we")
)
_DENYING: Final = frozenset(("no", "not", "without", "never", "dont"))
_LEAST_STEM: Final = 3


def reported(knowledge: Knowledge, words: str) -> Hazard:
    """The hazard that somebody means who says that these words are a danger.

    Of several that are named, one for the whole job is taken; a lesser one only where it explains
    all that was said. A word that few hazards use tells more.
    """
    typed = set(_words(words))
    named = [h for h in knowledge.hazards.values() if h.stop is not None and h.words]
    users = Counter(word for h in named for word in {w for p in h.words for w in _words(p)})

    def likeness(hazard: Hazard) -> float:
        return max(_likeness(typed, _words(phrase), users) for phrase in hazard.words)

    def holds(hazard: Hazard) -> bool:
        return any(set(_words(phrase)) <= typed for phrase in hazard.words)

    final = [h for h in named if h.stop is not None and h.stop.scope == "whole-job"]
    lesser = [h for h in named if any(typed == set(_words(phrase)) for phrase in h.words)]
    found = max(final if any(map(holds, final)) else lesser or final, key=likeness, default=None)
    if found is not None and likeness(found) > 0:
        return found
    return knowledge.hazards[ANY_DANGER]


def spoken_of(knowledge: Knowledge, words: str) -> Hazard | None:
    """The hazard of words that were typed where an answer was wanted; none where they hold none.

    Only whole phrases count here, of two telling words or more, or the whole of what was typed;
    and nothing that denies ("no gas smell").
    """
    typed = _words(words)
    if not _DENYING.isdisjoint(typed):
        return None
    for hazard in knowledge.hazards.values():
        for phrase in hazard.words if hazard.stop is not None else ():
            wanted = _words(phrase)
            alone = wanted == typed and hazard.id != ANY_DANGER
            if alone or (len(wanted) > 1 and _holds(typed, wanted)):
                return reported(knowledge, words)
    return None


@lru_cache(maxsize=1_000)  # every typed line is compared with every hazard's words
def _words(text: str) -> tuple[str, ...]:
    """The telling words of a text, without their endings, so that smelling is smell."""
    found = _WORD.findall(text.lower().replace("'", ""))
    return tuple(_stem(w) for w in ([w for w in found if w not in _FILLING] or found))


def _stem(word: str) -> str:
    for ending in ("ing", "ed", "es", "s"):
        if word.endswith(ending) and len(word) - len(ending) >= _LEAST_STEM:
            return word.removesuffix(ending)
    return word.removesuffix("e") if len(word) > _LEAST_STEM else word


def _likeness(typed: set[str], phrase: tuple[str, ...], users: Mapping[str, int]) -> float:
    """The telling weight of the words that a phrase shares, times how much of it was typed."""
    common = typed & set(phrase)
    return sum(1 / users[word] for word in common) * len(common) / len(set(phrase))


def _holds(typed: tuple[str, ...], phrase: Iterable[str]) -> bool:
    """Whether all words of a phrase were typed, in their order."""
    rest = iter(typed)
    return all(word in rest for word in phrase)
