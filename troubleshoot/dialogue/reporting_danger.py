"""Putting a called danger into the book, and asking what is wrong where it was not named."""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.not_known import is_not_known
from troubleshoot.dialogue.prompts import AskWords
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import DangerCalled, Talk, unless_back, words_or_back
from troubleshoot.outside.text import plain_words
from troubleshoot.reasoning.unit.places import spoken
from troubleshoot.safety.hearing.dangers import ANY_DANGER, is_unnamed, named
from troubleshoot.safety.profiles import TECHNICIAN
from troubleshoot.visit.events import Aimed, DangerReported, DangerTakenBack, Event, Started
from troubleshoot.visit.kept.broken_off import danger_told

CLEAR_FIRST = "STOP. Get clear of it first, you and everybody else."
NOT_ON_RECORD = "This STOP is not on record: hang the tag, and tell whoever comes next in person."
WHAT_IS_WRONG = AskWords("What is wrong? A few words, or Enter", repeated=True)
STAYS_CALLED = "Undo takes no danger back. Was nothing wrong, type: typo."
TAKEN_BACK = "Taken back: no danger is kept. That it was called stays on record."

_NONE = re.compile(
    r"(?:(?:sorry|oops|it|was|its|is|just|only|a|my|an?) )*"
    r"(?:nothing(?: is| was)?(?: wrong)?|typo|false alarm|mistake|mistyped|no danger|never ?mind)"
    r"(?: sorry)?"
)
"""What takes a call for help back; several may be said in a row: nothing wrong, typo."""

_FITS_NOTHING: Final = frozenset({
    "n", "no", "none", "none of these", "none of them", "y", "yes", "ok", "other", "something else",
})  # fmt: skip
"""What people answer who cannot name it: the call stands as it was made, for the worst."""


def report_danger(book: VisitBook, voice: Voice, name: str, said: str) -> Talk[None]:
    """Put a danger into the book, which may have nothing in it yet, and ask for one not named.

    The beginning is kept at once with it, so that nothing falls between. Raises Leave.
    """
    aimed = _aim(book)
    start = () if book.begun else begun_in_danger(name)
    book.add(*start, *danger_told(book.knowledge, said))
    if not is_unnamed(book.knowledge, said):
        return
    voice.say("")
    voice.say(CLEAR_FIRST, strong=True)
    try:
        more = yield from unless_back(voice, STAYS_CALLED, lambda: words_or_back(WHAT_IS_WRONG))
    except DangerCalled as called:
        more = str(called)
    if _takes_back(more):
        for event in (DangerTakenBack(more), *aimed):
            book.add(event)
        voice.say(TAKEN_BACK)
        return
    if _names_nothing(more) or is_unnamed(book.knowledge, more):
        return
    # a guess at what is meant makes nothing less of a call that stops the whole job
    heard = named(book.knowledge, more) or (book.knowledge.hazards[ANY_DANGER],)
    first, *others = reversed(heard)
    named_now = DangerReported.of(first, more, names_the_last=True)
    book.add(named_now, *(DangerReported.of(hazard, more) for hazard in others))


def begun_in_danger(name: str) -> tuple[Event, ...]:
    """The beginning of a visit in which a danger was told before anything else was known."""
    return (Started(name=name, profiles=(TECHNICIAN,)),)


def _aim(book: VisitBook) -> tuple[Event, ...]:
    """What was on the way before the call, as the event that aims at it; empty for nothing."""
    state = book.state
    if state.aim is None:
        return ()
    test, at = state.aim
    return (Aimed(test, spoken(at), state.aim_reason, state.aim_chosen),)


def _names_nothing(typed: str) -> bool:
    """Whether an answer to what is wrong is no words at all, or says that none of them fits."""
    fits_nothing = plain_words(typed).strip(" .!") in _FITS_NOTHING or is_not_known(typed)
    return fits_nothing or not re.search(r"[^\W\d_]", typed)


def _takes_back(typed: str) -> bool:
    said = plain_words(re.sub(r"[^\w ]", " ", typed.replace("'", "")))
    none = _NONE.pattern
    return re.fullmatch(f"{none}(?: {none})*", said) is not None
