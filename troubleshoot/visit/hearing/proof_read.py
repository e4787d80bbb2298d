"""Whether what was typed for the proof of a repair says that it was read, and that it is right.

A number counts in the proof's own units, and is judged where the proof has a test with limits;
words count where they are of the sound outcome, or of the proof itself. What says neither proves
nothing, nor does what leaves out how often, its limit or the number of before that a proof asks.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from troubleshoot.knowledge.model import Fault, Knowledge, Proof
from troubleshoot.outside.text import as_said
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.quantities.units import unit
from troubleshoot.reasoning.readings.measuring import read_text
from troubleshoot.reasoning.readings.readings import take_readings
from troubleshoot.reasoning.readings.values import Values
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.visit.hearing.legs_read import (
    are_apart,
    are_judged_by_its_text,
    legs_in,
    legs_missing,
    pairs_missing,
)
from troubleshoot.visit.hearing.proof_asks import (
    both_told,
    has_changed,
    is_compared,
    is_counted,
    is_within,
    tells_enough,
)
from troubleshoot.visit.hearing.proof_computed import computed_since
from troubleshoot.visit.hearing.proof_numbers import (
    is_of_other_units,
    judged,
    units_of,
    wants_a_number,
    why_not_judged,
)
from troubleshoot.visit.hearing.proof_others import bad_of_others
from troubleshoot.visit.hearing.proof_told import (
    NOT_OF_NOW,
    NOT_READ,
    is_later_try,
    why_nothing_read,
)
from troubleshoot.visit.hearing.proof_words import by_words, goes_out, tells_the_complaint
from troubleshoot.visit.hearing.proofs_wanted import proofs_today
from troubleshoot.visit.hearing.static_read import across_the_unit
from troubleshoot.visit.hearing.told_beside import told_beside
from troubleshoot.visit.state import VisitState

NOT_RIGHT: Final = "that is not as it has to be"
READ_BUT_BAD: Final = "read, and not as it has to be"
WANTS_A_READING: Final = "for want of a sound reading"
A_LEG_MISSING: Final = "not every leg is told that it asks for"
_DEAD: Final = frozenset({"locked-closed", "locked-out", "proved-dead"})
NOT_COUNTED: Final = "how often it was done is not told, or not as often as it asks for"
NO_LIMIT: Final = "the limit that it has to be within is not told beside it"
NO_BEFORE: Final = "what it was before the repair is not told beside it"


def why_unproved(
    knowledge: Knowledge,
    on: Unit,
    proof: Proof,
    typed: str,
    complaint: str | None = None,
    values: Values | None = None,
    before: float | None = None,
    per: str | None = None,
) -> str:
    """Why an answer does not prove this; empty where it does.

    `complaint`: what was called in. `values`: what is known in numbers besides the unit's plate.
    `before`: what the proof's own test read before the repair. `per`: the kind of place that was
    repaired.
    """
    compared, test = is_compared(knowledge, proof), knowledge.read_by(proof)
    typed = (across_the_unit(test, typed) if test else None) or typed
    known, typed = told_beside(knowledge, values or Values(knowledge, on, {}), proof, typed)
    dead = test is not None and test.work_state in _DEAD
    why = why_nothing_read(proof, typed, is_compared=compared, is_read_dead=dead)
    if why != NOT_OF_NOW and any(True for _ in bad_of_others(knowledge, known, proof, typed)):
        return NOT_RIGHT
    if why:
        return why
    said = as_said(typed)
    both = both_told(said) if compared else None
    read = typed if both is None else both[0]
    was = before if both is None else _largest(knowledge, proof, both[1])
    now = _largest(knowledge, proof, read) if compared else None
    legs = legs_in(knowledge, on, proof, read)
    found = [*judged(knowledge, known, proof, read, per)]
    words = by_words(knowledge, proof, said)
    counted, within = is_counted(knowledge, proof, said), is_within(knowledge, proof, said)
    if False in (*found, words, counted, within) or are_apart(knowledge, proof, legs):
        return NOT_RIGHT
    if (
        tells_the_complaint(knowledge, complaint, said)
        or goes_out(proof, said)
        or is_later_try(proof, said)
    ):
        return NOT_RIGHT
    if now is not None and was is not None and not has_changed(proof, now, was):
        return NOT_RIGHT
    if legs_missing(on, proof, legs) or (legs and pairs_missing(knowledge, proof, legs)):
        return A_LEG_MISSING
    is_told = True in found or are_judged_by_its_text(proof, legs) or tells_enough(proof, said)
    in_words = words and not wants_a_number(knowledge, proof)
    if is_told or (in_words and not is_of_other_units(knowledge, proof, typed)):
        if counted is None or within is None:
            return NOT_COUNTED if counted is None else NO_LIMIT
        return NO_BEFORE if now is not None and was is None else ""
    if found:
        return why_not_judged(knowledge, known, proof)
    units = dict.fromkeys(unit(each).spoken for each in units_of(knowledge, proof))
    return f"that is no reading in {' or '.join(units)}" if units else NOT_READ


def _largest(knowledge: Knowledge, proof: Proof, typed: str) -> float | None:
    """The largest number that was read by a proof's own test; None where none was."""
    assert proof.finding is not None
    test = knowledge.tests[proof.finding.test]
    try:
        return max(leg.value for leg in read_text(test, typed, knowledge).values)
    except NotUnderstood:
        return None


