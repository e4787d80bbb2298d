"""Terminals at which a conversation is held: in pages, and a danger is heard between them too."""

from __future__ import annotations

import sys

from troubleshoot.cli.terminal import Terminal
from troubleshoot.dialogue.asides import leaves
from troubleshoot.dialogue.hearing import called_danger, hear
from troubleshoot.dialogue.talk import DangerCalled, Leave
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.text import MOST_TYPED

READ_ON = "Nothing is asked yet: Enter shows the rest, q leaves."


class AttentiveTerminal(Terminal):
    """For a practice, whose prompts are no part of a visit."""

    def __init__(self) -> None:
        super().__init__()
        self.pages = self.typed_by_hand and sys.stdout.isatty()

    def ask(self, prompt: str, most: int = MOST_TYPED) -> str:
        """One line of answer. Raises EndOfInput, DangerCalled."""
        typed = super().ask(prompt, most)
        _hear_call(typed)
        return typed

    def between_pages(self, typed: str) -> None:
        """Hear a danger that is called. Raises DangerCalled."""
        _hear_call(typed)
        self.say(READ_ON)

    def overhear(self, typed: str) -> None:
        """Hear a danger that is called. Raises DangerCalled."""
        _hear_call(typed)


class VisitTerminal(Terminal):
    """For a visit, which hears its prompts itself."""

    def __init__(self, knowledge: Knowledge) -> None:
        super().__init__()
        self.pages = self.typed_by_hand and sys.stdout.isatty()
        self._knowledge = knowledge

    def between_pages(self, typed: str) -> None:
        """Hear a danger, that a state has gone, and whoever leaves. Raises DangerCalled, Leave."""
        if leaves(typed):
            raise Leave
        self.overhear(typed)
        self.say(READ_ON)

    def overhear(self, typed: str) -> None:
        """Hear a danger, and that a state has gone. Raises DangerCalled."""
        _hear_call(typed)
        if (gone := self.breaks_in(typed)) is not None:
            raise gone
        hear(self._knowledge, typed)


def _hear_call(typed: str) -> None:
    danger = called_danger(typed)
    if danger is not None:
        raise DangerCalled(danger)
