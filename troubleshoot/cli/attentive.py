"""A terminal at which a danger that somebody calls is heard, whatever is asked."""

from __future__ import annotations

from troubleshoot.cli.terminal import Terminal
from troubleshoot.dialogue.hearing import called_danger
from troubleshoot.dialogue.talk import DangerCalled
from troubleshoot.outside.text import MOST_TYPED


class AttentiveTerminal(Terminal):
    """For a practice, whose prompts are no part of a visit."""

    def ask(self, prompt: str, most: int = MOST_TYPED) -> str:
        """One line of answer. Raises EndOfInput, DangerCalled."""
        typed = super().ask(prompt, most)
        danger = called_danger(typed)
        if danger is not None:
            raise DangerCalled(danger)
        return typed
