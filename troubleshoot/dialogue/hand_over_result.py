"""Asking what came of a hand-over: who made it safe, what they did, and what shows it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.prompts import AskWords, Choose
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Leave, Talk, words
from troubleshoot.knowledge.model import Hazard
from troubleshoot.safety.hearing.moments import moment_within, with_day
from troubleshoot.safety.hearing.roles import ROLES, names_a_role
from troubleshoot.safety.stops.record import HandOverResult, StopMet
from troubleshoot.safety.stops.reopening import (
    NotAResult,
    as_read,
    fitting_roles,
    in_words,
    not_told,
    read_after,
    role,
    told,
    when_read,
)

MISSING: Final = "That is still missing: give it, or q to leave the STOP as it stands."
WHAT_THEY_DID: Final = AskWords("What did they find, and what did they do?", repeated=True)
WHAT_SHOWS_IT: Final = AskWords("Which reading or look shows that it is safe?", repeated=True)
WHEN: Final = AskWords("When was that?", repeated=True)
THEM_TOO: Final = AskWords("Who of them was told, and when? Enter if nobody yet", repeated=True)
WHO_WAS_TOLD: Final = AskWords("Who was told, and when?", repeated=True)


def ask_result(book: VisitBook, voice: Voice, met: StopMet) -> Talk[HandOverResult]:
    """The result of a STOP's hand-over. Raises Leave, DangerCalled."""
    knowledge = book.knowledge
    listener = Listener(knowledge, voice, (met.hazard,))
    names = fitting_roles(knowledge.hazards[met.hazard])
    who = Choose("Who made it safe?", tuple(ROLES[name] for name in names), repeated=True)
    since = read_after(knowledge, met)
    by = yield from _ask(listener, who, lambda typed: role(typed, names))
    done = yield from ask_done(listener, WHAT_THEY_DID)
    reading = yield from _ask(listener, WHAT_SHOWS_IT, lambda typed: as_read(knowledge, typed))
    when = yield from _ask(listener, WHEN, lambda typed: when_read(typed, since, book.now()))
    _echo_time(book, voice, when)
    return HandOverResult(by, done, reading, when)


def ask_done(listener: Listener, prompt: AskWords) -> Talk[str]:
    """What was found and done to make it safe, in a few words of the trade.

    Raises Leave, DangerCalled.
    """
    return (yield from _ask(listener, prompt, lambda typed: in_words(listener.knowledge, typed)))


def ask_told(listener: Listener) -> Talk[str]:
    """Who was told, by role, and when; asked until somebody is named.

    Raises Leave, DangerCalled.
    """
    while True:
        typed = yield from words(WHO_WAS_TOLD)
        listener.hear_beside_help(typed)
        try:
            return told(typed)
        except NotAResult as error:
            listener.not_understood(typed, str(error))


def ask_them_too(book: VisitBook, listener: Listener, hazard: Hazard, said: str) -> Talk[str]:
    """Who was told in the end. Where it was none of those the STOP is for, it is asked once more.

    Raises DangerCalled.
    """
    _echo_time(book, listener.voice, said)
    meant = not_told(hazard, said)
    if not meant:
        return said
    listener.voice.say(f"It is for: {meant}. Tell them too.", strong=True)
    try:
        typed = yield from words(THEM_TOO)
    except Leave:
        typed = ""
    listener.hear_beside_help(typed)
    if not_told(hazard, typed) or not names_a_role(typed):
        listener.voice.say("Tell them before you leave. The record says that they do not know yet.")
        return f"{said}; not told yet: {meant}"
    _echo_time(book, listener.voice, typed)
    return f"{said}; {typed}"


def _echo_time(book: VisitBook, voice: Voice, typed: str) -> None:
    """Say which time of which day was understood; an hour alone may be of either half of a day."""
    at = moment_within(typed, book.now())
    if at is not None:
        voice.say(f"Taken as: {with_day(at, book.now())}.")


def _ask(
    listener: Listener, prompt: AskWords | Choose, understood: Callable[[str], str]
) -> Talk[str]:
    """One part of the result, asked until it is understood. Raises Leave, DangerCalled.

    Nothing typed throws nothing away: what is missing is asked for again.
    """
    while True:
        typed = yield from words(prompt)
        if not typed:
            listener.voice.say(MISSING)
            continue
        listener.hear_cry(typed)
        try:
            return understood(typed)
        except NotAResult as error:
            listener.not_understood(typed, str(error))
