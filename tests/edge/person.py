"""A person at a pseudo-terminal: starts the program, reads the screen, types, lets time pass.

These tests know nothing of the inside: words on a screen, keys, files on disk, a clock.
"""

from __future__ import annotations

import os
import re
import sys
from collections.abc import Iterable
from datetime import datetime, timedelta
from pathlib import Path
from types import TracebackType

import pexpect

PROGRAM = Path(__file__).parent / "program.py"
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


class Person:
    """One run of the program. `said` is everything on the screen so far, `last` since typing."""

    def __init__(
        self,
        data: Path,
        *words: str,
        clock: Clock | None = None,
        columns: int = 80,
        lines: int = 40,
    ) -> None:
        environment = {**os.environ, "TROUBLESHOOT_DATA": str(data), "TERM": "dumb"}
        for name in ("COLUMNS", "LINES"):  # a terminal has the size that the person made it
            environment.pop(name, None)
        if clock is not None:
            environment["CLOCK"] = str(clock.path)
        self.said = ""
        self.last = ""
        self.child: pexpect.spawn[str] = pexpect.spawn(
            sys.executable,
            [str(PROGRAM), *words],
            env=environment,
            encoding="utf-8",
            dimensions=(lines, columns),
            timeout=60,
        )
        self.child.delaybeforesend = None
        self._wait()

    def __enter__(self) -> Person:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.child.close(force=True)

    @property
    def running(self) -> bool:
        return not self.child.flag_eof

    @property
    def exit_code(self) -> int | None:
        """The exit code once the program has ended."""
        self.child.expect(pexpect.EOF)
        self.child.close()
        return self.child.exitstatus

    def types(self, *lines: str) -> str:
        """Type lines, each at its own prompt; returns what the last one brought on the screen."""
        for line in lines:
            self.child.sendline(line)
            self._wait()
        return self.last

    def pastes(self, text: str) -> str:
        """Send all of it at once, as a paste or a pocket does."""
        self.child.send(text)
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
        self.child.expect([WAITS, pexpect.EOF])
        matched = self.child.after if isinstance(self.child.after, str) else ""
        self.last = ((self.child.before or "") + matched).replace("\r\n", "\n")
        self.said += self.last
