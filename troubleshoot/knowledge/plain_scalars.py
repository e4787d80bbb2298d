"""What an unquoted word of YAML means: a number, true, false, nothing, or text.

Only plain decimal numbers and the words true and false are taken as such. What another YAML
reader would take for a number in disguise (010, 0x1F, 12:30, 1e3) is refused, so that nobody has
to know. yes, no, on and off stay text.
"""

from __future__ import annotations

import re
from typing import Final

_INTEGER: Final = re.compile(r"[-+]?(?:0|[1-9][0-9]{0,14})")
_DECIMAL: Final = re.compile(r"[-+]?(?:0|[1-9][0-9]{0,14})?\.[0-9]{1,15}")
_DISGUISED: Final = (
    (re.compile(r"[-+]?0[0-9_]+(?:\.[0-9_]*)?"), "a number that begins with zero"),
    (re.compile(r"[-+]?[0-9]+(?::[0-9]+)+(?:\.[0-9]*)?"), "a number with colons"),
    (re.compile(r"[-+]?0[xob][0-9a-fA-F_]+"), "a number that is not decimal"),
    (re.compile(r"[-+]?[0-9][0-9_]*_[0-9_.]*"), "a number with underscores"),
    (re.compile(r"[-+]?[0-9.]+[eE][-+]?[0-9]+"), "a number with an exponent"),
    (re.compile(r"[-+]?\.(?:inf|nan)", re.IGNORECASE), "a number without a value"),
    (re.compile(r"[-+]?[0-9]+\."), "a number that ends in a point"),
    (re.compile(r"[-+]?[0-9]{16,}(?:\.[0-9]*)?"), "a number with too many digits"),
    (re.compile(r"[-+]?[0-9]*\.[0-9]{16,}"), "a number with too many digits"),
)
_BOOLEANS: Final = {"true": True, "false": False}
_NOTHING: Final = frozenset({"", "~", "null"})
_BEGINNINGS: Final = frozenset("+-.0123456789")
"""What every number begins with; most words are told from numbers by this alone."""
_MOST_SHOWN: Final = 40
"""Characters of a number that is refused: the rest tells nothing."""


class RefusedScalar(ValueError):
    """An unquoted word that could be read in two ways. `instead` says what to write."""

    def __init__(self, what: str, instead: str) -> None:
        super().__init__(what)
        self.instead = instead


def scalar_value(word: str) -> str | int | float | bool | None:
    """Return what an unquoted word means. Raises RefusedScalar where that is in doubt."""
    if word in _NOTHING:
        return None
    if word in _BOOLEANS:
        return _BOOLEANS[word]
    if word[0] in _BEGINNINGS:
        return _number_or_text(word)
    if word.lower() in _BOOLEANS:
        raise RefusedScalar(f"{word} with capitals", f"write {word.lower()}")
    return word


def _number_or_text(word: str) -> str | int | float:
    if _INTEGER.fullmatch(word):
        return int(word)
    if _DECIMAL.fullmatch(word):
        return float(word)
    for pattern, name in _DISGUISED:
        if pattern.fullmatch(word):
            shown = word if len(word) <= _MOST_SHOWN else f"{word[:_MOST_SHOWN]}..."
            raise RefusedScalar(f"{shown} is {name}", "write it out plainly, or quote it as text")
    return word
