"""Whether two names are of one unit, as people write them."""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.outside.look_alike import as_seen
from troubleshoot.visit.kept.unit_numbers import UnitNumbers, may_have_same_numbers, numbers_of

_LEAST_SHORT: Final = 3
"""Letters of a short form that may leave out letters in its midst: bldg."""
_LEAST_MISTYPED: Final = 6
"""Letters of a word in which two may have changed places."""


def same_unit(one: str, other: str) -> bool:
    """Whether two names are of one unit, however they were typed: RTU-7, rtu 07."""
    return bool(_plain(one)) and _plain(one) == _plain(other)


def may_be_same(one: str, other: str) -> bool:
    """Whether they may be: no other number, and words of one among those of the other.

    The order of words, short forms (bldg, N, initials), letters that changed places, how a number
    is said and what is left out, the number too, tell no units apart; another number does, and
    another word (north, south). What names only a kind (RTU) may be any.
    """
    if same_unit(one, other):
        return True
    read = ((each, its) for each in numbers_of(one) for its in numbers_of(other))
    return any(_may_be(*each) for each in read) or any(map(_is_of_a_kind, (one, other)))


def _may_be(one: UnitNumbers, other: UnitNumbers) -> bool:
    """Whether numbers, where both have some, and words leave two names one unit."""
    if one.own and other.own:
        return may_have_same_numbers(one, other) and _are_among(one.words, other.words)
    return bool(one.words and other.words) and _are_among(one.words, other.words)


def _are_among(words: frozenset[str], their_words: frozenset[str]) -> bool:
    """Whether all of the fewer are among the others, or are the others' first letters."""
    short, long = sorted((words, their_words), key=lambda each: (len(each), *sorted(each)))
    if len(short) == 1 and len(long) > 1 and sorted(*short) == sorted(each[0] for each in long):
        return True
    return all(any(_is_alike(word, each) for each in long) for word in short)


def _is_of_a_kind(name: str) -> bool:
    """Whether it says what kind of thing the unit is, or that it is the one of before."""
    read = numbers_of(name)
    return bool(_plain(name)) and not any(each.own or each.words for each in read)


def _is_alike(one: str, other: str) -> bool:
    short, long = sorted((one, other), key=len)
    if long.startswith(short):
        return True
    if len(short) >= _LEAST_MISTYPED and sorted(short) == sorted(long):
        return True
    left = iter(long)
    is_left_out = short[0] == long[0] and all(letter in left for letter in short)
    return len(short) >= _LEAST_SHORT and is_left_out


def _plain(name: str) -> str:
    """Letters and digits alone, without the zeros that lead a number."""
    said = re.sub(r"(?<!\d)0+(?=\d)", "", as_seen(name).casefold())
    return "".join(c for c in said if c.isalnum())
