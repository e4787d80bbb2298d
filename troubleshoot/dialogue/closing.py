"""The end of a visit: a repair that is proved, and the unit that is back as it was."""

from __future__ import annotations

from collections.abc import Sequence

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener, hear_among
from troubleshoot.dialogue.in_danger import ask_if_hinted
from troubleshoot.dialogue.prompts import AskProof
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Back, Leave, Talk, unless_back, words_or_back
from troubleshoot.dialogue.yes_no import YesNo, yes_or_no_in_words
from troubleshoot.knowledge.model import Fault, Proof
from troubleshoot.reasoning.conclude import Conclusions
from troubleshoot.safety.before_repair import not_on_record
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.needs import BURNER_AREAS, needs_of
from troubleshoot.safety.stops.tags import tag_lines
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.left_off import left_off
from troubleshoot.visit.events import Closing, ProofRead, Repaired, VisitEnded
from troubleshoot.visit.hearing.proof_read import unproved, why_unproved
from troubleshoot.visit.state import RepairSaid

STILL_THERE = YesNo("Is the complaint still there?")
NOT_REPAIRED = "Taken back: no repair is kept."
A_READING_FIRST = "That is no reading. What was read, or Enter where it was not; u goes back."
STILL_TO_COME = "Still to come, once the unit is back and runs:"
STAYS_REPAIRED = "The repair is on record: say what was read, or Enter where it was not."
NOT_HERE = "What proves a repair is written down: answer this first, then u takes the repair back."
AS_IT_WAS = "The unit is back as it was."

_COMMANDS = frozenset({"again", "because", "causes", "done", "over", "repaired", "tests", "unit"})
_COMMANDS_WITH_WORDS = ("because ", "invalid ", "what if ", "why not ")


def repaired(book: VisitBook, voice: Voice, fault: Fault) -> Talk[None]:
    """Write down what proves a repair, and whether the complaint has gone with it.

    What has to be read with the unit running waits, where it is locked out, until it is back.
    Raises Leave, DangerCalled.
    """
    tell_not_on_record(book, voice, fault)
    later = _with_the_unit_running(book, fault)
    now = [proof for proof in fault.proof if proof not in later]
    if not (yield from _proved(book, voice, fault, now, NOT_REPAIRED)):
        return
    if not later:
        yield from _whether_it_helped(book, voice, fault)
        return
    book.add(Repaired(fault.id))
    voice.say(f"{STILL_TO_COME} {'; '.join(proof.text for proof in later)}.", strong=True)
    book.add(Closing())


def _with_the_unit_running(book: VisitBook, fault: Fault) -> list[Proof]:
    """What cannot be read yet: by the unit's own record it is locked out, or its cock shut."""
    dead = ("locked-out", "proved-dead")
    is_off, tests = book.state.work.power == "locked-out", book.knowledge.tests
    return [
        p
        for p in fault.proof
        if _wants_gas(book, fault, p)
        or (is_off and (not p.finding or tests[p.finding.test].work_state not in dead))
    ]


def _wants_gas(book: VisitBook, fault: Fault, proof: Proof) -> bool:
    """Whether a burner has to be lit for a proof, and its cock is not known to be open."""
    if book.state.work.gas == "on" or fault.subsystem not in BURNER_AREAS:
        return False
    test = book.knowledge.tests[proof.finding.test] if proof.finding else None
    return test is None or needs_of(test, None, book.state.at_work).gas == "on"


def still_to_prove(book: VisitBook) -> Fault | None:
    """The repair of which some proofs have waited for the way back, if any has."""
    last = book.state.repairs[-1:]
    if not last or last[0].still or not any(_left_of(book, last[0])):
        return None
    return book.knowledge.faults[last[0].fault]


def _left_of(book: VisitBook, said: RepairSaid) -> list[Proof]:
    asked = {what for what, _ in (*said.proofs, *book.state.proofs)}
    fault = book.knowledge.faults[said.fault]
    left = (proof for proof in fault.proof if proof.text not in asked)
    return [proof for proof in left if not _wants_gas(book, fault, proof)]


