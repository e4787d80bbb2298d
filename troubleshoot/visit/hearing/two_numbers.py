"""Two numbers that are read out as one: 128 over 340, 75 in 57 out, both sides 290."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from troubleshoot.knowledge.model import Test
from troubleshoot.visit.hearing.short_words import NUMBER, Meant, Piece, Words

_NUMBER: Final = re.compile(NUMBER)
_BOTH: Final = re.compile(r"both\b", re.IGNORECASE)
_IN_OUT: Final = re.compile(
    rf"(?P<first>{NUMBER}) in(?:,| and)? (?P<second>{NUMBER})(?: out)", re.IGNORECASE
)
_OVER: Final = re.compile(
    rf"(?P<first>{NUMBER} ?[a-z#%]*) ?(?P<how>over|/) ?(?P<second>{NUMBER} ?[a-z#%]*)",
    re.IGNORECASE,
)


def two_of(words: Words, pieces: list[Piece], asked: Test | None) -> list[Piece] | None:
    """Two numbers, one over the other or one in and one out, as two readings; None for none."""
    values = [piece for piece in pieces if piece.kind == "value"]
    names = [piece for piece in pieces if piece.kind == "name"]
    if len(values) != 1 or len(names) > 1:
        return None
    text = values[0].text
    over, out = _OVER.fullmatch(text), _IN_OUT.fullmatch(text)
    meant = names[0].meant if names else words.get("", ())
    if names and _BOTH.match(names[0].text) and _NUMBER.match(text):
        first, second, is_over = text, text, True
    elif over is not None and (over["how"].lower() == "over" or names or _is_of(meant, asked)):
        first, second, is_over = over["first"], over["second"], True
    elif out is not None:
        first, second, is_over = out["first"], out["second"], False
    else:
        return None
    tests = {test.id: test for every in words.values() for test, _ in every}
    for test, short in meant:
        other = tests.get((short.over if is_over else short.out) or "")
        if other is not None:
            row = [*_named(test, first.strip()), *_named(other, second.strip())]
            places = [piece for piece in pieces if piece.kind == "place"][:1]
            return [replace(piece, nth=nth) for nth, piece in enumerate([*places, *row])]
    return None


def _is_of(meant: Meant, asked: Test | None) -> bool:
    """Whether what is asked for is one of two numbers that are read with a slash between."""
    pairs = {name for test, short in meant if short.over for name in (test.id, short.over)}
    return asked is not None and asked.id in pairs


def _named(test: Test, text: str) -> Iterator[Piece]:
    own = next(short for short in test.short_words if (short.over or short.out) is None)
    yield Piece("name", own.words[0], ((test, own),))
    yield Piece("value", text)
