"""The numbers of a unit's name, however they are said: 3, three, III, third, 3/4, 1 to 4."""

from __future__ import annotations

import re
from itertools import pairwise
from types import MappingProxyType
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.outside.look_alike import as_seen
from troubleshoot.quantities.spoken_numbers import in_figures

_KINDS: Final = frozenset(
    {
        "rtu",
        "rtus",
        "unit",
        "units",
        "rooftop",
        "rooftops",
        "roof",
        "top",
        "tops",
        "number",
        "no",
        "the",
        "at",
    }
)
"""Words that are left out of a unit's name as often as not."""
_AGAIN: Final = frozenset({"same", "as", "before", "again"})
"""Words that name a unit by another time."""
_PLACES: Final = (
    r"(?:buildings?|bldgs?|floors?|fl|levels?|store(?:y|ys|ies)?|suites?|ste|streets?|st|avenues?|"
    r"ave|roads?|rd|lanes?|ln|drives?|dr|boulevards?|blvd|highways?|hwy|routes?|rte|apartments?|apts?|"
    r"rooms?|rm|bays?|wings?|phases?|sites?)"
)
_OF_A_PLACE: Final = re.compile(
    rf"\b{_PLACES} (?:no )?(\d+)\b|\b(\d+)(?:st|nd|rd|th)? {_PLACES}\b(?! \d)"
)
_ORDINALS: Final = MappingProxyType(
    {
        "first": "one", "second": "two", "third": "three", "fifth": "five", "eighth": "eight",
        "ninth": "nine", "twelfth": "twelve",
    }
)  # fmt: skip
_CARDINAL: Final = re.compile(
    r"(?:one|two|three|four|five|six|seven|eight|nine|zero|ten|eleven|twelve|(?:thir|four|fif|six|"
    r"seven|eigh|nine)(?:teen|ty)|twenty|forty)"
)
_ORDINAL: Final = re.compile(
    rf"\b(?:(twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety) )?({'|'.join(_ORDINALS)}|"
    r"[a-z]+th)\b"
)
_ROMAN: Final = re.compile(r"\b(?=[ivx])(x{0,3})(ix|iv|v?i{0,4})\b")
_ROMAN_VALUES: Final = MappingProxyType({"i": 1, "v": 5, "x": 10})
_SHAPED: Final = re.compile(r"(?<![\u0400-\u04ff])[\u0417\u0437](?![\u0400-\u04ff])|[\u01b7\u0292]")
"""Letters that look like a 3, where no word of their alphabet is written with them."""
_LIST: Final = re.compile(r"(?<=\d)(?: ?[/&+,] ?| and | or )(?=\d)")
_RANGE: Final = re.compile(r"\b(\d{1,3}) ?(?:to|through|thru|till|\.\.) ?(\d{1,3})\b")
_OF_MANY: Final = re.compile(r"\b((?:rtus|units|roof ?tops) ?\d+) ?- ?(?=\d)")
"""Units 1-4 are four; RTU-3-1 is one."""
_LONGEST_RANGE: Final = 60
_KIND: Final = re.compile(r"\b(?:rtus?|units?|roof ?tops?|ahus?|no|number)\b")
_GLUED: Final = re.compile(rf"\b(rtu|unit|rooftop)(?={_CARDINAL.pattern}\b|\d)")


@frozen
class UnitNumbers:
    """What numbers tell of a unit: its own, and those of a building or a floor.

    `listed`: it may be any one of its own. `words`: what else is said; a number that is said in a
    way that may be two is neither.
    """

    own: frozenset[str]
    place: frozenset[str]
    listed: bool
    words: frozenset[str]


def may_have_same_numbers(one: UnitNumbers, other: UnitNumbers) -> bool:
    """Whether two units may be one by their numbers: what is left out tells none apart."""
    if one.place and other.place and one.place != other.place:
        return False
    if one.listed or other.listed:
        return not one.own.isdisjoint(other.own)
    return one.own <= other.own or other.own <= one.own


def said_numbers(name: str) -> frozenset[str]:
    """All numbers of a name, of the unit and of its place; Roman where no other is said."""
    for read in numbers_of(name):
        if found := read.own | read.place:
            return frozenset(number or "0" for number in found)
    return frozenset()


def numbers_of(name: str) -> tuple[UnitNumbers, ...]:
    """The numbers of a name in each way in which it may be read: V is a letter, or five."""
    said = _in_plain_words(name)
    roman = _ROMAN.sub(_in_arabic, said)
    return tuple(map(_numbers, dict.fromkeys((said, roman))))


def _in_plain_words(name: str) -> str:
    """The name in small letters and single blanks, with the numbers that are words in figures."""
    seen = as_seen("".join(map(_by_value, _SHAPED.sub("3", name)))).casefold()
    apart = re.sub(r"[^\w/&+,.]|_", " ", _GLUED.sub(r"\1 ", _OF_MANY.sub(r"\1 to ", seen)))
    words = re.sub(r"(?<=[^\W\d_])(?=\d)|(?<!\.)\.(?!\.)", " ", apart.replace(",", " , "))
    return in_figures(_ORDINAL.sub(_in_cardinals, " ".join(words.split())))


def _numbers(said: str) -> UnitNumbers:
    place = {found[1] or found[2] for found in _OF_A_PLACE.finditer(said)}
    rest, in_ranges = _RANGE.subn(_in_range, _OF_A_PLACE.sub(" ", said))
    listed = bool(in_ranges or _LIST.search(rest))
    kinds = list(_KIND.finditer(rest))
    behind = re.findall(r"\d+", rest[kinds[-1].end() :]) if kinds else []
    before = set(re.findall(r"\d+", rest)) - set(behind) if behind else set[str]()
    own = behind or re.findall(r"\d+", rest)
    words = frozenset(re.findall(r"[^\W\d_]+", re.sub(r"(?<=\d)(?:st|nd|rd|th)\b", " ", rest)))
    spoken = {word for word in words if _is_number(word)}
    return UnitNumbers(
        _without_zeros(own),
        _without_zeros([*place, *before]),
        listed,
        words - _KINDS - _AGAIN - spoken,
    )


def _without_zeros(numbers: list[str]) -> frozenset[str]:
    return frozenset(number.lstrip("0") for number in numbers)


def _by_value(letter: str) -> str:
    """A sign that is a number in another writing in figures: III in one sign, 3 in a ring."""
    if letter.isascii():
        return letter
    import unicodedata  # only where something is not plain

    value = unicodedata.numeric(letter, -1.0)
    return str(int(value)) if value >= 0 and value.is_integer() else letter


def _in_cardinals(found: re.Match[str]) -> str:
    """The figures of an ordinal: 21 of twenty first; any other word as it stands."""
    regular = re.sub("ieth$", "y", found[2]).removesuffix("th")
    cardinal = _ORDINALS.get(found[2], regular)
    return in_figures(f"{found[1] or ''} {cardinal}".strip()) if _is_number(cardinal) else found[0]


def _is_number(word: str) -> bool:
    return _CARDINAL.fullmatch(word) is not None


def _in_arabic(found: re.Match[str]) -> str:
    values = [_ROMAN_VALUES[letter] for letter in found[0]]
    signed = [-value if value < after else value for value, after in pairwise([*values, 0])]
    return str(sum(signed))


def _in_range(found: re.Match[str]) -> str:
    """All numbers of a range, up or down, where there are not too many of them to be meant."""
    first, last = sorted(map(int, found.groups()))
    if last - first > _LONGEST_RANGE:
        return found[0]
    return " ".join(map(str, range(first, last + 1)))
