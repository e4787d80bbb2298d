"""What earlier visits found of a unit's switch: that it takes no lock, until it has held one."""

from __future__ import annotations

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.profiles import spoken
from troubleshoot.safety.stops.tags import removers
from troubleshoot.visit.deciding.no_lock import has_no_lock, holds_a_lock, stopped_by
from troubleshoot.visit.state import VisitState


def after_visit(
    knowledge: Knowledge, before: tuple[str, ...], visit: str, state: VisitState, ended: str
) -> tuple[str, ...]:
    """What is told of the switch after one more visit; nothing once it has held its own lock."""
    if holds_a_lock(state):
        return ()
    if not has_no_lock(state):
        return before
    day = f" on {ended[:10]}" if ended else ""
    return (
        f"The switch could not be locked off{day} by {spoken(state.profiles)}: it takes no lock, "
        f"or does not open fully (visit {visit}).",
        f"{removers(stopped_by(knowledge)).capitalize()} sees to it: nobody reaches in behind it.",
    )
