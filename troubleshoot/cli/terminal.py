"""The terminal: plain lines in and out, fitted to its width, never a crash over an encoding.

Colour carries no meaning of its own and is off where nobody would see it (not a terminal,
NO_COLOR, TERM=dumb). What is typed on a pipe is echoed, so that a transcript reads whole.
"""

from __future__ import annotations

import os
import shutil
import sys
import textwrap
from collections.abc import Iterable

NARROWEST, WIDEST = 40, 100
VISIT_IS_KEPT = "The visit is kept. Start again to go on from here."
_BOLD, _PLAIN = "\x1b[1m", "\x1b[0m"


class EndOfInput(Exception):
    """Nobody answers any more: the pipe or the terminal has ended."""


class Leave(Exception):
    """The person leaves; the visit is kept."""


class Terminal:
    """Where a conversation is held."""

    def __init__(self) -> None:
        columns = shutil.get_terminal_size((80, 24)).columns
        self.width = max(NARROWEST, min(WIDEST, columns))
        self.typed_by_hand = sys.stdin.isatty()
        self.bold = (
            sys.stdout.isatty()
            and not os.environ.get("NO_COLOR")
            and os.environ.get("TERM") != "dumb"
        )

    def say(self, text: str = "", indent: int = 0, strong: bool = False) -> None:
        """One paragraph, wrapped to the width; continuation lines are indented a little more.

        Never broken at a hyphen: what is to be typed again, an id or an option, stays whole.
        """
        start = " " * indent
        lines = textwrap.wrap(
            text,
            self.width,
            initial_indent=start,
            subsequent_indent=start + "  ",
            break_on_hyphens=False,
        ) or [""]
        for line in lines:
            self._write(f"{_BOLD}{line}{_PLAIN}" if strong and self.bold else line)

    def say_all(self, lines: Iterable[str], indent: int = 0) -> None:
        for line in lines:
            self.say(line.strip(), indent + len(line) - len(line.lstrip()))

    def ask(self, prompt: str) -> str:
        """One line of answer, trimmed. Raises EndOfInput."""
        encoded = self._encodable(prompt)
        sys.stdout.write(f"{encoded} ")
        sys.stdout.flush()
        line = sys.stdin.readline()
        if not line:
            self._write("")
            raise EndOfInput
        answer = line.strip()
        if not self.typed_by_hand:
            self._write(answer)
        return answer

    def _write(self, text: str) -> None:
        sys.stdout.write(self._encodable(text) + "\n")

    def _encodable(self, text: str) -> str:
        encoding = sys.stdout.encoding or "utf-8"
        return text.encode(encoding, "replace").decode(encoding)
