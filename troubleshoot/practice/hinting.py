"""What the expert would do next: the next test of a written way, or the engine's own choice."""

from __future__ import annotations

from troubleshoot.practice.scenario import Scenario
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.unit.places import spoken
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Aimed
from troubleshoot.visit.state import VisitState


def experts_next(
    decider: Decider, scenario: Scenario, state: VisitState, conclusions: Conclusions
) -> Decision:
    """The decision of an expert who takes over as the visit stands."""
    read = {(reading.test, reading.at) for reading in conclusions.readings}
    ahead = next((spot for spot in scenario.way if spot not in read), None)
    if ahead is not None:
        name, at = ahead
        state = Aimed(name, spoken(at), chosen=True).apply(decider.knowledge, state)
    return decider.decide(state, conclusions)
