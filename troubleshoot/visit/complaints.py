"""From the caller's words to one of the complaints the rule base knows."""

from __future__ import annotations

import re

from troubleshoot.knowledge.model import Complaint, Knowledge

_IDLE = frozenset(
    """a all an and are at be been but does do for has have i in is it its just my no not of off on
    our so that the there they this to us very was we will with""".split()  # noqa: SIM905
)
"""Words that tell nothing about a complaint."""


def match_complaints(knowledge: Knowledge, words: str, most: int = 4) -> tuple[Complaint, ...]:
    """The complaints that share most of the caller's words, the best first; ties in file order."""
    said = _words(words)
    scored = []
    for order, complaint in enumerate(knowledge.complaints.values()):
        score = max(_overlap(said, text) for text in (complaint.says, *complaint.words))
        score = max(score, _overlap(said, complaint.id.replace("-", " ")))
        if score > 0:
            scored.append((-score, order, complaint))
    scored.sort(key=lambda row: row[:2])
    return tuple(complaint for _, _, complaint in scored[:most])


def _overlap(said: frozenset[str], text: str) -> float:
    """Shared words as a share of both texts (Dice)."""
    words = _words(text)
    shared = len(said & words)
    return 2 * shared / (len(said) + len(words)) if shared else 0.0


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
