"""A terminal without a terminal: keeps what is said, and is typed at by a walk."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from troubleshoot.cli.parts import Choices, Paragraph
from troubleshoot.cli.terminal import Terminal
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import MOST_TYPED, one_line, shown


class Killed(BaseException):
    """The program is killed where it stands."""


class Screen(Terminal):
    """Lines are kept whole, not wrapped; whatever waits when a question is put is thrown away.

    `typist`: is shown the prompt and the lines since the last one, and types the next line.
    """

    def __init__(self, typist: Callable[[str, list[str]], str]) -> None:
        self.width, self._height = 80, 1_000
        self._held, self._lines_since = "", 0
        self.typed_by_hand = True
        self.bold = False
        self._typist = typist
        self._lines: list[str] = []

    def say(self, text: str = "", indent: int = 0, strong: bool = False) -> None:
        self._lines.append(shown(text))

    def say_together(self, parts: Iterable[Paragraph | Choices]) -> None:
        for part in parts:
            for text in part.items if isinstance(part, Choices) else (part.text,):
                self.say(text)

    def ask(self, prompt: str, most: int = MOST_TYPED) -> str:
        while True:
            lines, self._lines = self._lines, []
            line = self._typist(shown(prompt), lines)
            try:
                return one_line(line, "That line", most)
            except NotUsable as error:
                self.say(f"{error}.")
