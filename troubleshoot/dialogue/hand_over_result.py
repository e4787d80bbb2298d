"""Asking what came of a hand-over: who made it safe, what they did, and what shows it."""

from __future__ import annotations

from collections.abc import Callable

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.prompts import AskWords, Choose
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Talk, words
from troubleshoot.visit.reopening import (
    ROLES,
    NotAResult,
    fitting_roles,
    in_words,
    role,
    stopped_at,
    when_read,
)
from troubleshoot.visit.visit_state import HandOverResult, StopMet


def ask_result(book: VisitBook, voice: Voice, met: StopMet) -> Talk[HandOverResult | None]:
    """The result of a STOP's hand-over; None where any of it is missing. Raises DangerCalled."""
    listener = Listener(book.knowledge, voice, (met.hazard,))
    names = fitting_roles(book.knowledge.hazards[met.hazard])
    who = Choose("Who made it safe?", tuple(ROLES[name] for name in names), repeated=True)
    by = yield from _ask(listener, who, lambda typed: role(typed, names))
    done = by and (yield from ask_in_words(listener, "What did they find, and what did they do?"))
    reading = done and (
        yield from ask_in_words(listener, "Which reading or look shows that it is safe?")
    )
    when = reading and (
        yield from _ask(
            listener,
            AskWords("When was that?", repeated=True),
            lambda typed: when_read(typed, stopped_at(met), book.now()),
        )
    )
    return HandOverResult(by, done, reading, when) if when else None


def ask_in_words(listener: Listener, question: str) -> Talk[str]:
    """Words that somebody else can read something in; empty where nothing is known."""
    return (yield from _ask(listener, AskWords(question, repeated=True), in_words))


def _ask(
    listener: Listener, prompt: AskWords | Choose, understood: Callable[[str], str]
) -> Talk[str]:
    """One part of the result, asked until it is understood; empty where it is not known."""
    while True:
        typed = yield from words(prompt)
        if not typed:
            return ""
        listener.hear_cry(typed)
        try:
            return understood(typed)
        except NotAResult as error:
            listener.not_understood(typed, str(error))
