"""A repair said at a unit that stands open and runs, so that each of its proofs can be read."""

from __future__ import annotations

from tests.cli.lines import book_of
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.closing import prove
from troubleshoot.dialogue.reading_out import ReadingOut
from troubleshoot.dialogue.repairing import repaired
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Talk
from troubleshoot.dialogue.telling import Telling
from troubleshoot.knowledge.model import Fault, Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.reaching import steps_before
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Event, FactTold, StepDone

PLATE = (FactTold("capacitor-rated", "5 uF"), FactTold("condenser-fan-fla", "2 A"))
"""What judges the proofs of a condenser fan's capacitor."""


def at_the_open_unit(knowledge: Knowledge, *events: Event, test: str) -> VisitBook:
    """A visit in which every step to a test has been done."""
    book = book_of(knowledge, [*events, *PLATE])
    while steps := steps_before(book.state, knowledge.tests[test], None):
        book.add(StepDone.of(steps[0], (CONFIRMED[steps[0].id],)))
    return book


def mended(book: VisitBook, voice: Voice, fault: Fault) -> Talk[None]:
    """Say a repair and go through what is asked of it before the next step."""
    repaired(book, voice, fault)
    yield from proved(book, voice)


def proved(book: VisitBook, voice: Voice) -> Talk[None]:
    """Go through the proofs that can be read now."""
    decider = Decider(book.knowledge)
    telling = Telling(book, voice, decider.reasoner)
    voice.readings = ReadingOut(book, voice, decider, telling).take_beside
    while (decision := decider.decide(book.state)).kind == "prove":
        yield from prove(book, voice, decider.reasoner, decision)
