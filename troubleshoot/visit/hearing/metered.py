"""What a number on the meter makes of a safety step: the worse outcome wherever it may be that."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.readings.readings import take_readings
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.declared import CONFIRMED, STEPS

NO_NUMBER: Final = "only the number on the meter confirms it in a file"
NO_WORD: Final = "the number says only part of it; the word is wanted beside it"
TOO_LITTLE: Final = (NO_NUMBER, NO_WORD)
"""Why a file's confirmation of a step counts for nothing."""


def metered(
    knowledge: Knowledge, case: Case, step: str, at: Place | None, text: str
) -> tuple[str, ...]:
    """The outcome of a step that reads `text`; empty where the number says nothing of it."""
    case = replace(case, answers=(Answer(step, (), text, (at,)),))
    readings = take_readings(knowledge, case)[0]
    possible = next((r.possible for r in readings if r.test == step), frozenset())
    worse = sorted(possible - {CONFIRMED[step]})
    return tuple(worse[:1]) or tuple(possible)


def too_little(test: str, outcomes: Sequence[str], text: str | None) -> str:
    """Why a file that confirms a step with so much has not confirmed it; empty where it may have.

    A number of which the word says the rest has both, and is not asked about here.
    """
    step = STEPS.get(test)
    if step is None or tuple(outcomes) != (step.sound,):
        return ""
    if step.metered and not text:
        return NO_NUMBER
    return NO_WORD if step.number_says_part and text else ""


def as_a_file_counts(knowledge: Knowledge, unit: Unit, answer: Answer) -> Answer:
    """An answer of a file: the worse of its word and its number; with too little, for nothing."""
    if answer.test not in CONFIRMED:
        return answer
    test, at, text, said = answer.test, answer.places[0], answer.text, answer.outcomes
    read = metered(knowledge, Case(unit), test, at, text) if text else ()
    worse = {*said, *read} - {CONFIRMED[test]}
    if said and worse - {*said}:
        return replace(answer, outcomes=tuple(sorted(worse)))
    why = "" if said and read else too_little(test, said or read, text)
    return replace(answer, valid=False, why_invalid=why) if why else answer
