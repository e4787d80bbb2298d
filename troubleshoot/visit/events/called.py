"""What a unit is called for in a visit: a call not known to be for cooling may be for heat."""

from __future__ import annotations

from dataclasses import replace

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.needs import burns
from troubleshoot.safety.work_state import UnitAtWork
from troubleshoot.visit.state import VisitState


def unit_as_called(knowledge: Knowledge, state: VisitState) -> UnitAtWork:
    """The unit at work: called to cool where that is complained of and no burner is aimed at."""
    wanted = (knowledge.tests[spot[0]] for spot in (state.aim, state.fresh) if spot)
    if any(burns(test, test.work_state, state.at_work) for test in wanted):
        return replace(state.at_work, called_to_cool=False)
    return state.at_work
