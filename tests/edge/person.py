"""A person at a pseudo-terminal: starts the program, reads the screen, types, lets time pass.

These tests know nothing of the inside: words on a screen, keys, files on disk, a clock.
"""

from __future__ import annotations

import fcntl
import os
import re
import resource
import struct
import termios
import weakref
from collections.abc import Iterable
from datetime import datetime, timedelta
from pathlib import Path
from types import TracebackType

import pexpect
from pexpect.fdpexpect import fdspawn

from tests.edge.starting import Started, StartedAnew, ready

MORNING = datetime.fromisoformat("2026-11-26T09:00:00+00:00")
WAITS = re.compile(r"(?:>|\?|\)) \Z")
"""A prompt: the screen ends in one, and nothing follows it."""


class Clock:
    """The clock on the wall of a test, kept in a file."""

    def __init__(self, folder: Path) -> None:
        self.path = folder / "clock"
        self.set(MORNING)

    def set(self, moment: datetime) -> None:
        self.moment = moment
        self.path.write_text(moment.isoformat(), "ascii")

    def pass_minutes(self, minutes: float) -> None:
        """Let time go by; a negative number sets the clock back."""
        self.set(self.moment + timedelta(minutes=minutes))


PAGE = "Enter for the rest > "


class Person:
    """One run of the program. `said` is everything on the screen so far, `last` since typing.

    Whoever `reads` on turns the pages of a long text; `screens` is each page as it stood there,
    with the line that was typed before it. `anew`: started as a shell does, not by a fork of the
    program that is kept ready.
    """

    def __init__(
        self,
        data: Path,
        *words: str,
        clock: Clock | None = None,
        columns: int = 80,
        lines: int = 40,
        anew: bool = False,
        reads: bool = True,
    ) -> None:
        environment = {**os.environ, "TROUBLESHOOT_DATA": str(data), "TERM": "dumb"}
        for name in ("COLUMNS", "LINES"):  # a terminal has the size that the person made it
            environment.pop(name, None)
        if clock is not None:
            environment["CLOCK"] = str(clock.path)
        self.said = ""
        self.last = ""
        self.reads = reads
        self.screens: list[str] = []
        mine, its = os.openpty()
        fcntl.ioctl(its, termios.TIOCSWINSZ, struct.pack("HHHH", lines, columns, 0, 0))
        starts = StartedAnew if anew else ready().start
        self._program = starts(words, environment, [its] * 3, terminal=True)
        os.close(its)
        self._screen: fdspawn[str] = fdspawn(mine, encoding="utf-8", timeout=60)
        self._screen.delaybeforesend = None
        self._leaves = weakref.finalize(self, _hang_up, self._screen, self._program)
        self._wait()

    def __enter__(self) -> Person:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self._leaves()

    @property
    def running(self) -> bool:
        return not self._screen.flag_eof

    def fills_the_disk(self, most: int) -> None:
        """No file that the program writes from now on takes more than `most` bytes."""
        resource.prlimit(self._program.number, resource.RLIMIT_FSIZE, (most, most))

    def kills_it(self) -> None:
        """The program ends between two instructions, as with the battery."""
        self._program.kill()
        self._screen.expect(pexpect.EOF)

    @property
    def exit_code(self) -> int | None:
        """The exit code once the program has ended."""
        self._screen.expect(pexpect.EOF)
        return self._program.ends()

    def types(self, *lines: str) -> str:
        """Type lines, each at its own prompt; returns what the last one brought on the screen."""
        for line in lines:
            self._screen.sendline(line)
            self._wait()
        return self.last

    def pastes(self, text: str) -> str:
        """Send all of it at once, as a paste or a pocket does."""
        self._screen.send(text)
        self._wait()
        return self.last

    def types_until(self, wanted: str, answers: Iterable[tuple[str, str]], most: int = 80) -> str:
        """Answer prompts until a line with `wanted` is on the screen.

        `answers`: (words on the screen since the last answer, what is then typed), the first that
        fits. Fails where the program ends, or none fits.
        """
        rules = list(answers)
        for _ in range(most):
            if wanted in self.last:
                return self.last
            assert self.running, f"ended before {wanted!r}:\n{self.said[-3000:]}"
            line = next((typed for words, typed in rules if words in self.last), None)
            assert line is not None, f"nothing to type at:\n{self.last}"
            self.types(line)
        raise AssertionError(f"never saw {wanted!r}; at the end:\n{self.last}")

    def _wait(self) -> None:
        """Until the program asks for something, or has ended."""
        self.last = ""
        while True:
            self._screen.expect([WAITS, pexpect.EOF])
            matched = self._screen.after if isinstance(self._screen.after, str) else ""
            page = ((self._screen.before or "") + matched).replace("\r\n", "\n")
            self.screens.append(page)
            turns = self.reads and page.endswith(PAGE)
            self.last += page.removesuffix(PAGE) if turns else page
            if not turns:
                break
            self._screen.sendline("")
        self.said += self.last

    def resizes(self, columns: int, lines: int) -> None:
        """Make the window another size."""
        size = struct.pack("HHHH", lines, columns, 0, 0)
        fcntl.ioctl(self._screen.child_fd, termios.TIOCSWINSZ, size)


def _hang_up(screen: fdspawn[str], program: Started | StartedAnew) -> None:
    """Close the terminal, which ends what still runs at it."""
    screen.close()
    program.ends()
