"""A bare number of the list that stops the whole job is said back before it does.

A stray key, or a list that has moved on, cost half an hour. Only a plain no takes it back: whatever
else is replied counts as yes, and so does silence.
"""

from __future__ import annotations

from string import digits
from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.talk import BACK, DangerCalled, Leave, Talk, words
from troubleshoot.dialogue.yes_no import YesNo
from troubleshoot.knowledge.model import Test
from troubleshoot.safety.facts_first import outcomes_that_stop
from troubleshoot.visit.events import Answered, Event

NOT_PRESSED: Final = "Not taken. Its number, or its word."
STANDS: Final = "A STOP stands: keep clear of it, you and everybody else."
_BETWEEN: Final = ", "


def is_meant(
    book: VisitBook, listener: Listener, test: Test, reply: str, event: Event
) -> Talk[bool]:
    """Whether what a bare number names is so, asked where it would stop the whole job.

    What is left unanswered is kept. Raises DangerCalled, Leave.
    """
    if not isinstance(event, Answered) or not {*reply} <= {*digits, *_BETWEEN}:
        return True
    stopping = outcomes_that_stop(book.knowledge, test, whole_job=True)
    if stopping.isdisjoint(event.outcomes):
        return True
    named = _BETWEEN.join(map(test.spoken, event.outcomes))
    question = YesNo(f"{reply.strip()} means: {named}. Is that so?")
    try:
        typed = yield from words(question.prompt)
        listener.hear(typed)
    except (DangerCalled, Leave):
        book.add(event)
        listener.voice.say(f"Kept as so: {named}. {STANDS}", strong=True)
        raise
    if question.meant(typed) is not False and typed.lower() not in BACK:
        return True
    listener.voice.say(NOT_PRESSED)
    return False
