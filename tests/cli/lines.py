"""A terminal of a test: lines to be typed, and all that was said."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TypeVar

from troubleshoot.cli import clock
from troubleshoot.cli.terminal import EndOfInput, Terminal
from troubleshoot.cli.visiting import hold
from troubleshoot.dialogue.book import Forgotten, VisitBook
from troubleshoot.dialogue.prompts import Ended
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Talk
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import Event
from troubleshoot.visit.events.codec import record_of

T = TypeVar("T")


class Lines(Terminal):
    """Types its lines one after the other; after the last one the input has ended."""

    def __init__(self, *typed: str) -> None:
        self.width, self._height = 200, 1_000
        self._held, self._lines_since = "", 0
        self.typed_by_hand = self.bold = False
        self.typed = list(typed)
        self.said: list[str] = []
        self.asked: list[str] = []

    def _write(self, text: str) -> None:
        self.said.append(text)

    def ask(self, prompt: str, most: int = 0) -> str:
        self.asked.append(prompt)
        if not self.typed:
            raise EndOfInput
        return self.typed.pop(0)

    @property
    def text(self) -> str:
        return "\n".join(self.said)


def book_of(knowledge: Knowledge, events: Iterable[Event]) -> VisitBook:
    """A visit that has come so far."""
    records = [*map(record_of, events)]
    return VisitBook(knowledge, "2026-11-26-1", Forgotten(), lambda: clock.now(), records)


def held(knowledge: Knowledge, terminal: Lines, part: Callable[[Voice], Talk[T]]) -> T:
    """Hold one part of a visit at the terminal; returns what it comes to."""
    results: list[T] = []

    def alone(voice: Voice) -> Talk[Ended]:
        results.append((yield from part(voice)))
        return Ended("kept")

    hold(knowledge, terminal, alone)
    return results[0]
