"""Asking who was told of a STOP, by role, and when: somebody whom it is for, if they know of it.

Who was told is kept before anything more is asked of it.
"""

from __future__ import annotations

from datetime import datetime
from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hand_over_result import ask_part, echo_time
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.in_danger import ask_if_hinted
from troubleshoot.dialogue.prompts import AskWords
from troubleshoot.dialogue.talk import Back, Leave, Talk, words_or_back
from troubleshoot.knowledge.model import Hazard
from troubleshoot.safety.hearing.roles import names_a_role, roles_in, without_help
from troubleshoot.safety.stops.record import NOT_TOLD_YET, TOLD, StopMet
from troubleshoot.safety.stops.reopening import is_told_when, not_told
from troubleshoot.safety.stops.result import NotAResult
from troubleshoot.safety.stops.told import told
from troubleshoot.visit.events import PartGiven

WHO_WAS_TOLD: Final = AskWords("Who was told, and when?", repeated=True)
_RESCUE: Final = frozenset({"fire-service", "medical-service"})
WHEN_TOLD: Final = AskWords("When were they told?", repeated=True)
THEM_TOO: Final = AskWords("Who of them was told, and when? Enter if nobody yet", repeated=True)


def ask_told(book: VisitBook, listener: Listener, hazard: Hazard) -> Talk[str]:
    """Who was told, by role, and when, until it was somebody whom the STOP is for.

    Where it was nobody of those it is asked once more. Raises Back, Leave, DangerCalled.
    """
    while True:
        said = yield from _ask_who(book, listener)
        meant = not_told(hazard, said) or _only_rescued(hazard, said)
        if not meant:
            return said
        _keep(book, said)
        try:
            return (yield from _ask_them_too(book, listener, hazard, said, meant))
        except Back:
            _take_back(book)


def _only_rescued(hazard: Hazard, told: str) -> str:
    """Whom a STOP is for besides those who were called to rescue, where only these were told.

    The fire service makes a place safe to stand in, and mends no unit; a refrigerant STOP names it
    behind the technician, for a closed space alone. Empty where somebody else was told, or where
    the STOP names no rescue as a case apart.
    """
    first, _, apart = hazard.defer_to.partition(";")
    meant = {*roles_in(hazard.defer_to), *hazard.cleared_by} & {*roles_in(told)}
    is_apart = not _RESCUE.isdisjoint(roles_in(apart)) and _RESCUE.isdisjoint(roles_in(first))
    return first if is_apart and meant <= _RESCUE else ""


def _ask_who(book: VisitBook, listener: Listener) -> Talk[str]:
    """Somebody who was told, and when; asked until both are said."""
    kept = next((each for each in book.state.given if each.part == TOLD), None)
    while True:
        if kept is None:
            typed, at = (yield from words_or_back(WHO_WAS_TOLD)), book.now()
            listener.hear_beside_help(typed)
            yield from ask_if_hinted(listener.knowledge, listener.voice, without_help(typed))
        else:
            typed, at = kept.words, datetime.fromisoformat(kept.time)
            listener.voice.say(f"Given before it broke off: {typed}. u takes it back.")
        try:
            who = told(typed, book.state.profiles)
            if not is_told_when(_met(book), who, at):
                _keep(book, who)
            return (yield from _with_time(book, listener, who, at))
        except NotAResult as error:
            listener.not_understood(typed, str(error))
        except Back:
            _take_back(book)
        kept = None


def _with_time(book: VisitBook, listener: Listener, said: str, at: datetime) -> Talk[str]:
    """Who was told, with the time; asked for where it was not said at that moment.

    Raises NotAResult, Back.
    """
    met = _met(book)
    if not is_told_when(met, said, at):
        when = yield from ask_part(listener, WHEN_TOLD, lambda typed: _when_told(book, met, typed))
        said = f"{said}, {when}"
    echo_time(book, listener.voice, said)
    return said


def _met(book: VisitBook) -> StopMet | None:
    """The STOP of which somebody is told."""
    return book.state.stops[-1] if book.state.stops else None


def _keep(book: VisitBook, said: str) -> None:
    """Who was told, before what is still asked of it; with the time that was said, if any was."""
    if not any((each.part, each.words) == (TOLD, said) for each in book.state.given):
        book.add(PartGiven(TOLD, said))


def _take_back(book: VisitBook) -> None:
    """What is still asked of who was told comes after that was kept."""
    book.add(PartGiven(TOLD, ""))


def _when_told(book: VisitBook, met: StopMet | None, typed: str) -> str:
    if not is_told_when(met, typed, book.now()):
        raise NotAResult("Give the time as 14:30, 1430, 2:30 pm, just now or 10 min ago.")
    return typed


def _ask_them_too(
    book: VisitBook, listener: Listener, hazard: Hazard, said: str, meant: str
) -> Talk[str]:
    """Whether those were told too whom the STOP is for. Raises Back, DangerCalled."""
    listener.voice.say(f"It is for: {meant}. Tell them too.", strong=True)
    while True:
        try:
            typed = yield from words_or_back(THEM_TOO)
            listener.hear_beside_help(typed)
            yield from ask_if_hinted(listener.knowledge, listener.voice, without_help(typed))
            if not_told(hazard, typed) or _only_rescued(hazard, typed) or not names_a_role(typed):
                break
            them = told(typed, book.state.profiles)
            them = yield from _with_time(book, listener, them, book.now())
            return f"{said}; {them}"
        except NotAResult as error:
            listener.not_understood(typed, str(error))
        except Leave:
            break
    listener.voice.say("Tell them before you leave. The record says that they do not know yet.")
    return f"{said}; {NOT_TOLD_YET}{meant}"
