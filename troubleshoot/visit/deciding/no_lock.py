"""A switch that cannot be locked off: an open item of the unit until its own lock has held.

A lock hung somewhere else makes the unit safe to work on and mends no switch.
"""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import CANNOT_LOCK, LOCKOUT
from troubleshoot.safety.stops.tags import HUNG_BY, NOT_TOLD, removers
from troubleshoot.visit.state import VisitState

SWITCH_LEFT: Final = "The switch was left as it is: it takes no lock, or does not open fully."


def has_no_lock(state: VisitState) -> bool:
    """Whether the unit's switch was found to take no lock, and has not held one since."""
    return switch_told(state) is not None


def holds_a_lock(state: VisitState) -> bool:
    """Whether the unit's own switch was locked in this visit, and nothing else said since."""
    said = _said_last(state)
    return said is not None and said[0] == CONFIRMED[LOCKOUT]


def switch_told(state: VisitState) -> str | None:
    """In which words it was told, empty for those of the step; None where it was not."""
    said = _said_last(state)
    return None if said is None or CANNOT_LOCK not in said[0].split(", ") else said[1]


def _said_last(state: VisitState) -> tuple[str, str] | None:
    """What came of the switch itself last, and in which words."""
    for asked in reversed(state.asked):
        elsewhere = asked.outcome == CONFIRMED[LOCKOUT] and asked.text
        if asked.test == LOCKOUT and asked.valid and not asked.nobody and not elsewhere:
            return asked.outcome or "", asked.text or ""
    return None


def switch_tag(knowledge: Knowledge, state: VisitState) -> tuple[str, ...]:
    """What to write on the tag of a switch that cannot be locked off, a sentence a line."""
    told = switch_told(state)
    if told is None:
        return ()
    of_unit = f" of {state.name}" if state.name else ""
    return (
        f"This switch{of_unit} cannot be locked off: nobody reaches in behind it.",
        *((f'Told: "{told}".',) if told else ()),
        NOT_TOLD,
        f"Only {removers(stopped_by(knowledge))} may remove this tag, once it opens and is locked.",
        HUNG_BY,
    )


def stopped_by(knowledge: Knowledge) -> Hazard:
    """The hazard that a switch without a lock calls up: it says who sees to it."""
    return next(
        hazard
        for hazard in knowledge.hazards.values()
        if any(each.test == LOCKOUT for each in hazard.findings)
    )
