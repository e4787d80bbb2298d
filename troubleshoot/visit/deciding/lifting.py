"""The way to the fresh finding that may lift a STOP, as what comes next in a visit."""

from __future__ import annotations

from dataclasses import replace

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.safety.stops.afresh import way_to_lifting
from troubleshoot.visit.deciding.decision import Decision, to_ask, to_do
from troubleshoot.visit.state import VisitState

LIFTS = "only this finding, taken afresh, lifts the STOP"


def towards_lifting(
    knowledge: Knowledge, state: VisitState, conclusions: Conclusions, told: FiredHazard
) -> Decision | None:
    """The next thing on the way to the finding being taken afresh; none where it may not be.

    `told`: the STOP to be told of, though the finding may be that of another.
    """
    found = way_to_lifting(knowledge, state, conclusions, told)
    if found is None:
        return None
    stop, way = found
    if way.steps or way.reading is None:
        decision = to_do(knowledge, state, way.steps[0])
    else:
        test, at = way.reading
        decision = to_ask(knowledge, state, knowledge.tests[test], at)
    return replace(decision, aim=way.finding, reason=LIFTS, stop=stop)
