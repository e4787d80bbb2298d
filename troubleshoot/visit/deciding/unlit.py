"""What comes next after a call for heat that gave no steady flame: the cock and the purge."""

from __future__ import annotations

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.closed_ways import closed
from troubleshoot.safety.profiles import hand_over
from troubleshoot.safety.route import LEAVING_COLD, steps_to
from troubleshoot.safety.steps import NO_FLAME, RESTART
from troubleshoot.visit.deciding.decision import Decision, to_do
from troubleshoot.visit.state import VisitState


def purged_first(knowledge: Knowledge, state: VisitState) -> Decision | None:
    """The next step until the gas of the last call is waited out, whatever is read or asked next.

    Nothing while that is read for which the call was made, and which shows in the trial alone; nor
    where the step is beyond whoever is asking, or failed each time.
    """
    work, unit = state.work, state.at_work
    if not (work.unburnt and unit.burns_gas and _gave_no_flame(state)):
        return None
    if state.aim is not None and knowledge.tests[state.aim[0]].in_trial:
        return None
    steps = steps_to(work, LEAVING_COLD, unit)
    if not steps or steps[0].id in closed(state):
        return None
    if hand_over(knowledge.tests[steps[0].id], state.profiles) is not None:
        return None
    return to_do(knowledge, state, steps[0])


def _gave_no_flame(state: VisitState) -> bool:
    """Whether the last call came to no steady flame."""
    calls = (each for each in reversed(state.asked) if each.test == RESTART and each.valid)
    last = next(calls, None)
    return last is not None and NO_FLAME in (last.outcome or "").split(", ")
