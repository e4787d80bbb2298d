"""The clock on the wall: the only place that asks what time it is.

Tests put another `now` here; nothing else in the program may read a clock.
"""

from __future__ import annotations

from datetime import datetime


def now() -> datetime:
    """This moment, with the offset of the place where the program runs."""
    return datetime.now().astimezone()
