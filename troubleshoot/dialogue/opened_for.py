"""What a panel is opened live for: what judges its reading is asked while the panel is still on."""

from __future__ import annotations

from troubleshoot.knowledge.model import Test
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.unit.places import Place, like
from troubleshoot.safety.at_ports import as_read_on
from troubleshoot.safety.needs import OPEN_LIVE
from troubleshoot.safety.steps import OPENS
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.state import VisitState


def opened_for(
    decider: Decider, state: VisitState, conclusions: Conclusions, decision: Decision
) -> tuple[tuple[Test, Place | None], ...]:
    """The tests read live, and where, on the way to which a step takes the panel off."""
    if decision.step is None or decision.step.id not in OPENS or decision.aim is None:
        return ()
    name, at = decision.aim
    aim = decider.knowledge.tests[name]
    asked = decider.asking(state, conclusions).asks(aim, at, conclusions.values)
    each_once = {test.id: test for test in (*asked, aim)}.values()
    layout = state.unit.layout
    return tuple(
        (test, like(at, layout.places(test.per)))
        for test in each_once
        if as_read_on(test, state.at_work).work_state in OPEN_LIVE
    )
