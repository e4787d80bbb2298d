"""A unit that runs and was read to be one that may not: the stop is next, before any other test."""

from __future__ import annotations

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.safety.closed_ways import closed
from troubleshoot.safety.route import steps_to_leave_off
from troubleshoot.safety.steps import LOCKOUT, STOP_BY_CONTROLS
from troubleshoot.safety.stops.lifting import FOUND
from troubleshoot.safety.stops.standing import bans_of, tests_behind
from troubleshoot.visit.deciding.decision import Decision, to_do
from troubleshoot.visit.deciding.left_off import left_off
from troubleshoot.visit.state import VisitState

_STOPS = frozenset({STOP_BY_CONTROLS, LOCKOUT})


def stopped_now(
    knowledge: Knowledge, state: VisitState, conclusions: Conclusions
) -> Decision | None:
    """The next step to the stop, once for each reading that forbids to run what is running.

    What was read of one circuit stops the unit too; who calls the other again has been told.
    """
    off = left_off(conclusions)
    runs = state.work.power == "on" and state.work.calls == "on"
    if not runs or STOP_BY_CONTROLS in closed(state):
        return None
    if not any(_is_news(state, conclusions, fired) for fired in (*off.unit, *off.circuits)):
        return None
    steps = steps_to_leave_off(state.work, state.at_work)
    return to_do(knowledge, state, steps[0]) if steps else None


def _read_since_repair(state: VisitState) -> set[str]:
    """The tests read since the last repair; what was read before it is read afresh, not stopped."""
    return {answer.test for answer in state.answers if answer.repairs >= state.mended_here}


def _is_news(state: VisitState, conclusions: Conclusions, fired: FiredHazard) -> bool:
    """Whether a reading forbids to run, and the unit has not been stopped since it was taken."""
    forbids = any("running" in ban.work_states for ban in bans_of(fired.hazard))
    if not forbids or not any(atom.startswith(FOUND) for atom in fired.because):
        return False
    found = tests_behind(conclusions, fired) & _read_since_repair(state)
    last = next((each.test for each in reversed(state.asked) if each.test in found | _STOPS), None)
    return last in found
