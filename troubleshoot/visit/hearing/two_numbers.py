"""Two numbers that are read out as one: 128 over 340, 75 in 57 out, both sides 290."""

from __future__ import annotations

import re
from collections.abc import Sequence
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


def with_pairs(words: Words, pieces: Sequence[Piece], asked: Test | None) -> list[Piece]:
    """The pieces of a line, each pair of numbers as two readings in the place of its value."""
    found: list[Piece] = []
    rest = [*pieces]
    while rest:
        piece = rest.pop(0)
        before = found[-1] if found and found[-1].kind == "name" else None
        behind = rest[0] if rest and rest[0].kind == "name" else None
        name = next((each for each in (before, behind) if _is_for_two(each)), None)
        is_of_one = piece.kind != "value" or (before is not None and name is None)
        pair = [] if is_of_one else _pair(words, piece, name, asked)
        if pair and before is not None:
            found = found[:-1]
        elif pair and name is not None:
            rest = rest[1:]
        found += pair or [piece]
    return [replace(piece, nth=nth) for nth, piece in enumerate(found)]


def _is_for_two(name: Piece | None) -> bool:
    return name is not None and any(short.over or short.out for _, short in name.meant)


def _pair(words: Words, value: Piece, name: Piece | None, asked: Test | None) -> list[Piece]:
    """A value as two readings, one over the other or one in and one out; empty where it is none."""
    text, meant = value.text, words.get("", ()) if name is None else name.meant
    over, out = _OVER.fullmatch(text), _IN_OUT.fullmatch(text)
    if name is not None and _BOTH.match(name.text) and _NUMBER.match(text):
        first, second, is_over = text, text, True
    elif over is not None and (over["how"].lower() == "over" or name or _is_of(meant, asked)):
        first, second, is_over = over["first"], over["second"], True
    elif out is not None:
        first, second, is_over = out["first"], out["second"], False
    else:
        return []
    tests = {test.id: test for every in words.values() for test, _ in every}
    for test, short in meant:
        other = tests.get((short.over if is_over else short.out) or "")
        if other is not None:
            return [_named(test, first.strip()), _named(other, second.strip())]
    return []


def _is_of(meant: Meant, asked: Test | None) -> bool:
    """Whether what is asked for is one of two numbers that are read with a slash between."""
    pairs = {name for test, short in meant if short.over for name in (test.id, short.over)}
    return asked is not None and asked.id in pairs


def _named(test: Test, text: str) -> Piece:
    own = next(short for short in test.short_words if (short.over or short.out) is None)
    return Piece("reading", text, ((test, own),), words=own.words[0])
