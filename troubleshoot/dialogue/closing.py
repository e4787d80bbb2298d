"""The end of a visit: a repair that is proved, and the unit that is back as it was."""

from __future__ import annotations

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import hear, hear_cry
from troubleshoot.dialogue.prompts import AskProof, Choose
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Leave, Talk, words
from troubleshoot.knowledge.model import Fault
from troubleshoot.visit.decision import Decision
from troubleshoot.visit.events import Closing, ProofRead, Repaired, VisitEnded

STILL_THERE = Choose("Is the complaint still there? (y/n)")


def repaired(book: VisitBook, fault: Fault) -> Talk[None]:
    """Write down what proves a repair, and whether the complaint has gone with it.

    Raises DangerCalled.
    """
    for proof in fault.proof:
        reading = yield from words(AskProof(fault, proof.text))
        hear_cry(book.knowledge, reading)
        book.add(ProofRead(proof.text, reading))
    answer = yield from words(STILL_THERE)
    hear(book.knowledge, answer)
    book.add(Repaired(fault.id, answer))
    if not answer.lower().startswith("y"):
        book.add(Closing(cured=True))


def close(book: VisitBook, voice: Voice, decision: Decision) -> None:
    """Close the visit, which ends it. One whose way back is beyond this person is kept.

    Raises Leave.
    """
    for step, phrase in decision.handed_over:
        voice.say(f"{book.knowledge.tests[step].name} is beyond you: {phrase}.")
        raise Leave
    book.add(VisitEnded("closed"))
    voice.say(
        f"The unit stays off and locked: {decision.reason}. The visit is closed."
        if decision.reason
        else "The unit is back as it was. The visit is closed."
    )
    voice.say(f"Report: troubleshoot report {book.visit_id}")
