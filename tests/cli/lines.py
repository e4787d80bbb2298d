"""A terminal of a test: lines to be typed, and all that was said."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from troubleshoot.cli.terminal import EndOfInput, Terminal, heard
from troubleshoot.cli.visit_book import VisitBook
from troubleshoot.knowledge.model import Knowledge


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
        return heard(self.typed.pop(0))

    @property
    def text(self) -> str:
        return "\n".join(self.said)


class Kept:
    """Keeps the events of a visit in memory."""

    def __init__(self) -> None:
        self.events: list[Any] = []

    def append(self, event: Any) -> None:
        self.events.append(event)


def book_of(knowledge: Knowledge, events: Iterable[Any]) -> VisitBook:
    """A visit that has come so far."""
    return VisitBook(knowledge, "2026-11-26-1", Kept(), list(events))
