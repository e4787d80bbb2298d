"""The terminal: plain lines in and out, fitted to its width, never a crash over an encoding.

Nothing that came from outside drives the terminal: a line that holds such characters is asked for
again, and text from old files is shown with them written out. Colour carries no meaning of its own
and is off where nobody would see it (not a terminal, NO_COLOR, TERM=dumb). What is typed on a pipe
is echoed, so that what is kept of it reads whole.
"""

from __future__ import annotations

import os
import shutil
import sys
import textwrap
from collections.abc import Iterable

from troubleshoot.cli.door import heard, told
from troubleshoot.cli.typed_ahead import waiting_lines
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import MOST_TYPED, one_line, shown

NARROWEST, WIDEST = 40, 100
_PIECE = 1 << 16
_BOLD, _PLAIN = "\x1b[1m", "\x1b[0m"


class EndOfInput(Exception):
    """Nobody answers any more: the pipe or the terminal has ended."""


class Terminal:
    """Where a conversation is held."""

    def __init__(self) -> None:
        self._notes: list[str] = []
        columns, self._height = shutil.get_terminal_size((80, 24))
        self.width = max(NARROWEST, min(WIDEST, columns))
        self._held, self._lines_since = "", 0
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
        for line in self._lines(text, indent):
            self._write(f"{_BOLD}{line}{_PLAIN}" if strong and self.bold else line)

    def _lines(self, text: str, indent: int = 0, room: int = 0) -> list[str]:
        """The lines of a text; `room`: columns that each of them leaves free."""
        start = " " * indent
        return textwrap.wrap(
            shown(told(text)),
            self.width - room,
            initial_indent=start,
            subsequent_indent=start + "  ",
            break_on_hyphens=False,
        ) or [""]

    def say_all(self, lines: Iterable[str], indent: int = 0) -> None:
        for line in lines:
            self.say(line.strip(), indent + len(line) - len(line.lstrip()))

    def hold(self, text: str = "") -> None:
        """Keep this on the screen: it has just been shown, and is said again once it has gone.

        Nothing lets go of what was held.
        """
        self._held, self._lines_since = text, 0

    def say_held(self) -> None:
        """Say again what is held, where it has scrolled off the screen."""
        if self._held and self._lines_since > self._height - 2:
            self._lines_since = 0
            self.say(self._held, strong=True)

    def ask(self, prompt: str, most: int = MOST_TYPED) -> str:
        """One line of answer, trimmed, of at most `most` letters. Raises EndOfInput.

        What was typed before the question stood there is no answer to it: it is thrown away, and
        that is told. A note is one wherever it is typed, and is handed on, one at a time. A line
        that cannot be used is never taken for an empty one, which may confirm something.
        """
        while True:
            self.say_held()
            self._forget_waiting_input()
            sys.stdout.write(f"{self._encodable(self._wrapped(prompt))} ")
            if self._notes:
                self._write(self._notes[0])
                return self._notes.pop(0)
            sys.stdout.flush()
            line = sys.stdin.readline(most + 1)
            if not line:
                self._write("")
                raise EndOfInput
            _leave_the_rest(line)
            self._lines_since += 1
            if not self.typed_by_hand:
                self._write(shown(line.strip()))
            try:
                return heard(one_line(line.removesuffix("\n"), "That line", most))
            except NotUsable as error:
                self.say(f"{error}.")

    def _wrapped(self, prompt: str) -> str:
        """What stands before an answer, with room for the blank after it."""
        return "\n".join(self._lines(prompt, room=1))

    def _forget_waiting_input(self) -> None:
        """On a terminal: keys pressed in a pocket, a paste, impatience."""
        waiting = [line for line in waiting_lines() if line.strip()] if self.typed_by_hand else []
        notes = [note for line in waiting if (note := _note_in(line))]
        self._notes += notes
        lost = len(waiting) - len(notes)
        if lost:
            self.say(
                f"{lost} {'line' if lost == 1 else 'lines'} typed ahead of the question "
                f"{'was' if lost == 1 else 'were'} not read: type {'it' if lost == 1 else 'them'} "
                "again."
            )

    def _write(self, text: str) -> None:
        self._lines_since += 1
        sys.stdout.write(self._encodable(text) + "\n")

    def _encodable(self, text: str) -> str:
        encoding = sys.stdout.encoding or "utf-8"
        return text.encode(encoding, "replace").decode(encoding)


def _note_in(line: str) -> str:
    """The note that a line holds; empty where it is none, or cannot be used."""
    try:
        typed = heard(one_line(line, "That line", MOST_TYPED))
    except NotUsable:
        return ""
    return typed if typed.lower().startswith("note ") else ""


def _leave_the_rest(line: str) -> None:
    """Read on to the end of a line that is longer than was asked for."""
    while line and not line.endswith("\n"):
        line = sys.stdin.readline(_PIECE)
