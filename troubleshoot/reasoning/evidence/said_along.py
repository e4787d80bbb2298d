"""What a caller says runs: a fault with which it hardly would then seldom brings the call."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from troubleshoot.knowledge.model import Complaint, Knowledge
from troubleshoot.knowledge.vocabulary import Grade
from troubleshoot.reasoning.matching.lexicon import lexicon_of
from troubleshoot.reasoning.matching.matcher import Matcher


def as_said(knowledge: Knowledge, complaint: Complaint, words: str) -> Complaint:
    """The complaint as it was told: what the caller's words speak against is seldom behind it."""
    if not (words and complaint.said_along):
        return complaint
    said = _matcher(knowledge, complaint.id).heard(words).said
    against = {f for name in said for f in complaint.said_along[int(name)].seldom_by}
    seldom: dict[str, Grade] = {f: "seldom" for f in complaint.faults if f in against}
    return replace(complaint, brought_by={**complaint.brought_by, **seldom})


@lru_cache(maxsize=8)
def _matcher(knowledge: Knowledge, complaint: str) -> Matcher:
    rows = knowledge.complaints[complaint].said_along
    return Matcher(lexicon_of(knowledge), {str(n): row.words for n, row in enumerate(rows)})
