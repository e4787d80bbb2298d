"""What was read for a proof and calls up a danger: it is kept as a finding, and ends the proofs."""

from __future__ import annotations

from typing import Final

from troubleshoot.dialogue.answering import said_by
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.prompts import AskProof
from troubleshoot.dialogue.said import Voice
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Hazard, Knowledge, Proof
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.readings import take_readings
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.deciding.left_off import left_off
from troubleshoot.visit.events import Answered, DangerReported, Event, ProofRead, Repaired, after
from troubleshoot.visit.hearing.legs_read import (
    are_apart,
    is_leg_gone,
    legs_in,
    outcomes_of_gone,
)
from troubleshoot.visit.hearing.proof_numbers import judged_readings
from troubleshoot.visit.hearing.proof_others import bad_of_others, is_of
from troubleshoot.visit.hearing.proof_read import NOT_RIGHT, lacking_of

A_LEG_IS_GONE: Final = (
    "A leg is gone: stop the unit now, by its controls. The proofs end here: back to the tests."
)
LEGS_APART: Final = (
    "The legs are too far apart: stop the unit now, by its controls. The proofs end here: back to "
    "the tests."
)
A_DANGER: Final = "That reading calls up a danger. The proofs end here: back to the tests."
NOT_ASKED: Final = "not asked: a leg is gone"
NOT_ASKED_IN_DANGER: Final = "not asked: a reading called up a danger"
_THREE: Final = 3


@frozen
class CalledUp:
    """A reading that calls up a danger of itself, so that nobody is asked about one.

    `found`: what it is kept as besides the proof; `says`: what is said of it.
    """

    found: tuple[Event, ...]
    says: str


def of_before(prompt: AskProof) -> str:
    """The fault of a repair made before the visit, where that is to be proved; else nothing."""
    return prompt.fault.id if prompt.is_of_before else ""


def proof_read(prompt: AskProof, reading: str) -> ProofRead:
    """What was read for a proof, as it is kept."""
    return ProofRead(prompt.text, reading, of_before(prompt))


def end_the_proofs(
    book: VisitBook, voice: Voice, prompt: AskProof, reading: str, called_up: CalledUp
) -> None:
    """Keep a reading that calls up a danger, also as an answer to its own test.

    Nothing more is proved then: the STOP comes, or the unit is stopped and the tests go on.
    """
    is_gone = called_up.says == A_LEG_IS_GONE
    voice.say(called_up.says, strong=True)
    book.add(proof_read(prompt, reading))
    for event in called_up.found:
        if not isinstance(event, DangerReported):
            book.add(event)
    for fault in _to_be_ended(book, prompt):
        book.add(Repaired(fault, NOT_ASKED if is_gone else NOT_ASKED_IN_DANGER))
    for event in called_up.found:
        if isinstance(event, DangerReported):
            book.add(event)


def _to_be_ended(book: VisitBook, prompt: AskProof) -> tuple[str, ...]:
    """The fault of the repair that was begun here; one made before needs no ending."""
    begun = book.state.repair_begun
    return (prompt.fault.id,) if not prompt.is_of_before else (begun.fault,) if begun else ()


def called_up_by(
    book: VisitBook, reasoner: Reasoner, prompt: AskProof, proof: Proof, reading: str
) -> CalledUp | None:
    """The danger that a reading for a proof calls up of itself; None where it calls up none."""
    knowledge = book.knowledge
    then = after(knowledge, book.state, proof_read(prompt, reading))
    if not reading or lacking_of(knowledge, then, of_before(prompt)).get(proof.text) != NOT_RIGHT:
        return None
    legs = legs_in(knowledge, book.state.unit, proof, reading)
    if is_leg_gone(knowledge, proof, legs):
        return CalledUp(_gone(book, proof, reading, legs), A_LEG_IS_GONE)
    hazard = _of_legs_apart(knowledge, proof, legs)
    if hazard is not None:
        return CalledUp((DangerReported.of(hazard, reading),), LEGS_APART)
    found = _dangers(book, reasoner, prompt, proof, reading)
    return CalledUp(found, A_DANGER) if found else None


def _gone(
    book: VisitBook, proof: Proof, reading: str, legs: tuple[float, ...]
) -> tuple[Event, ...]:
    """Legs of which one is gone, as the test's own finding."""
    assert proof.finding is not None
    test = book.knowledge.tests[proof.finding.test]
    found = outcomes_of_gone(book.knowledge, book.state.unit, proof, legs) if test.reads else ()
    return (Answered(test.id, outcomes=found, text=reading),) if found else ()


def _of_legs_apart(knowledge: Knowledge, proof: Proof, legs: tuple[float, ...]) -> Hazard | None:
    """The hazard of the proof's test that a motor on legs far apart is in; None where none is."""
    if len(legs) < _THREE or proof.finding is None or not are_apart(knowledge, proof, legs):
        return None
    test = knowledge.tests[proof.finding.test]
    of_test = (knowledge.hazards[name] for name in test.hazards)
    return next((h for h in of_test if h.stop and h.keeps_off and _rests_on(h, test.id)), None)


def _dangers(
    book: VisitBook, reasoner: Reasoner, prompt: AskProof, proof: Proof, reading: str
) -> tuple[Event, ...]:
    """The answers that a reading holds and that call up what stops, or keeps something off."""
    knowledge = book.knowledge
    _, values = take_readings(knowledge, book.state.case)
    told = [
        (test.id, number)
        for test, number in bad_of_others(knowledge, values, proof, reading)
        if is_of(test, proof, knowledge)
    ]
    if proof.finding is not None and knowledge.tests[proof.finding.test].reads:
        own = judged_readings(knowledge, values, proof, reading, prompt.fault.per)
        told += [(proof.finding.test, text) for text, is_right in own if is_right is False]
    answers = {test: Answered(test, text=text) for test, text in reversed(told)}
    return tuple(each for each in answers.values() if _is_danger(book, reasoner, each))


def _is_danger(book: VisitBook, reasoner: Reasoner, answer: Answered) -> bool:
    """Whether an answer calls up what stops, or keeps something off."""
    found = conclude_visit(reasoner, after(book.knowledge, book.state, answer))
    stand = (*found.standing_stops, *left_off(found).all)
    return any(_rests_on(fired.hazard, answer.test) for fired in stand)


def _rests_on(hazard: Hazard, test: str) -> bool:
    return any(finding.test == test for finding in hazard.findings)


def own_words(prompt: AskProof, proof: Proof) -> tuple[str, ...]:
    """What a proof asks for, in its own words and in those of the test that reads it."""
    if proof.finding is None or prompt.read_by is None:
        return (prompt.text,)
    return (prompt.text, *said_by(prompt.read_by, proof.finding.outcomes))
