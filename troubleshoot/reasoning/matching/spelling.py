"""One typing error in a long word, seen through where it can mean one word alone."""

from __future__ import annotations

import itertools
from collections.abc import Collection
from typing import Final

from troubleshoot.reasoning.matching.stems import stem

_LEAST: Final = 5
"""Letters of a word in which a letter too many, too few or swapped is seen through."""
_LEAST_CHANGED: Final = 6
"""Letters of one in which a letter changed for another is: in a short one it makes another word."""


def mended(word: str, known: Collection[str]) -> str:
    """The known word that is meant; the word itself where that is not plain.

    A letter too many, too few or swapped is likelier than one changed for another.
    """
    if word in known or len(word) < _LEAST or not word.isalpha():
        return word
    for is_near in (is_slipped, is_changed):
        near = {each for each in known if is_near(word, each)}
        if near:
            return min(near) if len({stem(each) for each in near}) == 1 else word
    return word


def is_slipped(typed: str, meant: str) -> bool:
    """Whether a word is another but for one letter left out, put in or swapped with its next."""
    if typed[0] != meant[0] or len(meant) < _LEAST or abs(len(typed) - len(meant)) > 1:
        return False
    left, wanted = _where_they_part(typed, meant)
    if len(left) != len(wanted):
        return left[1:] == wanted or left == wanted[1:]
    return left[:2] == wanted[1::-1] and left[2:] == wanted[2:]


def is_changed(typed: str, meant: str) -> bool:
    """Whether a word is another, a long one, but for one letter in place of another."""
    if typed[0] != meant[0] or len(typed) != len(meant) or len(meant) < _LEAST_CHANGED:
        return False
    left, wanted = _where_they_part(typed, meant)
    return left[1:] == wanted[1:]


def _where_they_part(typed: str, meant: str) -> tuple[str, str]:
    """What is left of two words behind all letters that they begin with alike."""
    alike = (a == b for a, b in zip(typed, meant, strict=False))
    same = sum(1 for _ in itertools.takewhile(bool, alike))
    return typed[same:], meant[same:]
