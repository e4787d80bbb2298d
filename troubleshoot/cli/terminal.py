"""The terminal: plain lines in and out, fitted to its width, never a crash over an encoding.

A conversation held by hand is shown page by page, so that nothing scrolls away unread.

Nothing that came from outside drives the terminal: a line that holds such characters is asked for
again, and text from old files is shown with them written out. Colour carries no meaning of its own
and is off where nobody would see it (not a terminal, NO_COLOR, TERM=dumb). What is typed on a pipe
is echoed, so that what is kept of it reads whole.
"""

from __future__ import annotations

import math
import os
import shutil
import sys
from collections.abc import Callable, Iterable, Sequence

from troubleshoot.cli.door import heard, told
from troubleshoot.cli.parts import Choices, Paragraph, in_columns, wrapped
from troubleshoot.cli.typed_ahead import TypedAhead, note_in, usable
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import MOST_TYPED, one_line, shown

NARROWEST, WIDEST = 40, 100
SMALL = (60, 26)
"""Columns and rows under which a screen is small: a phone, a window beside another."""
HEADING = 4
"""Rows of a page, the answer's own among them, that hold no more than what heads the rest."""
NEXT_PAGE = "Enter for the rest >"
_PIECE = 1 << 16
_BOLD, _PLAIN = "\x1b[1m", "\x1b[0m"


class EndOfInput(Exception):
    """Nobody answers any more: the pipe or the terminal has ended."""


