"""A sentence with holes: `There is no place called {name}.` Two braces stand for one brace."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from functools import cache
from typing import Final

from troubleshoot.frozen import frozen

_PARTS: Final = re.compile(r"\{([a-z_][a-z0-9_]*)\}|(\{\{|\}\})|([{}])")
_LETTER: Final = re.compile(r"[^\W\d_]")


@frozen
class Sentence:
    """The pieces between the holes, one more than there are holes, and what the holes are called.

    Raises ValueError for a brace that neither opens a hole nor stands twice.
    """

    pieces: tuple[str, ...]
    holes: tuple[str, ...]

    @classmethod
    def of(cls, text: str) -> Sentence:
        if "{" not in text and "}" not in text:
            return cls((text,), ())
        pieces, holes, at = [""], [], 0
        for match in _PARTS.finditer(text):
            pieces[-1] += text[at : match.start()]
            at = match.end()
            if match[3]:
                raise ValueError(f"a lone brace in {text!r}")
            if match[2]:
                pieces[-1] += match[2][0]
            else:
                holes.append(match[1])
                pieces.append("")
        pieces[-1] += text[at:]
        return cls(tuple(pieces), tuple(holes))

    def filled(self, values: Mapping[str, str]) -> str:
        """The sentence with its holes filled."""
        said = [self.pieces[0]]
        for hole, piece in zip(self.holes, self.pieces[1:], strict=True):
            said += values[hole], piece
        return "".join(said)

    def taken_apart(self, text: str, sparing: bool) -> tuple[str, ...] | None:
        """What fills the holes where a text is this sentence; each as little as can be, or all."""
        match = _pattern(self.pieces, sparing).fullmatch(text)
        return None if match is None else match.groups()

    @property
    def letters(self) -> int:
        """How many letters stand outside the holes."""
        return sum(map(letters, self.pieces))


@cache
def _pattern(pieces: tuple[str, ...], sparing: bool) -> re.Pattern[str]:
    hole = "(.*?)" if sparing else "(.*)"
    return re.compile(hole.join(map(re.escape, pieces)), re.DOTALL)


def letters(text: str) -> int:
    """How many letters a text has."""
    return len(_LETTER.findall(text))


def written(pieces: Iterable[str]) -> str:
    """Plain text as a part of a sentence with holes."""
    return "".join(pieces).replace("{", "{{").replace("}", "}}")
