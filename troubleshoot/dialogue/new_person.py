"""Somebody else at the keyboard is asked who that is, and proves for themselves what they rest on.

A lock on the switch is the one's who hung it: whoever goes on with another's counts as having none.
"""

from __future__ import annotations

from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.intake import ask_profiles
from troubleshoot.dialogue.talk import Talk, unless_back
from troubleshoot.dialogue.yes_no import ANSWERED_FIRST, YesNo, answered_first
from troubleshoot.safety.hearing.new_people import tells_of_a_new_person
from troubleshoot.visit.events import Noted

SOMEBODY_ELSE: Final = YesNo("Does somebody else have this unit from here on?")
OWN_LOCK: Final = (
    "What others have shown counts no more for you: hang your own lock, and have each of theirs "
    "taken off by whoever hung it."
)


def ask_if_new(book: VisitBook, listener: Listener, typed: str) -> Talk[bool]:
    """Ask whoever says to be new who that is; False where nobody does, or is none.

    Raises DangerCalled, Leave.
    """
    if not tells_of_a_new_person(typed):
        return False
    listener.hear(typed)
    book.add(Noted(f"told: {typed}"))
    if not (yield from answered_first(listener, SOMEBODY_ELSE)):
        return False
    voice = listener.voice
    voice.say(OWN_LOCK)
    profiles = yield from unless_back(
        voice, ANSWERED_FIRST, lambda: ask_profiles(book.knowledge, voice)
    )
    book.hand_on(profiles)
    return True
