"""What a number on the meter makes of a safety step: the worse outcome wherever it may be that."""

from __future__ import annotations

from dataclasses import replace

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.readings.readings import take_readings
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import Step
from troubleshoot.visit.events.places import step_place
from troubleshoot.visit.state import VisitState


def metered(knowledge: Knowledge, state: VisitState, step: Step, text: str) -> tuple[str, ...]:
    """The outcome of a step that reads `text`; empty where the number says nothing of it."""
    place = step_place(step, state.unit)
    case = replace(state.case, answers=(Answer(step.id, (), text, (place,)),))
    readings = take_readings(knowledge, case)[0]
    possible = next((r.possible for r in readings if r.test == step.id), frozenset())
    worse = sorted(possible - {CONFIRMED[step.id]})
    return tuple(worse[:1]) or tuple(possible)
