"""A screen of 40 columns and 20 rows that nobody reads: how many pages what is shown takes."""

from __future__ import annotations

from troubleshoot.cli.screens.prompts import show_prompt, show_said
from troubleshoot.cli.terminal import Terminal
from troubleshoot.dialogue.prompts import Prompt
from troubleshoot.dialogue.said import Said
from troubleshoot.knowledge.model import Knowledge

THIN = 4
"""Rows of a page, the answer's own and the sign among them, that says next to nothing."""


class SmallScreen(Terminal):
    """Pages turn by themselves. `pages_turned`; `thin`: those of them that say next to nothing."""

    def __init__(self, knowledge: Knowledge) -> None:
        super().__init__()
        self.width, self._height = 40, 20
        self.pages, self.bold = True, False
        self.pages_turned, self.thin = 0, 0
        self._knowledge = knowledge

    def shows(self, said: tuple[Said, ...], prompt: Prompt) -> None:
        """Show what comes behind an answer."""
        self._rows = 1
        show_said(self, self._knowledge, said)
        show_prompt(self, self._knowledge, prompt)

    def _turn_page(self) -> None:
        self.pages_turned += 1
        self.thin += self._rows < THIN
        self._rows = 1

    def _write(self, text: str) -> None:
        self._rows += 1
