"""Cutting one answer into its legs: 208/209/207, or L1 6.7, L2 6.6, L3 6.8 A.

A leg is one phase, pair or section that is read with others of its kind. A slash may also be a
fraction or part of a unit; where two readings of a text remain, it is refused.
"""

import re
from functools import lru_cache
from typing import Final

from troubleshoot.quantities.plate_volts import with_phases_and_hertz
from troubleshoot.quantities.typed_numbers import is_mixed_fraction, is_ruler_fraction
from troubleshoot.quantities.typed_text import Unclear

_BEGINS_A_VALUE: Final = r"(?=[-+]?[.]?[0-9]|[<>]|ol\b|o\.l|open\b|over|under|more|less)"
_SLASH: Final = re.compile(rf"( ?)/( ?){_BEGINS_A_VALUE}", re.IGNORECASE)
_COMMA: Final = re.compile(rf",? and {_BEGINS_A_VALUE}|, {_BEGINS_A_VALUE}| ?; ?", re.IGNORECASE)
_PLAIN: Final = r"(?:[0-9]+(?:\.[0-9]+)?|\.[0-9]+)"
_THREE_PLAIN: Final = re.compile(rf"({_PLAIN}) ({_PLAIN}) ({_PLAIN}.*)")
"""Three numbers with blanks between them can only be three legs; two could be one number."""
_THOUSANDS: Final = re.compile(r"[<>]? ?[1-9][0-9]{0,2}(?:,[0-9]{3})+(?![0-9,])")
_AROUND_A_VALUE: Final = " ,;/"
_AND_AT_THE_END: Final = re.compile(r",? and$", re.IGNORECASE)
_FRACTION_OR_LEGS: Final = (
    "write a decimal point for a fraction, or blanks around the slash between legs"
)
_GAP: Final = r"(?:[- ]+(?:to )?)?"
_FRACTION_KINDS: Final = frozenset({"length", "slope"})


def split_legs(text: str, kind: str, names: tuple[str, ...]) -> tuple[tuple[str | None, str], ...]:
    """Return (name or None, text of the value) for each leg in `text`, in the order typed.

    `kind` is the kind of the unit asked for: only lengths and slopes are read off a ruler, so
    only there is 1/2 a half. `names` are the leg names allowed. Raises Unclear, also for what a
    data plate says (460/3/60): nobody's legs read 3 and 60 V by chance.
    """
    if kind == "voltage" and with_phases_and_hertz(text):
        raise Unclear(
            "is the volts, phases and hertz of a data plate",
            "give the volts of each leg as read, like 208/209/207",
        )
    named = split_names(text, names)
    if named:
        return named
    ruler = kind in _FRACTION_KINDS
    if _COMMA.search(text):
        parts = tuple(_COMMA.split(text))
        if any(_SLASH.search(part) and not _is_fraction(part, ruler) for part in parts):
            raise Unclear("parts the legs in two ways", "write slashes only, like 208/209/207")
    elif three := _THREE_PLAIN.fullmatch(text):
        parts = three.groups()
    else:
        parts = _split_slashes(text, ruler)
    if len(parts) == 1 and _THOUSANDS.match(text):
        raise Unclear(
            "has a comma that could part thousands or legs",
            "leave the comma out, or write a slash between legs",
        )
    return tuple((None, part) for part in parts)


def split_names(text: str, names: tuple[str, ...]) -> tuple[tuple[str, str], ...]:
    """Return (name as allowed, text of the value) for each named value; empty if none is named.

    A pair may be typed either way round (S-C for C-S), with a hyphen, a blank or nothing between.
    Raises Unclear when something stands before the first name, or a name comes twice.
    """
    if not names:
        return ()
    pattern, allowed = _name_pattern(names)
    found = list(pattern.finditer(text))
    if not found:
        return ()
    if found[0].start() > 0:
        raise Unclear("holds a value before its first name", "name every leg")
    called = [allowed[match.lastindex or 0] for match in found]
    if len(set(called)) < len(called):
        raise Unclear("names one leg twice", f"use each name once: {', '.join(names)}")
    ends = [match.start() for match in found[1:]] + [len(text)]
    return tuple(
        (name, _AND_AT_THE_END.sub("", text[match.end() : end].rstrip(_AROUND_A_VALUE)))
        for name, match, end in zip(called, found, ends, strict=True)
    )


def _split_slashes(text: str, ruler: bool) -> tuple[str, ...]:
    slashes = list(_SLASH.finditer(text))
    spaced = [match for match in slashes if match[1] or match[2]]
    tight = len(slashes) - len(spaced)
    if spaced and tight:
        if not ruler:
            raise Unclear(
                "has slashes with and without blanks", "write them alike, like 208/209/207"
            )
        return _cut(text, spaced)
    if tight == 1 and _is_fraction(text, ruler):
        return (text,)
    if tight == 1 and is_ruler_fraction(text):
        raise Unclear("could be a fraction or two legs", _FRACTION_OR_LEGS)
    if ruler and tight > 1 and tight % 2:
        raise Unclear("could be fractions or legs", _FRACTION_OR_LEGS)
    return _cut(text, slashes)


def _is_fraction(text: str, ruler: bool) -> bool:
    """Say whether a slash in `text` can only be a fraction's."""
    return is_ruler_fraction(text) and (ruler or is_mixed_fraction(text))


def _cut(text: str, slashes: list[re.Match[str]]) -> tuple[str, ...]:
    starts = [0] + [match.end() for match in slashes]
    ends = [match.start() for match in slashes] + [len(text)]
    return tuple(text[start:end] for start, end in zip(starts, ends, strict=True))


@lru_cache(maxsize=64)
def _name_pattern(names: tuple[str, ...]) -> tuple[re.Pattern[str], tuple[str, ...]]:
    """Return a pattern that finds a name before a value, and the name that each group stands for.

    Groups count from 1. Names turned round come last, so that a name of its own goes first.
    """
    spellings = [(_terminals(name) or name.split(), name) for name in names]
    spellings += [(terminals[::-1], name) for name in names if (terminals := _terminals(name))]
    # The longest first, for L1 also begins L1-L2; sorting keeps the order of equals.
    spellings.sort(key=lambda spelling: -len("".join(spelling[0])))
    choices = "|".join(f"({_GAP.join(map(re.escape, pieces))})" for pieces, _ in spellings)
    pattern = rf"(?:^|(?<=[ ,;/]))(?:{choices})(?: ?[:=] ?| ){_BEGINS_A_VALUE}"
    allowed = ("", *(name for _, name in spellings))
    return re.compile(pattern, re.IGNORECASE), allowed


def _terminals(name: str) -> list[str]:
    """Return the two ends of a pair's name (C-S, AB, L1-L2), or nothing for another name."""
    if len(name) == 2 and name.isalpha():
        return list(name)
    ends = name.split("-")
    return ends if len(ends) == 2 and all(0 < len(end) <= 2 for end in ends) else []
