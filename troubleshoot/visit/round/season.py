"""The season that a routine round gets a unit ready for."""

from __future__ import annotations

import re
from collections.abc import Mapping
from types import MappingProxyType
from typing import Final, Literal, get_args

Season = Literal["spring", "fall"]
SEASONS: Final[tuple[Season, ...]] = get_args(Season)

SPRING: Final = range(2, 8)
"""The months in which the next season to get ready for is cooling (common practice, no source)."""

_SAID: Final[Mapping[str, Season]] = MappingProxyType(
    {
        "spring": "spring",
        "cooling": "spring",
        "summer": "spring",
        "fall": "fall",
        "autumn": "fall",
        "heating": "fall",
        "winter": "fall",
    }
)


def season_of(month: int) -> Season:
    """The season whose round is due in a month, 1 to 12."""
    return "spring" if month in SPRING else "fall"


def season_said(words: str) -> Season | None:
    """The season that words speak of; None where they name none, or both."""
    said = {_SAID[word] for word in re.findall(r"[a-z]+", words.lower()) if word in _SAID}
    return said.pop() if len(said) == 1 else None
