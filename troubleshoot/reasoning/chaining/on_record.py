"""STOPs that stand because a record says so, where nothing that is understood calls them up.

After a change of the rules the finding behind a recorded STOP may have no name any more, or the
danger itself. The STOP stands all the same: for the whole job, and no finding lifts it.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from troubleshoot.knowledge.model import Hazard, Knowledge, Stop

ON_RECORD: Final = "on-record"
"""The atom that stands for the record itself as the reason of a STOP."""


def hazard_on_record(knowledge: Knowledge, name: str) -> Hazard:
    """A hazard as today's rules have it, or what can be said of one that they do not have."""
    words = knowledge.spoken(name)
    return knowledge.hazards.get(name) or Hazard(
        id=name,
        signal="DANGER",
        what_to_do=f"The work was stopped for a danger that today's rules do not name: {words}. "
        "Do not go on. Keep everybody away from the unit, and hand the job over.",
        stop=Stop("whole-job", words),
        defer_to="the supervisor, who finds out who is licensed for it",
        tag=f"Do not start: the work was stopped for {words}.",
        spoken=words,
    )


def stopping(knowledge: Knowledge, name: str) -> Hazard:
    """A hazard whose STOP is for the whole job, whatever today's rules say of its scope."""
    hazard = hazard_on_record(knowledge, name)
    covers = hazard.spoken if hazard.stop is None else hazard.stop.covers
    return replace(hazard, stop=Stop("whole-job", covers))
