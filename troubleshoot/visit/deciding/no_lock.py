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
    return any(CANNOT_LOCK in outcome for outcome, _ in _of_the_switch(state))


def holds_a_lock(state: VisitState) -> bool:
    """Whether the unit's own switch was locked in this visit, and nothing else said since."""
    return [outcome for outcome, _ in _of_the_switch(state)] == [CONFIRMED[LOCKOUT]]


def _of_the_switch(state: VisitState) -> list[tuple[str, str]]:
    """What came of the switch itself since it was locked last, and in which words, the last first.

    Its lock is the last of them, where it was ever locked; a lock hung elsewhere is none of it.
    """
    found = []
    for asked in reversed(state.asked):
        if asked.test != LOCKOUT or not asked.valid or asked.nobody:
            continue
        is_locked = asked.outcome == CONFIRMED[LOCKOUT]
        if not (is_locked and asked.text):
            found.append((asked.outcome or "", asked.text or ""))
        if is_locked and not asked.text:
            break
    return found


def switch_tag(knowledge: Knowledge, state: VisitState) -> tuple[str, ...]:
    """What to write on the tag of a switch that cannot be locked off, a sentence a line."""
    if not has_no_lock(state):
        return ()
    told = next((words for _, words in _of_the_switch(state) if words), "")
    of_unit = f" of {state.name}" if state.name else ""
    return (
        f"This switch{of_unit} cannot be locked off: nobody reaches in behind it.",
        *((f'Reported: "{told}".',) if told else ()),
        NOT_TOLD,
        f"Only {removers(stopped_by(knowledge))} may remove this tag, once it opens and is locked.",
        HUNG_BY,
    )


def stopped_by(knowledge: Knowledge) -> Hazard:
    """The hazard that a switch without a lock calls up: it says who sees to it."""
    return next(
        hazard
        for hazard in knowledge.hazards.values()
        if any(each.test == LOCKOUT and CANNOT_LOCK in each.outcomes for each in hazard.findings)
    )
