"""What comes before an ending at an open unit of which nobody knows any more whether it is off.

Its lock was told to have gone, or others may have taken it off; whoever mends it has hands in next.
"""

from __future__ import annotations

from dataclasses import replace

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.closed_ways import closed
from troubleshoot.safety.profiles import hand_over
from troubleshoot.safety.route import LEAVING_OFF, steps_to
from troubleshoot.visit.deciding.decision import Decision, to_do
from troubleshoot.visit.state import VisitState


def locked_again(knowledge: Knowledge, state: VisitState) -> Decision | None:
    """The next step until an open unit is locked out again (29 CFR 1910.147, from memory).

    Nothing where the step is beyond whoever is asking, or failed each time.
    """
    work, unit = state.work, state.at_work
    if work.panels == "on" or work.power != "unsure":
        return None
    steps = steps_to(work, replace(LEAVING_OFF, fire_panel=unit.fire_panel), unit)
    if not steps or steps[0].id in closed(state):
        return None
    if hand_over(knowledge.tests[steps[0].id], state.profiles) is not None:
        return None
    return to_do(knowledge, state, steps[0])
