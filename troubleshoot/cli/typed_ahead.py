"""What waits at a terminal before a question stands there: read off, so that it can be told."""

from __future__ import annotations

import os
import select
import sys
from contextlib import suppress
from typing import Final

_MOST: Final = 1 << 16
"""Bytes of a line that are read at once: a terminal gives one line at a time."""
_MOST_LINES: Final = 10_000


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
