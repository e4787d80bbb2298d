"""What a caller says runs, hums or trips: what seldom brings the call, the first looks, dangers."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from troubleshoot.knowledge.model import Complaint, Finding, Knowledge, SaidAlong
from troubleshoot.knowledge.vocabulary import Grade
from troubleshoot.reasoning.matching.lexicon import lexicon_of
from troubleshoot.reasoning.matching.matcher import Matcher


def as_said(knowledge: Knowledge, complaint: Complaint, words: str) -> Complaint:
    """The complaint as it was told: what the caller's words speak against is seldom behind it.

    Nor is what they do not point at, where they do; what a card says it never brings stays so.
    """
    if not (words and complaint.said_along):
        return complaint
    said = _rows_said(knowledge, complaint.id, words)
    against = {fault for row in said for fault in row.seldom_by}
    at = {fault for row in said for fault in row.points_at}
    seldom = complaint.brought_by if at else against & set(complaint.faults)
    by: dict[str, Grade] = {}
    by.update(dict.fromkeys(seldom, "seldom"))
    by.update(dict.fromkeys(at, "almost-always"))
    never = {fault: g for fault, g in complaint.brought_by.items() if g == "never"}
    first = next((row.first_tests for row in said if row.first_tests), complaint.first_tests)
    return replace(complaint, brought_by={**complaint.brought_by, **by, **never}, first_tests=first)


@lru_cache(maxsize=64)
def heard(knowledge: Knowledge, words: str) -> tuple[Finding, ...]:
    """What the caller has heard or seen himself, whatever he calls about.

    No evidence of a cause, but it counts for dangers: nothing is done again to hear it once more.
    """
    calls = knowledge.complaints.values()
    telling = [call.id for call in calls if any(row.heard for row in call.said_along)]
    said = (row for call in telling if words for row in _rows_said(knowledge, call, words))
    return tuple(found for row in said for found in row.heard)


@lru_cache(maxsize=64)
def _rows_said(knowledge: Knowledge, complaint: str, words: str) -> tuple[SaidAlong, ...]:
    rows = knowledge.complaints[complaint].said_along
    return tuple(rows[int(n)] for n in _matcher(knowledge, complaint).heard(words).said)


@lru_cache(maxsize=8)
def _matcher(knowledge: Knowledge, complaint: str) -> Matcher:
    rows = knowledge.complaints[complaint].said_along
    return Matcher(lexicon_of(knowledge), {str(n): row.words for n, row in enumerate(rows)})
