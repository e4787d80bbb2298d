"""Whether two names are of one unit, as people write them."""

from __future__ import annotations

import re
from dataclasses import replace
from types import MappingProxyType
from typing import Final

from troubleshoot.outside.look_alike import as_seen
from troubleshoot.reasoning.unit.unit_numbers import UnitNumbers, may_have_same_numbers, numbers_of

_LEAST_SHORT: Final = 3
"""Letters of a short form that may leave out letters in its midst: bldg."""
_LEAST_MISTYPED: Final = 6
"""Letters of a word in which two may have changed places."""
_SHORT: Final = MappingProxyType(
    {
        "av": "avenue", "bl": "boulevard", "cr": "creek", "ct": "court", "dr": "drive doctor",
        "ft": "fort", "hq": "headquarters", "ln": "lane", "lk": "lake", "mt": "mount mountain",
        "pk": "park pike", "pt": "point port",
        "rd": "road", "rm": "room", "rt": "route", "st": "street saint",
        "tc": "terrace", "wh": "warehouse", "wy": "way", "xing": "crossing",
    }
)  # fmt: skip
"""What two letters stand for in an address, where the word does not begin with both."""
_IN_FULL: Final = MappingProxyType(
    {
        "ave": "avenue", "av": "avenue", "apt": "apartment", "bldg": "building",
        "blvd": "boulevard", "ct": "court", "dr": "drive", "fl": "floor", "hwy": "highway",
        "ln": "lane", "pkwy": "parkway", "rd": "road", "rte": "route", "st": "street",
        "ste": "suite",
    }
)  # fmt: skip
"""Short spellings that stand for one word beside the others of an address."""
_WORD: Final = re.compile(r"[^\W\d_]+")
_CORNER: Final = re.compile("(north|south|n|s)(east|west|e|w)")


def same_unit(one: str, other: str) -> bool:
    """Whether two names are of one unit, however they were typed: RTU-7, rtu 07; Ln, Lane."""
    return bool(in_plain(one)) and in_plain(one) == in_plain(other)


def may_be_same(one: str, other: str) -> bool:
    """Whether they may be: no other number, and words of one among those of the other.

    The order of words, short forms (bldg, N, initials), letters that changed places, how a number
    is said and what is left out, the number too, tell no units apart; another number does, and
    another word (north, south). What names only a kind (RTU) may be any.
    """
    if same_unit(one, other):
        return True
    read = ((each, its) for each in _ways(one) for its in _ways(other))
    return any(_may_be(*each) for each in read) or any(map(_is_of_a_kind, (one, other)))


def likeness(one: str, other: str) -> float:
    """How alike two names are as they are spelt, from 0 to 1."""
    # here, since most starts compare no names
    from difflib import SequenceMatcher

    return SequenceMatcher(None, in_plain(one), in_plain(other), autojunk=False).ratio()


def _ways(name: str) -> tuple[UnitNumbers, ...]:
    """The numbers of a name in each way to read it; that of a place alone may be the unit's own.

    Mill Lane 4 may be unit 4.
    """
    read, words = numbers_of(name), frozenset(_WORD.findall(as_seen(name).casefold()))
    of_place = (each for each in read if each.place and not each.own)
    own = (replace(each, own=each.place, place=frozenset(), words=words) for each in of_place)
    return (*read, *own)


def _may_be(one: UnitNumbers, other: UnitNumbers) -> bool:
    """Whether numbers, where both have some, and words leave two names one unit."""
    if one.own and other.own:
        return may_have_same_numbers(one, other) and _are_among(one.words, other.words)
    return bool(one.words and other.words) and _are_among(one.words, other.words)


def _are_among(words: frozenset[str], their_words: frozenset[str]) -> bool:
    """Whether all of the fewer are among the others, or are the others' first letters."""
    both = (_with_corners(words), _with_corners(their_words))
    short, long = sorted(both, key=lambda each: (len(each), *sorted(each)))
    if len(short) == 1 and len(long) > 1 and sorted(*short) == sorted(each[0] for each in long):
        return True
    return all(any(_is_alike(word, each) for each in long) for word in short)


def _with_corners(words: frozenset[str]) -> frozenset[str]:
    """The words with a corner of the compass as its two: NE as north and east."""
    corners = {word: _CORNER.fullmatch(word) for word in words}
    return frozenset(
        part
        for word, corner in corners.items()
        for part in (corner.groups() if corner else (word,))
    )


def _is_of_a_kind(name: str) -> bool:
    """Whether it says what kind of thing the unit is, or that it is the one of before."""
    read = numbers_of(name)
    return bool(in_plain(name)) and not any(each.own or each.words for each in read)


def _is_alike(one: str, other: str) -> bool:
    short, long = sorted((one, other), key=len)
    if long.startswith(short) or long in _SHORT.get(short, "").split():
        return True
    if len(short) >= _LEAST_MISTYPED and sorted(short) == sorted(long):
        return True
    left = iter(long)
    is_left_out = short[0] == long[0] and all(letter in left for letter in short)
    return len(short) >= _LEAST_SHORT and is_left_out


def in_plain(name: str) -> str:
    """Letters and digits alone, no zeros before a number, an address's short words in full."""
    said = re.sub(r"(?<!\d)0+(?=\d)", "", as_seen(name).casefold())
    said = _WORD.sub(lambda word: _IN_FULL.get(word[0], word[0]), said)
    return "".join(c for c in said if c.isalnum())
