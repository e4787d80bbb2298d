"""The end of a visit: a repair that is proved, and the unit that is back as it was."""

from __future__ import annotations

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener, hear_among
from troubleshoot.dialogue.prompts import AskProof
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Back, Leave, Talk, unless_back, words_or_back
from troubleshoot.dialogue.yes_no import YesNo, yes_or_no_in_words
from troubleshoot.knowledge.model import Fault
from troubleshoot.reasoning.conclude import Conclusions
from troubleshoot.safety.before_repair import not_on_record
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.stops.shown import is_reading
from troubleshoot.safety.stops.tags import tag_lines
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.left_off import left_off
from troubleshoot.visit.events import Closing, ProofRead, Repaired, VisitEnded

STILL_THERE = YesNo("Is the complaint still there?")
NOT_REPAIRED = "Taken back: no repair is kept."
A_READING_FIRST = "That is no reading. What was read, or Enter where it was not; u goes back."
NOT_HERE = "What proves a repair is written down: answer this first, then u takes the repair back."
AS_IT_WAS = "The unit is back as it was."

_COMMANDS = frozenset({"again", "because", "causes", "done", "over", "repaired", "tests", "unit"})
_COMMANDS_WITH_WORDS = ("because ", "invalid ", "what if ", "why not ")


def repaired(book: VisitBook, voice: Voice, fault: Fault) -> Talk[None]:
    """Write down what proves a repair, and whether the complaint has gone with it.

    Raises Leave, DangerCalled.
    """
    tell_not_on_record(book, voice, fault)
    if not (yield from _proved(book, voice, fault)):
        voice.say(NOT_REPAIRED)
        return
    listener = Listener(book.knowledge, voice)
    still, said = yield from unless_back(
        voice, NOT_HERE, lambda: yes_or_no_in_words(listener, STILL_THERE)
    )
    book.add(Repaired(fault.id, said))
    unread = [
        what for what, text in book.state.repairs[-1].proofs if not is_reading(book.knowledge, text)
    ]
    if unread:
        voice.say(f"Not proved, for want of a reading: {'; '.join(unread)}.", strong=True)
    if not still:
        book.add(Closing(cured=True))


def _proved(book: VisitBook, voice: Voice, fault: Fault) -> Talk[bool]:
    """Write down what was read for each proof; False where `u` took back that it is repaired.

    Raises Leave, DangerCalled.
    """
    number = 0
    while number < len(fault.proof):
        proof = fault.proof[number]
        try:
            reading = yield from words_or_back(AskProof(fault, proof.text))
        except Back:
            if number == 0:
                return False
            number -= 1
            continue
        if _is_command(reading):
            voice.say(A_READING_FIRST)
            continue
        hear_among(book.knowledge, reading)
        book.add(ProofRead(proof.text, reading))
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
    voice.say("The visit is closed." if off.all else f"{AS_IT_WAS} The visit is closed.")
    voice.say(f"Report: troubleshoot report {book.visit_id}")
