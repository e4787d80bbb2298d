"""What may be a slip of the finger is asked about once: an odd number, a fact told otherwise.

What is then meant counts as it stands, and on the worse side for safety like any other reading.
"""

from __future__ import annotations

from dataclasses import replace

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.decimals import with_its_decimals
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.impossible import can_be_kept
from troubleshoot.dialogue.picking import pick
from troubleshoot.dialogue.talk import Back, DangerCalled, Leave, Talk
from troubleshoot.dialogue.yes_no import YesNo, yes_or_no
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.outside.numbers import choice
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.doubted import doubted
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.facts_said import in_words
from troubleshoot.visit.events import Answered, Event, FactTold, Noted
from troubleshoot.visit.hearing.with_reading import temperatures_meant
from troubleshoot.visit.telling.as_read import as_read, read_otherwise

NOT_KEPT = "Not kept. Type what you read."


def as_meant(
    listener: Listener, book: VisitBook, reasoner: Reasoner, event: Event
) -> Talk[Event | None]:
    """What a person typed as it is meant, however odd, or against what was told; else None.

    What is typed and not confirmed before the person leaves is kept as a note. Raises Leave,
    DangerCalled.
    """
    if isinstance(event, FactTold):
        meant = yield from _replaces_the_told(listener, book.state.unit, event)
        return event if meant else None
    if not isinstance(event, Answered) or event.text is None:
        return event
    try:
        return (yield from reading_as_meant(listener, book, reasoner, event))
    except (Leave, DangerCalled):
        name = book.knowledge.tests[event.test].name
        book.add(Noted(f"typed for {name}, and not confirmed: {event.text}"))
        raise


def reading_as_meant(
    listener: Listener, book: VisitBook, reasoner: Reasoner, event: Answered
) -> Talk[Answered | None]:
    """A reading as it is meant, of whichever test, or None where it is not to be kept.

    Raises Leave, DangerCalled.
    """
    try:
        meant = yield from _of_which_test(listener, book, event)
        if meant is None:
            listener.voice.say(NOT_KEPT)
            return None
        if not (yield from can_be_kept(book, listener.voice, reasoner, meant)):
            return None
        return (yield from with_its_decimals(listener, book, meant))
    except Back:
        listener.voice.say(NOT_KEPT)
        return None


def _of_which_test(listener: Listener, book: VisitBook, event: Answered) -> Talk[Answered | None]:
    """An odd number is asked about; one that may be a temperature and no difference, which it is.

    Raises Back, Leave, DangerCalled.
    """
    knowledge, test = book.knowledge, book.knowledge.tests[event.test]
    doubt = doubted(knowledge, test, event.text or "") or _of_the_list(knowledge, test, event)
    if doubt is None:
        if told := read_otherwise(knowledge, test, event.text or ""):
            listener.voice.say(told)
        return event
    temperatures = temperatures_meant(knowledge, book.state, test, event.text or "")
    if not temperatures:
        meant = yield from yes_or_no(listener, YesNo(f"{doubt} Is it meant?"))
        return event if meant else None
    read = as_read(knowledge, test, event.text or "")
    names = [f"the difference: {test.name}", *(each.name for each in temperatures)]
    index = yield from pick(book, listener.voice, f"{doubt} What was read as {read}?", names)
    if index is None:
        return None
    if index == 0:
        return event
    other = temperatures[index - 1]
    return replace(event, test=other.id, at=event.at if other.per else None)


def _of_the_list(knowledge: Knowledge, test: Test, event: Answered) -> str | None:
    """Why a bare number may be meant for a line of what came of a test, which are not numbered."""
    said = (event.text or "").strip()
    if choice(said, len(test.outcomes)) is None:
        return None
    return f"That is read as {as_read(knowledge, test, said)}, and is no line of the list."


def _replaces_the_told(listener: Listener, unit: Unit, event: FactTold) -> Talk[bool]:
    """Whether a fact that a step settles is to replace what was told of the unit before.

    Raises Leave, DangerCalled.
    """
    before, now = unit.facts.get(event.name), str(event.value)
    if before in (None, now):
        return True
    rules = listener.knowledge
    told, said = (in_words(rules, event.name, str(word)) for word in (before, now))
    question = YesNo(f"Told before: {told}. This says: {said}. Is this right, and that wrong?")
    try:
        if (yield from yes_or_no(listener, question)):
            return True
    except Back:
        pass
    listener.voice.say(f"Not kept: {told}, as told before.")
    return False
