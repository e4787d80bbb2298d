"""What waits at a terminal before a question stands there: read off, so that it can be told."""

from __future__ import annotations

import os
import select
import sys
from collections.abc import Iterator
from contextlib import suppress
from typing import Final

from troubleshoot.cli.door import heard
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import MOST_TYPED, one_line

_MOST: Final = 1 << 16
"""Bytes of a line that are read at once: a terminal gives one line at a time."""
_MOST_LINES: Final = 10_000
MOST_QUOTED: Final = 3
"""Lines that were not read and are told again; of more the last ones."""
LONGEST_QUOTED: Final = 40


class TypedAhead:
    """Lines typed before their question stood there. `notes`: those that are notes, to be kept."""

    def __init__(self) -> None:
        self.notes: list[str] = []
        self._lost: list[str] = []
        self._unheard: list[str] = []

    def gather(self) -> None:
        """Read off what waits; but for notes nothing of it is an answer to anything."""
        for line in waiting_lines():
            if note := note_in(line):
                self.notes.append(note)
            elif line.strip():
                self._lost.append(line.strip())
                self._unheard.append(line.strip())

    def overheard(self) -> Iterator[str]:
        """What was lost, each line once, for whoever listens for dangers."""
        while self._unheard:
            yield usable(self._unheard.pop(0))

    def told(self) -> str:
        """What was lost since this was last told; empty for nothing."""
        lost, self._lost = self._lost, []
        if not lost:
            return ""
        one = len(lost) == 1
        quoted = ", ".join(f'"{line[:LONGEST_QUOTED]}"' for line in lost[-MOST_QUOTED:])
        ends = "It was" if one else "They were" if len(lost) <= MOST_QUOTED else "They end in"
        return (
            f"{len(lost)} {'line' if one else 'lines'} typed ahead of the question "
            f"{'was' if one else 'were'} not read: type {'it' if one else 'them'} again. "
            f"{ends} {quoted}."
        )


def waiting_lines() -> list[str]:
    """Every whole line that waits at the terminal; what was begun and not ended is thrown away."""
    try:
        import termios
    except ImportError:  # no such terminals on this platform
        return []
    found: list[str] = []
    with suppress(OSError, termios.error):
        descriptor = sys.stdin.fileno()
        while len(found) < _MOST_LINES and select.select([descriptor], [], [], 0)[0]:
            data = os.read(descriptor, _MOST)
            if not data:
                break
            found += data.decode("utf-8", "replace").splitlines()
        termios.tcflush(descriptor, termios.TCIFLUSH)
    return found


def note_in(line: str) -> str:
    """The note that a line holds; empty where it is none, or cannot be used."""
    typed = usable(line)
    return typed if typed.lower().startswith("note ") else ""


def usable(line: str) -> str:
    """A line as the program knows it; empty where it cannot be used."""
    try:
        return heard(one_line(line.removesuffix("\n"), "That line", MOST_TYPED))
    except NotUsable:
        return ""
