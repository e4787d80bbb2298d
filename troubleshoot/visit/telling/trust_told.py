"""How far a card can be trusted, in a line: who has looked at it, and what nobody has done."""

from __future__ import annotations

from troubleshoot.knowledge.model import Fault, Knowledge
from troubleshoot.knowledge.spoken import spoken


def trust_line(knowledge: Knowledge, fault: Fault) -> str:
    """A card's status, with who signed it and since when, or why it is no further."""
    told = spoken(fault.status)
    if fault.signed is None:
        return f"{told}: {fault.because}" if fault.because else told
    since = ", and changed since" if fault.id in knowledge.changed_since_signed else ""
    return f"{told} by {fault.signed.by} on {fault.signed.on}{since}"
