"""What comes before hands do a repair that is about to be done: its safe state, step by step."""

from __future__ import annotations

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.before_repair import needs_of_repair
from troubleshoot.safety.closed_ways import closed
from troubleshoot.safety.profiles import hand_over
from troubleshoot.safety.reaching import is_own_lock
from troubleshoot.safety.route import steps_to
from troubleshoot.safety.steps import Step
from troubleshoot.visit.deciding.decision import Decision, to_do
from troubleshoot.visit.state import VisitState


def made_ready(knowledge: Knowledge, state: VisitState) -> Decision | None:
    """The next step until a repair may be done; None once it may, or where none leads there.

    A step beyond whoever is asking, or that failed each time, leads nobody on.
    """
    steps = steps_to_repair(knowledge, state)
    if not steps or steps[0].id in closed(state):
        return None
    phrase = hand_over(knowledge.tests[steps[0].id], state.profiles)
    if phrase is not None and not is_own_lock(state, steps[0]):
        return None
    return to_do(knowledge, state, steps[0])


def steps_to_repair(knowledge: Knowledge, state: VisitState) -> tuple[Step, ...]:
    """The steps that are still wanting before the repair that is about to be done."""
    if state.repair_wanted is None or state.repair_wanted[0] not in knowledge.faults:
        return ()
    fault, at = knowledge.faults[state.repair_wanted[0]], state.repair_wanted[1]
    needs = needs_of_repair(fault, state.at_work, at or None)
    return () if needs is None else steps_to(state.work, needs, state.at_work)
