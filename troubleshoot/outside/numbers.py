"""Whole numbers that a person types: a count, or the number of something in a list."""

from __future__ import annotations

import re
from typing import Final

_WHOLE: Final = re.compile(r"[0-9]{1,9}")
"""Plain digits alone, and no more than anybody counts: `²` and `１` are digits to Python too."""


def whole_number(typed: str) -> int | None:
    """The whole number that was typed, at most nine digits; None where it is none."""
    return int(typed) if _WHOLE.fullmatch(typed) else None


def choice(typed: str, most: int) -> int | None:
    """The number typed for one of `most` things, counted from 1; None where it names none."""
    number = whole_number(typed)
    return number if number is not None and 1 <= number <= most else None
