"""A word without its ending: tripping, tripped, trips -> trip; fuses, fuse -> fus."""

from __future__ import annotations

from functools import lru_cache
from typing import Final

_LEAST: Final = 3
"""Letters that are left of a word."""
_ENDINGS: Final = ("ing", "ed", "es", "s")
_STAYS_DOUBLE: Final = "lszf"
"""Pull and hiss end in two of a letter whatever comes after."""


@lru_cache(maxsize=8_000)
def stem(word: str) -> str:
    """The word as it is compared; what it comes to need not be a word."""
    if word.endswith(("ies", "ied")) and len(word) > _LEAST + 2:
        return f"{word[:-3]}y"
    for ending in _ENDINGS:
        short = word.removesuffix(ending)
        if short != word and len(short) >= _LEAST and not word.endswith(("ss", "eed", "us")):
            return _single(short).removesuffix("e") if len(short) > _LEAST else _single(short)
    return word.removesuffix("e") if len(word) > _LEAST else word


def _single(short: str) -> str:
    """What is left of a word whose last letter was doubled before its ending: tripp -> trip."""
    doubled = len(short) > _LEAST and short[-1] == short[-2] and short[-1] not in _STAYS_DOUBLE
    return short[:-1] if doubled else short
