"""Readings that cannot be right together: both are named, and it is asked which is wrong."""

from __future__ import annotations

from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.picking import pick
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.taking_back import A_STOP_RESTS_ON_IT, lifts_a_stop
from troubleshoot.dialogue.talk import Talk
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.visit.events import Answered, ReadingWithdrawn
from troubleshoot.visit.hearing.with_reading import Impossible, Told, impossible_with

WHICH_IS_WRONG: Final = "Read again, or say which is wrong."
READ_IT_AGAIN: Final = "Not kept: read it again."
FACTS_ARE_PUT_RIGHT: Final = "What was told of the unit is put right with unit, its name and value."


def can_be_kept(book: VisitBook, voice: Voice, reasoner: Reasoner, event: Answered) -> Talk[bool]:
    """Whether a reading may be kept beside the others; one of those may be said to be wrong.

    Raises Leave, DangerCalled.
    """
    found = impossible_with(book.knowledge, book.state, event)
    if found is None:
        return True
    relation = found.broken.relation
    where = f"{found.where}: " if found.where else ""
    voice.say(f"That cannot be: {where}{relation.says}. {_and(found)}.")
    read = sorted((t for t in found.told if t.answer is not None), key=lambda t: not t.is_new)
    names = [f"{told.words}{' (typed now)' if told.is_new else ''}" for told in read]
    faults = [book.knowledge.faults[name].name for name in relation.read_so_by]
    if faults:
        names.append(f"None of them: all read again ({' or '.join(faults)})")
    if len(read) < len(found.told):
        voice.say(FACTS_ARE_PUT_RIGHT)
    index = yield from pick(book, voice, WHICH_IS_WRONG, names)
    if index == len(read):
        return True
    if index is not None and not read[index].is_new:
        return _withdraw(book, voice, reasoner, read[index])
    voice.say(READ_IT_AGAIN)
    return False


def _and(found: Impossible) -> str:
    return ", ".join(told.words for told in found.told)


def _withdraw(book: VisitBook, voice: Voice, reasoner: Reasoner, told: Told) -> bool:
    """Let an earlier reading count for nothing, unless a STOP would go with it."""
    assert told.answer is not None
    places = tuple(str(place) for place in told.answer.places if place is not None)
    event = ReadingWithdrawn(told.answer.test, places or None)
    if lifts_a_stop(reasoner, book.state, event.apply(book.knowledge, book.state)):
        voice.say(A_STOP_RESTS_ON_IT)
        return False
    book.add(event)
    voice.say(f"Does not count any more: {told.words}. It is asked again where it is needed.")
    return True
