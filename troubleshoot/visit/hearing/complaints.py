"""From the caller's words to one of the complaints the rule base knows."""

from __future__ import annotations

import math
import re
from collections import Counter

from troubleshoot.knowledge.model import Complaint, Knowledge
from troubleshoot.outside.text import plain_words

WHOLE = 1.0
"""More than any share of words."""

_IDLE = frozenset(
    """a all an and are at bad be been but does do for funny has have i in is it its just my no not
    odd of off on our so strange that the there they this to us very was we weird will
    with""".split()  # noqa: SIM905
)
"""Words that tell nothing about a complaint."""


def match_complaints(knowledge: Knowledge, words: str, most: int = 4) -> tuple[Complaint, ...]:
    """The complaints that share most of the caller's words, the best first; ties in file order.

    A word counts the more, the fewer complaints it could mean.
    """
    texts = {c.id: [_words(t) for t in _texts(c)] for c in knowledge.complaints.values()}
    met: Counter[str] = Counter()
    for phrases in texts.values():
        met.update(frozenset().union(*phrases))
    said = _words(words)
    scored = []
    for order, complaint in enumerate(knowledge.complaints.values()):
        score = max(_overlap(said, phrase, met) for phrase in texts[complaint.id])
        if score > 0:
            scored.append((-score, order, complaint))
    scored.sort(key=lambda row: row[:2])
    return tuple(complaint for _, _, complaint in scored[:most])


def _texts(complaint: Complaint) -> tuple[str, ...]:
    return complaint.says, *complaint.words, plain_words(complaint.id)


def _overlap(said: frozenset[str], phrase: frozenset[str], met: Counter[str]) -> float:
    """Shared words as a share of both texts (Dice), each by how telling it is.

    A caller who says a phrase whole says more beside it: that counts for more than any share.
    """

    def telling(words: frozenset[str]) -> float:
        return math.fsum(1 / met[word] if met[word] else 0.5 for word in sorted(words))

    shared = telling(said & phrase)
    if not shared:
        return 0.0
    whole = WHOLE if phrase <= said else 0.0
    return whole + 2 * shared / (telling(said) + telling(phrase))


def _words(text: str) -> frozenset[str]:
    return frozenset(
        _stem(word) for word in re.findall(r"[a-z]+", text.lower()) if word not in _IDLE
    )


def _stem(word: str) -> str:
    """Cut the endings that change nothing: cooling, cools -> cool."""
    for ending in ("ing", "es", "s", "ed"):
        if len(word) > len(ending) + 2 and word.endswith(ending):
            return word[: -len(ending)]
    return word
