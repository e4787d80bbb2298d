"""What halts the work, of the shipped rules: which outcomes do, how widely, and in which words."""

from __future__ import annotations

from troubleshoot.knowledge.model import Hazard, Knowledge

WHOLE_JOB, UNTIL_SAFE = "whole-job", "until-made-safe"
HALTS = (WHOLE_JOB, UNTIL_SAFE)
DEAD = "verified-dead"
METER_PROOF = "tester-proof"
"""The proof right after a test for dead belongs to it (NFPA 70E 120.5, from memory)."""


def halting(knowledge: Knowledge) -> dict[tuple[str, str], str]:
    """(test, outcome) -> the widest scope of the STOPs that it calls up by itself, on any unit."""
    found: dict[tuple[str, str], str] = {}
    for hazard in knowledge.hazards.values():
        if scope_of(hazard) not in HALTS:
            continue
        for trigger in hazard.triggers:
            alone = len(trigger.findings) == 1 and not (
                trigger.as_taken or trigger.complaint or trigger.fault or trigger.test
                or trigger.work_state or trigger.exposes or trigger.profile or trigger.equipment
            )  # fmt: skip
            for outcome in trigger.findings[0].outcomes if alone else ():
                spot = (trigger.findings[0].test, outcome)
                if found.get(spot) != WHOLE_JOB:
                    found[spot] = scope_of(hazard)
    return found


def says(words: str, hazard: Hazard) -> bool:
    """Whether a person says a phrase of a hazard, endings aside: any of them, all its words."""
    said = words.lower()
    return any(all(w[:4] in said for w in phrase.lower().split()) for phrase in hazard.words)


def scope_of(hazard: Hazard) -> str:
    return "" if hazard.stop is None else hazard.stop.scope
