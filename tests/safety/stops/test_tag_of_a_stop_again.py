"""A unit stopped again after somebody said that it was safe: its tag says who did."""

from __future__ import annotations

from dataclasses import replace

from tests.safety.stops.test_tags import BLANK, crack, start
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.safety.stops.record import HandOverResult, StopMet
from troubleshoot.safety.stops.tags import tag_lines
from troubleshoot.visit.events import replay


def test_who_said_that_it_was_safe_stands_on_the_tag_of_that_danger_alone(
    shipped: Knowledge,
) -> None:
    """Whoever finds it stopped again knows whom to ask, and that their word was not enough."""
    first, last = (
        HandOverResult(by, "replaced it", "0 ppm", f"2026-11-26 1{n}:30", who)
        for n, (by, who) in enumerate((("gas-utility", ""), ("gas-fitter", "crew 4, badge 77")))
    )
    state = replay(shipped, [start(), crack()])
    conclusions = conclude_visit(Reasoner(shipped), state)
    fired = next(f for f in conclusions.hazards if f.hazard.id == "heat-exchanger-breach")

    def said_safe(*stops: StopMet) -> list[str]:
        lines = tag_lines(shipped, replace(state, stops=stops), conclusions, fired)
        assert lines[-2].startswith("Only ") and lines[-1] == BLANK
        return [line for line in lines[:-2] if line.startswith("Said")]

    breach, other = "heat-exchanger-breach", "gas-valve-does-not-close"
    utility = "Said to be made safe by the gas utility, 2026-11-26 10:30."
    fitter = 'Said to be made safe by a licensed gas fitter ("crew 4, badge 77"), 2026-11-26 11:30.'
    assert said_safe() == said_safe(StopMet(breach, 0)) == []
    assert said_safe(StopMet(breach, 0, result=first)) == [utility]
    assert said_safe(StopMet(breach, 0, result=first), StopMet(breach, 0, result=last)) == [fitter]
    assert said_safe(StopMet(other, 0, result=first)) == []
    assert said_safe(StopMet(breach, 0, result=first), StopMet(other, 0, result=last)) == [utility]
