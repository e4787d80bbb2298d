"""Characters that no rule may hold, because they hide text or drive a terminal."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from typing import Final

_REFUSED: Final = re.compile(
    "["
    "\x00-\x08\x0b-\x1f\x7f-\x9f"  # control characters, save tab and line feed
    "\u061c\u200b-\u200f\u202a-\u202e\u2060-\u206f\ufeff"  # invisible, and direction of writing
    "\u2028\u2029"  # line breaks that an editor does not show as such
    "\ufff0-\uffff\U000e0000-\U000e007f"  # no characters at all, and invisible tags
    "\ud800-\udfff"
    "]"
)


@dataclass(frozen=True, slots=True)
class RefusedCharacter:
    index: int
    name: str


def first_refused(text: str) -> RefusedCharacter | None:
    """Return the first refused character of the text and how to speak of it, or None."""
    match = _REFUSED.search(text)
    if match is None:
        return None
    character = match.group()
    name = unicodedata.name(character, "control character").lower()
    return RefusedCharacter(match.start(), f"the {name} U+{ord(character):04X}")


def line_and_column(text: str, index: int) -> tuple[int, int]:
    """Line and column, counted from 1, of the character at `index`."""
    return text.count("\n", 0, index) + 1, index - (text.rfind("\n", 0, index) + 1) + 1
