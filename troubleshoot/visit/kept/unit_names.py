"""Whether two names are of one unit, as people write them."""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.outside.look_alike import as_seen

_KINDS: Final = frozenset({"rtu", "unit", "rooftop", "roof", "top", "number", "no", "the", "at"})
"""Words that are left out of a unit's name as often as not."""
_LEAST_SHORT: Final = 3
"""Letters of a short form that may leave out letters in its midst: bldg."""
_LEAST_MISTYPED: Final = 6
"""Letters of a word in which two may have changed places."""


def same_unit(one: str, other: str) -> bool:
    """Whether two names are of one unit, however they were typed: RTU-7, rtu 07."""
    return bool(_plain(one)) and _plain(one) == _plain(other)


def may_be_same(one: str, other: str) -> bool:
    """Whether they may be: no other number, and words of one among those of the other.

    The order of words, short forms (bldg, N, initials), letters that changed places and what is
    left out, the number too, tell no units apart; another number does, and another word (north,
    south). What names only a kind (RTU) may be any.
    """
    if same_unit(one, other):
        return True
    (numbers, words), (others, their_words) = _parts(one), _parts(other)
    if numbers and others:
        return numbers == others and _are_among(words, their_words)
    if words and their_words:
        return _are_among(words, their_words)
    return any(_is_of_a_kind(name) for name in (one, other))


def _are_among(words: frozenset[str], their_words: frozenset[str]) -> bool:
    """Whether all of the fewer are among the others, or are the others' first letters."""
    short, long = sorted((words, their_words), key=lambda each: (len(each), *sorted(each)))
    if len(short) == 1 and len(long) > 1 and sorted(*short) == sorted(each[0] for each in long):
        return True
    return all(any(_is_alike(word, each) for each in long) for word in short)


def _is_of_a_kind(name: str) -> bool:
    """Whether it says what kind of thing the unit is, and no more."""
    numbers, words = _parts(name)
    return not numbers and not words and bool(_plain(name))


def _parts(name: str) -> tuple[frozenset[str], frozenset[str]]:
    """The numbers of a name, without the zeros that lead them, and its words."""
    said = as_seen(name).casefold()
    numbers = frozenset(digits.lstrip("0") for digits in re.findall(r"\d+", said))
    return numbers, frozenset(re.findall(r"[^\W\d_]+", said)) - _KINDS


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
