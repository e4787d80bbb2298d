"""Whether what was typed for the proof of a repair says that it was read, and that it is right.

A number counts in the proof's own units, and is judged where the proof has a test with limits;
words count where they are of the sound outcome, or of the proof itself. What says neither proves
nothing.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import Final

from troubleshoot.knowledge.model import Fault, Knowledge, Proof, Test
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.quantities.units import unit
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.readings.measuring import read_text
from troubleshoot.reasoning.readings.not_judged import missing_for
from troubleshoot.reasoning.readings.readings import outcomes_of, take_readings
from troubleshoot.reasoning.readings.values import Values
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.safety.stops.no_result import why_no_look
from troubleshoot.safety.stops.shown import is_in, numbers_in, own_units
from troubleshoot.visit.hearing.legs_read import (
    are_apart,
    are_judged_by_its_text,
    legs_in,
    legs_missing,
)
from troubleshoot.visit.hearing.proof_words import (
    SAYS_NOTHING,
    by_words,
    goes_out,
    tells_the_complaint,
)
from troubleshoot.visit.state import VisitState

NOT_READ: Final = "that does not say that it was read"
NOT_RIGHT: Final = "that is not as it has to be"
NOT_JUDGED: Final = "not judged: it lies in none of its limits, so read it again"
READ_BUT_BAD: Final = "read, and not as it has to be"
WANTS_A_READING: Final = "for want of a sound reading"
A_LEG_MISSING: Final = "not every leg is told that it asks for"

_NOTHING_READ: Final = re.compile(
    r"\b(?:can ?(?:no|')?t|couldn'?t|didn'?t|haven'?t|won'?t|dunno|idk|no (?:idea|clue|power)"
    r"|(?:do not|don'?t) know|not (?:sure|yet|now|read|taken|checked|measured|tested|done|able)"
    r"|unknown|later|tomorrow|tonight|tmrw?|tmw|locked ?out|panels? off|power off|n/a|forgot|skip"
    r"|i (?:think|guess))\b"
)
_OFF_A_METER: Final = frozenset({
    "voltage", "current", "capacitance", "resistance", "gauge pressure", "pressure difference",
})  # fmt: skip
"""What nobody tells without the number that a meter or gauge shows."""


def proofs_on(knowledge: Knowledge, on: Unit, fault: Fault) -> tuple[Proof, ...]:
    """The proofs of a repair that there are on this unit, as far as it is known."""
    return tuple(
        proof
        for proof in fault.proof
        if on.allows(proof.exists_when)
        and (not proof.finding or on.allows(knowledge.tests[proof.finding.test].exists_when))
    )


def why_unproved(
    knowledge: Knowledge,
    on: Unit,
    proof: Proof,
    typed: str,
    complaint: str | None = None,
    values: Values | None = None,
) -> str:
    """Why an answer does not prove this; empty where it does.

    `complaint`: what was called in. `values`: what is known in numbers besides the unit's plate.
    """
    said = typed.lower().replace("\u2019", "'")
    if not said.strip() or _NOTHING_READ.search(said) or why_no_look(typed):
        return NOT_READ
    units = _units(knowledge, proof)
    legs = legs_in(knowledge, on, proof, typed)
    known = values or Values(knowledge, on, {})
    judged = [*_judged(knowledge, known, proof, units, typed)]
    words = by_words(knowledge, proof, said)
    if False in judged or words is False or are_apart(knowledge, proof, legs):
        return NOT_RIGHT
    if tells_the_complaint(knowledge, complaint, said) or goes_out(proof, said):
        return NOT_RIGHT
    if legs_missing(on, proof, legs):
        return A_LEG_MISSING
    if True in judged or are_judged_by_its_text(proof, legs):
        return ""
    wants_a_number = _wants_a_number(knowledge, proof, units)
    if words and not wants_a_number and not _is_of_other_units(knowledge, units, typed):
        return ""
    if judged:
        return _why_not_judged(knowledge, known, proof)
    return f"that is no reading in {_spoken(units)}" if units else NOT_READ


def _why_not_judged(knowledge: Knowledge, values: Values, proof: Proof) -> str:
    """What is missing to judge a number that was read for a proof."""
    assert proof.finding is not None
    test = knowledge.tests[proof.finding.test]
    missing = missing_for(test, values)
    return f"not judged, for want of: {', '.join(missing)}" if missing else NOT_JUDGED


def unproved(
    knowledge: Knowledge, state: VisitState, fault: Fault, read: Mapping[str, str]
) -> dict[str, str]:
    """What was to be read after a repair and is not proved, and why.

    `read`: what was typed for each.
    """
    on, complaint = state.unit, state.complaint
    _, values = take_readings(knowledge, state.case)
    found = {
        proof.text: why_unproved(knowledge, on, proof, read.get(proof.text, ""), complaint, values)
        for proof in proofs_on(knowledge, on, fault)
    }
    return {what: why for what, why in found.items() if why}


def lacking_of(knowledge: Knowledge, state: VisitState) -> dict[str, str]:
    """What is not proved of the repair that was said last, and why; empty without a repair."""
    if not state.repairs:
        return {}
    said = state.repairs[-1]
    return unproved(knowledge, state, knowledge.faults[said.fault], dict(said.proofs))


def is_read_bad(knowledge: Knowledge, state: VisitState) -> bool:
    """Whether a proof of the last repair was read, and is not as it has to be."""
    return NOT_RIGHT in lacking_of(knowledge, state).values()


def lacking_lines(knowledge: Knowledge, state: VisitState) -> tuple[str, ...]:
    """What is not proved of the last repair: read and not right, or not read."""
    lacking = lacking_of(knowledge, state)
    bad = "; ".join(what for what, why in lacking.items() if why == NOT_RIGHT)
    unread = "; ".join(what for what, why in lacking.items() if why != NOT_RIGHT)
    found = ((READ_BUT_BAD, bad), (WANTS_A_READING, unread))
    return tuple(f"{words}: {texts}" for words, texts in found if texts)


def _wants_a_number(knowledge: Knowledge, proof: Proof, units: tuple[str, ...]) -> bool:
    """Whether a proof is right by the limits of a meter or gauge alone, so that words say nothing.

    Where it is right that there is none, words may say so.
    """
    if proof.finding is None or "none" in proof.finding.outcomes:
        return False
    outcomes = knowledge.tests[proof.finding.test].outcomes
    sound = (outcome for outcome in outcomes if outcome.id in proof.finding.outcomes)
    by_limits = any(outcome.limits for outcome in sound)
    return by_limits and any(unit(each).kind in _OFF_A_METER for each in units)


def _units(knowledge: Knowledge, proof: Proof) -> tuple[str, ...]:
    """The units in which a proof is read: those of its test, else those its text names."""
    if proof.finding is not None and knowledge.tests[proof.finding.test].reads:
        return own_units(knowledge, knowledge.tests[proof.finding.test])
    words = proof.text.replace(",", " ").split()
    named = [f"1 {word}" for word in words if word not in SAYS_NOTHING]
    return tuple(u for u in _all_units(knowledge) if any(is_in(text, u) for text in named))


def _all_units(knowledge: Knowledge) -> tuple[str, ...]:
    """Every unit in which people give a number of something; counts have none."""
    known = dict.fromkeys(quantity.unit for quantity in knowledge.quantities.values())
    return tuple(each for each in known if unit(each).spoken)


def _judged(
    knowledge: Knowledge, values: Values, proof: Proof, units: tuple[str, ...], typed: str
) -> Iterator[bool | None]:
    """Whether each number in the proof's own units is right; None where too little is known.

    Where the rules know what is right in words alone, a number that tells nothing bad is.
    """
    test = None if proof.finding is None else knowledge.tests[proof.finding.test]
    if test is None or proof.finding is None or not test.reads:
        legs = legs_in(knowledge, values.unit, proof, typed)
        if proof.finding is not None and "none" in proof.finding.outcomes:
            yield from (
                _is_nought(number) for number, _ in numbers_in(typed, _all_units(knowledge))
            )
        elif len(legs) > 1:
            yield True
        else:
            yield from (True for _ in numbers_in(typed, units))
        return
    try:
        read_text(test, typed, knowledge)
        texts = [typed]
    except NotUnderstood:
        texts = [number for number, _ in numbers_in(typed, units)]
    sound = {*proof.finding.outcomes}
    is_by_words = not any(o.limits for o in test.outcomes if o.id in sound)
    for text in texts:
        seen = _seen(knowledge, values, test, text)
        if not seen and is_by_words:
            yield True
        elif not seen or ({True, False} <= {each <= sound for each in seen}):
            yield None
        else:
            yield all(each <= sound for each in seen)


def _seen(
    knowledge: Knowledge, values: Values, test: Test, text: str
) -> tuple[frozenset[str], ...]:
    """What a number comes to wherever on the unit it may have been read and can be judged."""
    answer = Answer(test.id, text=text, places=(None,))
    places = dict.fromkeys((None, *values.unit.layout.places(test.per)))
    found = (frozenset(outcomes_of(knowledge, answer, place, values)) for place in places)
    return tuple(dict.fromkeys(each for each in found if each))


def _is_nought(number: str) -> bool:
    """Whether a number is plainly none of what was looked for."""
    return re.fullmatch(r"0+(?:\.0+)?(?:\D.*)?", number) is not None


def _is_of_other_units(knowledge: Knowledge, units: tuple[str, ...], typed: str) -> bool:
    """Whether the only numbers are in units of another quantity, where a reading is wanted."""
    others = tuple(each for each in _all_units(knowledge) if each not in units)
    return bool(units) and any(True for _ in numbers_in(typed, others))


def _spoken(units: tuple[str, ...]) -> str:
    return " or ".join(dict.fromkeys(unit(each).spoken for each in units))
