"""A way through a drawn case that is short enough to learn from.

Where the engine's own visit is too long to copy, an old hand goes by the readings that weigh most.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from troubleshoot.knowledge.vocabulary import Need
from troubleshoot.practice.answering import AnsweringUnit
from troubleshoot.practice.expert import ExpertPath, NoWayThere, expert_path
from troubleshoot.practice.scenario import Scenario
from troubleshoot.practice.worth_copying import MOST_MINUTES, too_long, unworthy
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.unit.places import Place

MOST_TRIED: Final = (2, 4, 6)
"""So many of the readings that weigh most are tried as the way, the fewest first."""
_OPENED: Final[Need] = "charge-recovered"


def short_way(
    reasoner: Reasoner, scenario: Scenario, expert: ExpertPath
) -> tuple[Scenario, ExpertPath] | None:
    """The case with a way that an apprentice can copy; None where there is none.

    The engine's own visit serves where it is short.
    """
    if not too_long(expert):
        return scenario, expert
    telling = _telling(reasoner, scenario)
    for most in dict.fromkeys(min(most, len(telling)) for most in MOST_TRIED if telling):
        tried = replace(scenario, way=telling[:most])
        try:
            way = expert_path(reasoner, tried, AnsweringUnit(reasoner, tried))
        except NoWayThere:
            continue
        if not any(unworthy(reasoner.knowledge, tried, way)):
            return tried, way
        if way.minutes > MOST_MINUTES:  # and more readings take longer
            return None
    return None


def _telling(reasoner: Reasoner, scenario: Scenario) -> tuple[tuple[str, Place | None], ...]:
    """The tests that speak most for what is true on this unit, the strongest first.

    Nobody recovers a charge to learn one thing.
    """
    (true,) = scenario.truth.faults
    whole = reasoner.conclude(scenario.case)
    cause = next(c for c in whole.causes if (c.fault.id, c.at) == (true.fault, true.at))
    weights = sorted(cause.weights, key=lambda weight: -weight.weight)
    found = (spot for weight in weights if weight.weight > 0 for spot in weight.tests)
    tests = reasoner.knowledge.tests
    return tuple(
        (name, at)
        for name, at in dict.fromkeys(found)
        if name in tests and tests[name].kind not in ("step", "input")
        if _OPENED not in tests[name].needs_state
        if name not in scenario.unavailable
    )
