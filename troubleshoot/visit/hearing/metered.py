"""What a number on the meter makes of a safety step: the worse outcome wherever it may be that."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.readings.readings import take_readings
from troubleshoot.safety.declared import CONFIRMED, STEPS
from troubleshoot.safety.steps import Step
from troubleshoot.visit.events.places import step_place
from troubleshoot.visit.state import VisitState

NO_NUMBER: Final = "only the number on the meter confirms it in a file"


def metered(knowledge: Knowledge, state: VisitState, step: Step, text: str) -> tuple[str, ...]:
    """The outcome of a step that reads `text`; empty where the number says nothing of it."""
    place = step_place(step, state.unit)
    case = replace(state.case, answers=(Answer(step.id, (), text, (place,)),))
    readings = take_readings(knowledge, case)[0]
    possible = next((r.possible for r in readings if r.test == step.id), frozenset())
    worse = sorted(possible - {CONFIRMED[step.id]})
    return tuple(worse[:1]) or tuple(possible)


def lacks_its_number(test: str, outcomes: Sequence[str], text: str | None) -> bool:
    """Whether a file says of a step that it is confirmed, without the number that confirms it."""
    step = STEPS.get(test)
    return step is not None and step.metered and not text and tuple(outcomes) == (step.sound,)


def as_a_file_counts(answer: Answer) -> Answer:
    """An answer of a file; what lacks the number that confirms it counts for nothing."""
    if not lacks_its_number(answer.test, answer.outcomes, answer.text):
        return answer
    return replace(answer, valid=False, why_invalid=NO_NUMBER)