def prove_at_last(book: VisitBook, voice: Voice, fault: Fault) -> Talk[None]:
    """What of a repair had to wait until the unit was back. Raises Leave, DangerCalled."""
    left = _left_of(book, book.state.repairs[-1])
    while not (yield from _proved(book, voice, fault, left, STAYS_REPAIRED)):
        pass
    yield from _whether_it_helped(book, voice, fault)


def _whether_it_helped(book: VisitBook, voice: Voice, fault: Fault) -> Talk[None]:
    """Whether the complaint has gone with it, and what was not proved."""
    listener = Listener(book.knowledge, voice)
    still, said = yield from unless_back(
        voice, NOT_HERE, lambda: yes_or_no_in_words(listener, STILL_THERE)
    )
    book.add(Repaired(fault.id, said))
    lacking = _lacking(book)
    if lacking:
        voice.say(f"Not proved, for want of a sound reading: {lacking}.", strong=True)
    if not still:
        book.add(Closing(cured=True))


def _lacking(book: VisitBook) -> str:
    """What is not proved of the last repair; empty where all is, or nothing was repaired."""
    if not book.state.repairs:
        return ""
    said = book.state.repairs[-1]
    fault = book.knowledge.faults[said.fault]
    return "; ".join(unproved(book.knowledge, book.state.unit, fault, dict(said.proofs)))


def _proved(
    book: VisitBook, voice: Voice, fault: Fault, proofs: Sequence[Proof], at_first: str
) -> Talk[bool]:
    """Write down what was read for each proof; False where `u` went back before the first.

    `at_first`: what is said then. Raises Leave, DangerCalled.
    """
    number = 0
    while number < len(proofs):
        proof = proofs[number]
        try:
            reading = yield from words_or_back(AskProof(fault, proof.text))
        except Back:
            if number == 0:
                voice.say(at_first)
                return False
            number -= 1
            continue
        if _is_command(reading):
            voice.say(A_READING_FIRST)
            continue
        hear_among(book.knowledge, reading)
        yield from ask_if_hinted(book.knowledge, voice, reading, (proof.text,))
        book.add(ProofRead(proof.text, reading))
        if reading and (why := why_unproved(book.knowledge, book.state.unit, proof, reading)):
            voice.say(f"Not proved: {why}. Kept as said; u goes back to it.", strong=True)
        number += 1
    return True


def _is_command(typed: str) -> bool:
    """Whether words are none that anybody reads, but what is typed at a test or an ending."""
    said = typed.lower()
    return said in _COMMANDS or said.startswith(_COMMANDS_WITH_WORDS)


def tell_not_on_record(book: VisitBook, voice: Voice, fault: Fault) -> None:
    """Which of the steps that a repair wants nobody has said in this visit."""
    state = book.state
    done = {a.test for a in state.asked if a.outcome == CONFIRMED.get(a.test) and not a.nobody}
    missing = not_on_record(fault, done, state.at_work)
    if missing:
        voice.say(f"Not on record before this repair: {', '.join(missing)}.", strong=True)


def close(book: VisitBook, voice: Voice, decision: Decision, conclusions: Conclusions) -> None:
    """Close the visit, which ends it. One whose way back is beyond this person is kept.

    Raises Leave.
    """
    off = left_off(conclusions)
    for fired in off.all:
        voice.say("Write on the tag:")
        voice.say_all(tag_lines(book.knowledge, book.state, conclusions, fired), 1)
        voice.say(f"Hand over to: {fired.hazard.defer_to}")
    for step, phrase in decision.handed_over:
        voice.say(f"{book.knowledge.tests[step].name} is beyond you: {phrase}.")
        raise Leave
    book.add(VisitEnded("closed", left_off=tuple(fired.hazard.id for fired in off.all)))
    voice.say_all(off.lines)
    lacking = _lacking(book)
    if lacking:
        voice.say(f"The repair is not proved: {lacking}.", strong=True)
    voice.say("The visit is closed." if off.all or lacking else f"{AS_IT_WAS} The visit is closed.")
    voice.say(f"Report: troubleshoot report {book.visit_id}")