def _before(knowledge: Knowledge, state: VisitState, fault: Fault, proof: Proof) -> float | None:
    """What the test of a proof that compares read last before the repair."""
    if not is_compared(knowledge, proof) or proof.finding is None:
        return None
    since = next((said.answers for said in state.repairs[::-1] if said.fault == fault.id), 0)
    texts = (
        answer.text
        for answer in reversed(state.answers[:since])
        if answer.test == proof.finding.test and answer.text and answer.valid is not False
    )
    return next((_largest(knowledge, proof, text) for text in texts), None)


def _read_since(knowledge: Knowledge, state: VisitState, fault: Fault, proof: Proof) -> str:
    """What the test of a proof has read since the repair.

    At the place where it had been read before it, or at the only one there is, so that it is a
    reading of what was repaired; empty for nothing, and where a STOP was met: what lifts that is
    one thing, what proves its repair another.
    """
    since = next((said.answers for said in state.repairs[::-1] if said.fault == fault.id), None)
    if since is None or proof.finding is None or state.stops:
        return ""
    test, answers = knowledge.tests[proof.finding.test], state.answers
    places = {place for a in answers[:since] if a.test == test.id for place in a.places}
    if not places and len(there := state.unit.layout.places(test.per)) == 1:
        places = {*there}  # there is no other that it could have been read at
    counting = {(r.test, r.at, r.text) for r in take_readings(knowledge, state.case)[0] if r.valid}
    for answer in reversed(answers[since:]):
        taken = {(test.id, at, answer.text) for at in places.intersection(answer.places)}
        if answer.test == test.id and taken & counting:
            return answer.text or ", ".join(map(test.spoken, answer.outcomes))
    return computed_since(knowledge, state, fault, proof)


def is_proved_since(knowledge: Knowledge, state: VisitState, fault: Fault, proof: Proof) -> bool:
    """Whether a proof need not be asked for: its test has been taken afresh, and shows it."""
    if not _read_since(knowledge, state, fault, proof):
        return False
    return proof.text not in unproved(knowledge, state, fault, {})


def unproved(
    knowledge: Knowledge, state: VisitState, fault: Fault, read: Mapping[str, str]
) -> dict[str, str]:
    """What was to be read after a repair and is not proved, and why.

    `read`: what was typed for each.
    """
    on, complaint = state.unit, state.complaint
    _, values = take_readings(knowledge, state.case)
    found = {}
    for proof in proofs_today(knowledge, on, fault):
        typed = read.get(proof.text) or _read_since(knowledge, state, fault, proof)
        before = _before(knowledge, state, fault, proof)
        found[proof.text] = why_unproved(
            knowledge, on, proof, typed, complaint, values, before, fault.per
        )
    return {what: why for what, why in found.items() if why}


def lacking_of(knowledge: Knowledge, state: VisitState, of_before: str = "") -> dict[str, str]:
    """What is not proved of the repair that was said last, and why; empty without a repair.

    `of_before`: the fault of a repair made before the visit, where that is asked for.
    """
    told = [said for said in state.repairs_before if said.fault == of_before]
    for said in (told if of_before else state.repairs)[-1:]:
        return unproved(knowledge, state, knowledge.faults[said.fault], dict(said.proofs))
    return {}


def not_proved_before(knowledge: Knowledge, state: VisitState) -> tuple[str, ...]:
    """What is not proved of each repair that was made before the visit, a line each."""
    return tuple(
        f"Repaired before this visit, {knowledge.faults[said.fault].name}: not proved, {line}."
        for said in state.repairs_before
        for line in lacking_lines(knowledge, state, said.fault)
    )


def not_proved_earlier(knowledge: Knowledge, state: VisitState) -> tuple[str, ...]:
    """What is not proved of each repair said before the last of another fault, a line each."""
    last = {said.fault: said for said in state.repairs}
    earlier = [said for said in last.values() if said is not state.repairs[-1]]
    return tuple(
        f"Repaired before that, {fault.name}: not proved, {line}."
        for said in earlier
        if (fault := knowledge.faults.get(said.fault)) is not None
        for line in _lines(unproved(knowledge, state, fault, dict(said.proofs)))
    )


def is_read_bad(knowledge: Knowledge, state: VisitState) -> bool:
    """Whether a proof of the last repair was read, and is not as it has to be."""
    return NOT_RIGHT in lacking_of(knowledge, state).values()


def lacking_lines(knowledge: Knowledge, state: VisitState, of_before: str = "") -> tuple[str, ...]:
    """What is not proved of a repair, of the last or of one made before: not right, or not read."""
    return _lines(lacking_of(knowledge, state, of_before))


def _lines(lacking: Mapping[str, str]) -> tuple[str, ...]:
    bad = "; ".join(what for what, why in lacking.items() if why == NOT_RIGHT)
    unread = "; ".join(what for what, why in lacking.items() if why != NOT_RIGHT)
    found = ((READ_BUT_BAD, bad), (WANTS_A_READING, unread))
    return tuple(f"{words}: {texts}" for words, texts in found if texts)
