"""The places that the words of an event name on the unit of its visit."""

from __future__ import annotations

from troubleshoot.knowledge.model import Test
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.places import Place, parse_place
from troubleshoot.safety.steps import Step
from troubleshoot.safety.stops.record import Spot

At = str | tuple[str, ...] | None
"""Where an event happened, in words: at one place, at several, or wherever there is one."""


def places_from(at: At, kind: str | None, unit: Unit) -> tuple[Place | None, ...]:
    """The places of an event; without any, those of the kind."""
    if at is None:
        return unit.layout.places(kind) or (None,)
    named = (at,) if isinstance(at, str) else at
    return tuple(place for each in named for place in parse_place(each, kind, unit.layout))


def spot_of(test: Test, at: str | None, unit: Unit) -> Spot:
    """A finding: a test at the place that is named, or at none."""
    return test.id, None if at is None else parse_place(at, test.per, unit.layout)[0]


def step_place(step: Step, unit: Unit) -> Place | None:
    """The place of the unit that a step's words name; None where they name none of its tree."""
    for kind, _ in unit.layout.counts:
        for place in unit.layout.places(kind):
            if str(place) == step.place:
                return place
    return None


def unless_reached(spot: Spot | None, answered: str) -> Spot | None:
    """What is aimed at is reached when its own test is answered, not by what leads on to it."""
    return None if is_reached(spot, answered) else spot


def is_reached(spot: Spot | None, answered: str) -> bool:
    """Whether what is aimed at is the test that was answered."""
    return spot is not None and spot[0] == answered
