"""What a number on the meter makes of a safety step: the worse outcome wherever it may be that."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.readings.measuring import read_text
from troubleshoot.reasoning.readings.readings import take_readings
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.declared import CONFIRMED, STEPS

NO_NUMBER: Final = "only the number on the meter confirms it in a file"
NO_WORD: Final = "the number says only part of it; the word is wanted beside it"
NO_END: Final = "the number leaves open how far it goes; the one on the meter is wanted"
TOO_LITTLE: Final = (NO_NUMBER, NO_WORD, NO_END)
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


def leaves_open(knowledge: Knowledge, step: str, text: str) -> bool:
    """Whether a number has no end on the side that is worse: over 2 V, less than 20 ft."""
    worse = "less-than" if STEPS[step].number_says_part else "more-than"
    try:
        legs = read_text(knowledge.tests[step], text, knowledge).values
    except NotUnderstood:
        return False
    return any(leg.bound == worse or (leg.bound is not None and leg.value < 0) for leg in legs)


def too_little(knowledge: Knowledge, test: str, outcomes: Sequence[str], text: str | None) -> str:
    """Why a file that confirms a step with so much has not confirmed it; empty where it may have.

    A number of which the word says the rest has both, and is not asked about here.
    """
    step = STEPS.get(test)
    if step is None or tuple(outcomes) != (step.sound,):
        return ""
    if text and leaves_open(knowledge, test, text):
        return NO_END
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
    why = too_little(knowledge, test, said or read, text)
    if why and not (why == NO_WORD and said and read):
        return replace(answer, valid=False, why_invalid=why)
    return answer
