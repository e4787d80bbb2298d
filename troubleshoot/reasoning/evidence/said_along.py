"""What a caller says runs or hums: what would hardly do so seldom brings the call."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from troubleshoot.knowledge.model import Complaint, Knowledge
from troubleshoot.knowledge.vocabulary import Grade
from troubleshoot.reasoning.matching.lexicon import lexicon_of
from troubleshoot.reasoning.matching.matcher import Matcher


def as_said(knowledge: Knowledge, complaint: Complaint, words: str) -> Complaint:
    """The complaint as it was told: what the caller's words speak against is seldom behind it.

    Nor is what they do not point at, where they do; what a card says it never brings stays so.
    """
    if not (words and complaint.said_along):
        return complaint
    said = [
        complaint.said_along[int(n)] for n in _matcher(knowledge, complaint.id).heard(words).said
    ]
    against = {fault for row in said for fault in row.seldom_by}
    at = {fault for row in said for fault in row.points_at}
    seldom = complaint.brought_by if at else against & set(complaint.faults)
    by: dict[str, Grade] = {}
    by.update(dict.fromkeys(seldom, "seldom"))
    by.update(dict.fromkeys(at, "almost-always"))
    never = {fault: g for fault, g in complaint.brought_by.items() if g == "never"}
    return replace(complaint, brought_by={**complaint.brought_by, **by, **never})


@lru_cache(maxsize=8)
def _matcher(knowledge: Knowledge, complaint: str) -> Matcher:
    rows = knowledge.complaints[complaint].said_along
    return Matcher(lexicon_of(knowledge), {str(n): row.words for n, row in enumerate(rows)})
