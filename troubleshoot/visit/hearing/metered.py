"""What a number on the meter makes of a safety step: the worse outcome wherever it may be that."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.quantities.units import unit
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.readings.measuring import read_text
from troubleshoot.reasoning.readings.readings import take_readings
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.declared import CONFIRMED, STEPS
from troubleshoot.safety.estimates import is_estimate
from troubleshoot.safety.steps import DEAD_TEST
from troubleshoot.visit.hearing.one_a_leg import A_RANGE, OF_NO_LEG, OF_THE_LIST, unclear_legs

NO_NUMBER: Final = "only the number on the meter confirms it in a file"
NO_WORD: Final = "the number says only part of it; the word is wanted beside it"
NO_END: Final = "the number leaves open how far it goes; the one on the meter is wanted"
ABOUT: Final = "it is told as about so much; the number on the meter itself is wanted"
ALTERNATING: Final = (
    "a stored charge is direct current, of which a meter on AC shows near nothing; the number read "
    "on DC is wanted"
)
DIRECT: Final = (
    "line volts are alternating current, of which a meter on DC shows near nothing; the number "
    "read on AC is wanted"
)
COARSE: Final = (
    "a display in kilovolts shows nothing of a few volts; the number read in volts is wanted"
)
BELOW_ZERO: Final = (
    "there is no gas below zero, so the instrument was not zeroed in clean air; the number read "
    "once it is zeroed there is wanted"
)
SIGNED: Final = "alternating current has no sign; the number on the meter is wanted"
TOO_LITTLE: Final = (
    *(NO_NUMBER, NO_WORD, NO_END, ABOUT, ALTERNATING, DIRECT, COARSE, BELOW_ZERO, SIGNED),
    *(A_RANGE, OF_THE_LIST, OF_NO_LEG),
)
"""Why a file's confirmation of a step counts for nothing."""

_ON_AC: Final = re.compile(
    r"(?<![a-z])(?:[mk]?v|volts?)?[ .-]*a\.? ?c\b|(?<![a-z])acv\b|\balternating\b", re.IGNORECASE
)
_ON_DC: Final = re.compile(
    r"(?<![a-z])(?:[mk]?v|volts?)?[ .-]*d\.? ?c\b|(?<![a-z])dcv\b|\bdirect\b", re.IGNORECASE
)
_MINUS: Final = re.compile(r"(?<![\w.])[-\u2010-\u2013\u2212] ?\.?[0-9]")
_OF_GAS: Final = frozenset({"share of explosive limit", "concentration"})
_IN_KILOVOLTS: Final = re.compile(r"(?<![a-z])k(?:ilo)? ?v", re.IGNORECASE)


def metered(
    knowledge: Knowledge, case: Case, step: str, at: Place | None, text: str
) -> tuple[str, ...]:
    """The outcome of a step that reads `text`; empty where the number says nothing of it."""
    possible = may_show(knowledge, case, step, at, text)
    worse = sorted(possible - {CONFIRMED[step]})
    return tuple(worse[:1]) or tuple(possible)


def may_show(
    knowledge: Knowledge, case: Case, test: str, at: Place | None, text: str
) -> frozenset[str]:
    """The outcomes of a test that what was read may be, taken alone."""
    case = replace(case, answers=(Answer(test, (), text, (at,)),))
    readings = take_readings(knowledge, case)[0]
    return next((r.possible for r in readings if r.test == test), frozenset())


def no_proof(knowledge: Knowledge, step: str, number: str, said: str) -> str:
    """Why a sound number, told in so many words, proves nothing; empty where it does."""
    if _leaves_open(knowledge, step, number):
        return NO_END
    if is_estimate(said):
        return ABOUT
    if _IN_KILOVOLTS.search(said):
        return COARSE
    if _reads_gas(knowledge, step) and _MINUS.search(said):
        return BELOW_ZERO
    if step == DEAD_TEST and _MINUS.search(said):
        return SIGNED
    if _proves_dead(step) and (why := unclear_legs(said, len(knowledge.tests[step].outcomes))):
        return why
    on_ac, on_dc = _ON_AC.search(said) is not None, _ON_DC.search(said) is not None
    if STEPS[step].metered and on_ac and not on_dc:
        return ALTERNATING
    return DIRECT if step == DEAD_TEST and on_dc and not on_ac else ""


def _proves_dead(step: str) -> bool:
    """Whether hands go in on the volts that it reads."""
    return step == DEAD_TEST or STEPS[step].metered


def _reads_gas(knowledge: Knowledge, step: str) -> bool:
    quantities = (knowledge.quantities[one.quantity] for one in knowledge.tests[step].reads)
    return any(unit(quantity.unit).kind in _OF_GAS for quantity in quantities)


def _leaves_open(knowledge: Knowledge, step: str, text: str) -> bool:
    """Whether a number has no end on the side that is worse, or none that is sound.

    Over 2 V, less than 20 ft; less than 10 V may be 10, which is the limit and not the meter's. Of
    volts on which hands go in no bound is a number on a meter.
    """
    worse = "less-than" if STEPS[step].less_is_worse else "more-than"
    try:
        typed = read_text(knowledge.tests[step], text, knowledge)
    except NotUnderstood:
        return False
    if any(leg.bound == worse or (leg.bound and leg.value < 0) for leg in typed.values):
        return True
    if typed.bounded and _proves_dead(step):
        return True
    sound = (CONFIRMED[step],)
    return (
        typed.bounded and metered(knowledge, Case(Unit()), step, None, typed.at_its_ends) != sound
    )


def too_little(knowledge: Knowledge, test: str, outcomes: Sequence[str], text: str | None) -> str:
    """Why a file that confirms a step with so much has not confirmed it; empty where it may have.

    A number of which the word says the rest has both, and is not asked about here.
    """
    step = STEPS.get(test)
    if step is None or tuple(outcomes) != (step.sound,):
        return ""
    if text and (why := no_proof(knowledge, test, text, text)):
        return why
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