class Terminal:
    """Where a conversation is held. `pages`: it waits wherever the screen is full.

    `breaks_in`: what is raised for a line typed between pages, by whoever holds the conversation.
    """

    pages = False
    breaks_in: Callable[[str], Exception | None] = staticmethod(lambda typed: None)
    _rows = 0
    """Rows since the last answer, its own among them."""

    def __init__(self) -> None:
        self._ahead = TypedAhead()
        self._take_size()
        self._held, self._lines_since = "", 0
        self.typed_by_hand = sys.stdin.isatty()
        self.bold = (
            sys.stdout.isatty()
            and not os.environ.get("NO_COLOR")
            and os.environ.get("TERM") != "dumb"
        )

    @property
    def is_small(self) -> bool:
        """Whether the screen has room for what matters alone."""
        return self.pages and (self.width < SMALL[0] or self._height < SMALL[1])

    def _take_size(self) -> None:
        """The size that the window has now."""
        columns, self._height = shutil.get_terminal_size((80, 24))
        self.width = max(NARROWEST, min(WIDEST, columns))

    def say(self, text: str = "", indent: int = 0, strong: bool = False) -> None:
        """One paragraph, wrapped to the width; continuation lines are indented a little more.

        Never broken at a hyphen: what is to be typed again, an id or an option, stays whole. No
        page holds a heading alone: a paragraph goes on under it. Raises what turning a page raises.
        """
        lines = self._laid_out(Paragraph(text, indent, strong))
        room = self._height - 1 - self._rows
        if 1 < self._rows <= HEADING and room < len(lines):
            self._put(lines[:room])
            lines = lines[room:]
        self._put(lines)

    def say_together(self, parts: Iterable[Paragraph | Choices]) -> None:
        """What is read together: on one page, wherever one holds it. Raises as `say` does."""
        self._put([line for part in parts for line in self._laid_out(part)])

    def first_that_fits(
        self, versions: Sequence[Sequence[Paragraph | Choices]]
    ) -> Sequence[Paragraph | Choices]:
        """The fullest version that the rest of this page holds, or a page of its own; the last one
        where none does. Where nothing is shown in pages it is the first.
        """
        if not self.pages:
            return versions[0]
        rows = [sum(len(self._laid_out(part)) for part in version) for version in versions]
        for room in (self._height - 1 - self._rows, self._height - 2):
            for version, needed in list(zip(versions, rows, strict=True))[: len(versions) - 1]:
                if needed <= room:
                    return version
        return versions[-1]

    def _laid_out(self, part: Paragraph | Choices) -> list[str]:
        """The lines of a part as they are written."""
        if isinstance(part, Choices):
            return in_columns(part, self.width, pairs=self.is_small)
        lines = wrapped(part.text, self.width, part.indent)
        return [f"{_BOLD}{line}{_PLAIN}" if part.strong and self.bold else line for line in lines]

    def _put(self, lines: Sequence[str]) -> None:
        """Write these lines, on the next page where this one does not hold them all.

        What no page holds begins here, where that saves one.
        """
        room = self._height - 1 - self._rows
        is_full = self.pages and self._rows > 1 and room < len(lines) and lines != [""]
        if is_full and not self._saves_a_page(len(lines), room):
            self._turn_page()
        for line in lines:
            if self.pages and self._rows >= self._height - 1:
                self._turn_page()
            if line or not self._is_spared:
                self._write(line)

    def _saves_a_page(self, rows: int, room: int) -> bool:
        """Whether so many rows, which no page holds, take one page fewer from here on."""
        whole = self._height - 2
        if room <= HEADING or rows <= whole:
            return False
        return math.ceil((rows - room) / whole) < math.ceil(rows / whole)

    @property
    def _is_spared(self) -> bool:
        """Whether an empty line is one too many: it begins a page, or the screen is small."""
        return self.pages and (self._rows <= 1 or self.is_small)

    def _turn_page(self) -> None:
        """Wait until this page has been read. Raises EndOfInput, and what `between_pages` does."""
        while True:
            self._drop_waiting_input()
            self._listen()
            sys.stdout.write(f"{self._encodable(told(NEXT_PAGE))} ")
            sys.stdout.flush()
            line = sys.stdin.readline(MOST_TYPED + 1)
            self._take_size()
            self._rows = 1
            if not line:
                self.pages = False
                self._write("")
                raise EndOfInput
            _leave_the_rest(line)
            if not line.strip():
                return
            if note := note_in(line):
                self._ahead.notes.append(note)
            else:
                self.between_pages(usable(line))

    def between_pages(self, typed: str) -> None:
        """Take what was typed where the rest was not read yet: it is no answer to anything."""

    def overhear(self, typed: str) -> None:
        """Listen to what was typed ahead and is no answer: a danger may be told in it."""

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
        that cannot be used is never taken for an empty one, which may confirm something. Raises
        what `overhear` does.
        """
        while True:
            self.say_held()
            ahead = self._typed_ahead()
            asked = wrapped(prompt, self.width - 1)  # the blank before the answer
            if self.pages and self._rows + len(asked) > self._height:
                self._turn_page()
            sys.stdout.write(self._encodable("\n".join(asked)) + " ")
            self._rows = 1
            if ahead:
                self._write(shown(ahead))
                return ahead
            sys.stdout.flush()
            line = sys.stdin.readline(most + 1)
            self._take_size()  # a window may be made smaller while a question stands there
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

    def _drop_waiting_input(self) -> None:
        """On a terminal: keys pressed in a pocket, a paste, impatience. Notes are none of it."""
        if self.typed_by_hand:
            self._ahead.gather()

    def _typed_ahead(self) -> str:
        """A note that was typed ahead; of what is none, it is told. Empty for nothing."""
        self._drop_waiting_input()
        if self._ahead.notes:
            return self._ahead.notes.pop(0)
        self._listen()
        if lost := self._ahead.told():
            self.say(lost)
        return ""

    def _listen(self) -> None:
        for typed in filter(None, self._ahead.overheard()):
            self.overhear(typed)

    def _write(self, text: str) -> None:
        self._lines_since += 1
        self._rows += 1
        sys.stdout.write(self._encodable(text) + "\n")

    def _encodable(self, text: str) -> str:
        encoding = sys.stdout.encoding or "utf-8"
        return text.encode(encoding, "replace").decode(encoding)


def _leave_the_rest(line: str) -> None:
    """Read on to the end of a line that is longer than was asked for."""
    while line and not line.endswith("\n"):
        line = sys.stdin.readline(_PIECE)
