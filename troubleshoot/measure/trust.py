"""Who has looked at the cards: how many are signed, gone over or drafts, and why the drafts are."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import get_args

from troubleshoot.knowledge.model import Fault, Knowledge
from troubleshoot.knowledge.spoken import spoken
from troubleshoot.knowledge.vocabulary import Status

NO_REASON = "no reason is told"


def trust_lines(knowledge: Knowledge) -> Iterator[str]:
    """A line for how many cards are trusted how far, then each draft under its reason."""
    counts = Counter(fault.status for fault in knowledge.faults.values())
    told = ", ".join(f"{spoken(status)} {counts[status]}" for status in reversed(get_args(Status)))
    yield "### Who has looked at the cards"
    yield ""
    yield f"- of {len(knowledge.faults)} cards: {told}"
    for name in sorted(knowledge.changed_since_signed):
        yield f"- changed since it was signed: {name}"
    reasons: dict[str, list[Fault]] = {}
    for fault in knowledge.faults.values():
        if fault.status == "draft":
            reasons.setdefault(fault.because or NO_REASON, []).append(fault)
    for reason, drafts in sorted(reasons.items(), key=lambda each: (-len(each[1]), each[0])):
        yield f"- draft, {reason} ({len(drafts)}): {', '.join(fault.id for fault in drafts)}"
