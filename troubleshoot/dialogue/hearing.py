"""Hearing a danger in what is typed at a prompt, whatever the prompt asks for.

Words that would do as an answer are an answer. Where any words would do, those that say little but
a danger are one; where nothing typed can be right, whatever speaks of one.
"""

from __future__ import annotations

import re
from collections.abc import Collection

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.prompts import AskWords
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import DangerCalled, Leave, Talk, words
from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.safety.dangers import cried, is_unnamed, reported, spoken_of
from troubleshoot.safety.profiles import TECHNICIAN
from troubleshoot.visit.event_shapes import danger_event, named_danger_event

HOW_TO_CALL = "If somebody is in danger: danger and what is wrong."
CLEAR_FIRST = "STOP. Get clear of it first, you and everybody else."
NOT_ON_RECORD = "This STOP is not on record: hang the tag, and tell whoever comes next in person."
WHAT_IS_WRONG = AskWords("What is wrong? A few words, or Enter", repeated=True)

_CALL = re.compile(r"\W*danger(?:ous)?\b\W*(?P<words>.*)", re.IGNORECASE)
"""A danger, however it is called: danger fire, danger: fire, DANGER!, dangerous."""


def called_danger(typed: str) -> str | None:
    """What is wrong, in the person's own words; None where no danger is called."""
    called = _CALL.fullmatch(typed)
    return None if called is None else called["words"].strip(" .!?")


def hear(knowledge: Knowledge, typed: str, standing: Collection[str] = ()) -> None:
    """Raise DangerCalled where what was typed speaks of a danger.

    `standing`: hazards that have been told of, and are not told again.
    """
    if not {hazard.id for hazard in spoken_of(knowledge, typed)} <= {*standing}:
        raise DangerCalled(typed)


def hear_cry(knowledge: Knowledge, typed: str, standing: Collection[str] = ()) -> None:
    """Raise DangerCalled where words of any kind were wanted, and these cry danger."""
    if not {hazard.id for hazard in cried(knowledge, typed)} <= {*standing}:
        raise DangerCalled(typed)


class Listener:
    """Listens at one prompt. `standing`: hazards that have been told of, and are not told again."""

    def __init__(self, knowledge: Knowledge, voice: Voice, standing: Collection[str] = ()) -> None:
        self.knowledge = knowledge
        self.voice = voice
        self.standing = standing
        self._told = False

    def hear_cry(self, typed: str) -> None:
        """Raise DangerCalled where words of any kind were wanted, and these cry danger."""
        hear_cry(self.knowledge, typed, self.standing)

    def not_understood(self, typed: str, reply: str) -> None:
        """Say why that is no answer, and once how a danger is called. Raises DangerCalled."""
        hear(self.knowledge, typed, self.standing)
        hint = HOW_TO_CALL if typed and not self._told else ""
        self._told = self._told or bool(hint)
        self.voice.say(f"{reply} {hint}".strip())


def _keep(book: VisitBook, voice: Voice, hazard: Hazard, said: str) -> None:
    """Keep a danger; where it cannot be kept, tell what to do before that is said."""
    try:
        book.add(danger_event(hazard, said))
    except Exception:
        voice.say(f"{hazard.signal} - STOP", strong=True)
        voice.say(hazard.what_to_do, strong=True)
        voice.say(f"Hand over to: {hazard.defer_to}", 1)
        voice.say(NOT_ON_RECORD, strong=True)
        raise


def report_danger(book: VisitBook, voice: Voice, name: str, said: str) -> Talk[None]:
    """Put a danger into the book, which may have nothing in it yet, and ask for one not named.

    Of several the gravest is put in last, since the last is told of first. Raises Leave.
    """
    if not book.begun:
        book.add({"event": "start", "name": name, "profiles": [TECHNICIAN]})
    for hazard in reversed(reported(book.knowledge, said)):
        _keep(book, voice, hazard, said)
    if not is_unnamed(book.knowledge, said):
        return
    voice.say("")
    voice.say(CLEAR_FIRST, strong=True)
    try:
        more = yield from words(WHAT_IS_WRONG)
    except DangerCalled as called:
        more = str(called)
    if more.lower() in ("q", "quit"):
        raise Leave
    if is_unnamed(book.knowledge, more):
        return
    first, *others = reversed(reported(book.knowledge, more))
    book.add(named_danger_event(first, more))
    for hazard in others:
        book.add(danger_event(hazard, more))
