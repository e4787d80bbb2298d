"""A line that tells several things at once, each for itself: 25.8 v, rise 82, filters clean.

What answers the test in hand is its answer, readings by their short words and other looks by their
names are theirs, and what a part is like is kept as a note. Where one clause is none of these, or
what is asked for shows a danger gone, the line is judged as a whole.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.by_word import NotAnAnswer
from troubleshoot.dialogue.clauses import DENYING
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.other_looks import Seen
from troubleshoot.dialogue.other_words import OtherWords, without_its_age
from troubleshoot.dialogue.prompts import AskTest, DoStep
from troubleshoot.dialogue.reading_out import ReadingOut
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.taking_up import protects, taken_up
from troubleshoot.dialogue.talk import Talk
from troubleshoot.frozen import frozen
from troubleshoot.safety.hearing.among_words import told_among
from troubleshoot.safety.hearing.findings import tells_a_finding
from troubleshoot.safety.hearing.words import raw_words
from troubleshoot.visit.events import Noted
from troubleshoot.visit.hearing.read_out import read_out

_PARTED: Final = re.compile(r"[,;]\s+|\s+(?:but|and)\s+")


@frozen
class Several:
    """The clauses of a line: of the test in hand, readings, other looks, what is kept as a note."""

    own: tuple[str, ...]
    readings: tuple[str, ...]
    looks: tuple[tuple[str, tuple[Seen, ...]], ...]
    beside: tuple[str, ...]


class InSeveral:
    """Takes lines of several things in one conversation."""

    def __init__(
        self, book: VisitBook, voice: Voice, reading_out: ReadingOut, other_words: OtherWords
    ) -> None:
        self.book = book
        self.voice = voice
        self.reading_out = reading_out
        self.other_words = other_words

    def take(self, listener: Listener, prompt: AskTest | DoStep, typed: str) -> Talk[bool]:
        """Whether a line was taken as several things. Raises DangerCalled, Leave, ToldGone."""
        told = self._several(listener, prompt, typed)
        if told is None:
            return False
        decision, state = prompt.decision, self.book.state
        for text in told.beside:
            self.book.add(Noted(f"told at a test: {text}"))
        if told.readings:
            yield from self.reading_out.take(listener, ", ".join(told.readings), decision, "")
        for text, seen in told.looks:
            yield from self.other_words.other_looks.take(listener, decision, text, seen)
        own = ", ".join(told.own)
        if self.book.state.stops != state.stops:  # what was read comes before what was seen
            self.book.add(Noted(f"told at a test: {own}"))
            return True
        try:
            event = taken_up(self.book, listener, prompt, own)
        except NotAnAnswer:
            return (yield from self.other_words.take(listener, prompt, own, stands=True))
        self.reading_out.telling.keep(event, prompt)
        return True

    def _several(self, listener: Listener, prompt: AskTest | DoStep, typed: str) -> Several | None:
        """The clauses of a line, sorted; None where it is of one thing, or one is not known."""
        test, knowledge = prompt.decision.test, self.book.knowledge
        if test is None or prompt.decision.step is not None or protects(knowledge, test):
            return None
        if listener.speaks_of_danger(typed) or self.voice.hints(typed, listener.own):
            return None
        if prompt.decision.stop is not None or told_among(knowledge, typed):
            return None
        own: list[str] = []
        readings: list[str] = []
        looks: list[tuple[str, tuple[Seen, ...]]] = []
        beside: list[str] = []
        for clause in map(without_its_age, filter(None, map(str.strip, _PARTED.split(typed)))):
            if self._is_reading(clause):
                readings.append(clause)
            elif seen := self.other_words.other_looks.told(prompt.decision, clause):
                looks.append((clause, seen))
            elif self.other_words.is_of_it(listener, prompt, clause):
                own.append(clause)
            elif tells_a_finding(clause) and DENYING.isdisjoint(raw_words(clause)):
                beside.append(clause)
            else:
                return None
        is_several = own and (readings or looks or (beside and len(own) == 1))
        told = Several(tuple(own), tuple(readings), tuple(looks), tuple(beside))
        return told if is_several else None

    def _is_reading(self, clause: str) -> bool:
        """Whether a clause is readings by their short words, and nothing else."""
        line = read_out(self.book.knowledge, self.book.state.unit, clause)
        return bool(line.readings) and not line.unread
