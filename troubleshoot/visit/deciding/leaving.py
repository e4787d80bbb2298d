"""The way out of a visit: what is still to be proved, and the unit put back, step by step."""

from __future__ import annotations

from collections.abc import Sequence

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.safety.profiles import hand_over
from troubleshoot.safety.reaching import is_own_lock
from troubleshoot.safety.route import steps_to_leave, steps_to_leave_cold, steps_to_leave_off
from troubleshoot.safety.steps import ROOF, Step
from troubleshoot.visit.deciding.decision import Decision, to_do
from troubleshoot.visit.deciding.left_off import left_off_at, stays_cold
from troubleshoot.visit.deciding.proving import next_of_before, next_of_repair
from troubleshoot.visit.state import VisitState


def way_back(knowledge: Knowledge, state: VisitState, conclusions: Conclusions) -> Decision:
    """The next thing on the way back: leads on, panels on, clear, lock off, watch the start.

    What a danger that stands keeps off stays off: the unit locked out, the heat with its cock
    shut (`stays_cold`). A step beyond whoever closes up is handed over. Proofs of a repair read
    dead or behind an open panel come before it.
    """
    proving = next_of_repair(knowledge, state, conclusions, is_back=False)
    if proving := proving or next_of_before(knowledge, state):
        return proving
    off = left_off_at(knowledge, state, conclusions)
    way = steps_to_leave_cold if stays_cold(knowledge, state, off) else steps_to_leave
    steps = (steps_to_leave_off if off.unit else way)(state.work, state.at_work)
    if not steps or _stays_below(state, steps):
        last = next_of_repair(knowledge, state, conclusions, is_back=True)
        return last or Decision("ending")
    phrase = hand_over(knowledge.tests[steps[0].id], state.profiles)
    if phrase is not None and not is_own_lock(state, steps[0]):
        return Decision("ending", ending="left", handed_over=((steps[0].id, phrase),))
    return to_do(knowledge, state, steps[0])


def _stays_below(state: VisitState, steps: Sequence[Step]) -> bool:
    """Whether nothing was done and nothing is put back: nobody climbs a roof to close a visit."""
    return not (state.asked or state.repairs) and {step.id for step in steps} == {ROOF}
