"""Words that say of which unit something is told: this one, or another by its number or place.

Who tells of an own lock, cock, switch or proof that it is another unit's says that this one has
none. What others have done there, or what was done there besides, says nothing of this one.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from typing import Final

from troubleshoot.quantities.spoken_numbers import in_figures

ANOTHER: Final = "another-unit"
"""What stands in an entry of the rules for whatever names another unit."""

_BY_KIND: Final = re.compile(
    r"\b(?:rtus?|units?|rooftop|ahu)(?: (?:number|no))?[- ]?#?(\d+)(?:s|'s)?\b"
)
_BY_FIGURES: Final = re.compile(
    r"(?:\bon (?:number )?|\bis |\bof |\bat )#(\d+)\b|\bon (?:number )?(\d+)"
    r"(?= (?:by|instead|not|oops)\b|$)|\bnumber (\d+)(?:s| is)\b"
)
_OTHER: Final = re.compile(
    r"\b(?:(?:other|next|neighbou?r\w*|adjacent|another|second) (?:unit|rtu|roof|building|one)s?|"
    r"next door|(?:one|unit) (?:next to|beside|over from|behind) (?:it|this|here))\b"
)
_OTHER_EQUIPMENT: Final = re.compile(
    r"\b(?:neighbou?rs?|exhaust|make ?-?up(?: air)?|walk-?in|freezer|water heater|boiler|"
    r"(?:unit|one)s? (?:next to|beside|over|above|behind|across|down) \w+)\b"
)
_NAMED: Final = re.compile(r"\b(?:on|of|for|at|to|is) the (\w+)(?: \w+)? (?:unit|one|rtu)s?\b")
_THIS: Final = frozenset(
    "same right correct whole main only very own very first proper actual".split()  # noqa: SIM905
)
_MISTAKEN: Final = re.compile(
    r"\b(?:by (?:mistake|accident|error)|accident\w*|mistak\w*|instead|mixed up|"
    r"not (?:this|here|mine|ours)\b.*)"
)
_FOLLOWS: Final = re.compile(
    r"[,;]\s+(?=(?:thats|that is|its|it is) the \w+ i\b|not (?:this|here)\b)"
)
_COMPANY: Final = re.compile(r"\bmy (?:helper|partner|buddy|apprentice|boss|guys?|coworker)\b")
_OWN: Final = re.compile(r"\b(?:i|im|ive|my|mine|we|our|ours)\b")
_POINTS: Final = re.compile(r"\b(?:that|this) (?:cock|valve|disconnect|breaker|switch|handle)\b")
_BEGINS: Final = re.compile(
    r"\W*(?:(?:oops|ok|so|and|actually|damn|shit|crap|well|realized|just|only|the|a|had|it|was) )*"
    r"(?:lock|padlock|locks|tag|loto|hung|put|locked|pulled|killed|opened|threw|flipped|shut|closed|"
    r"turned|tagged|tested|proved|metered|checked|bled|discharged|switched)\b"
)
_OTHERS: Final = re.compile(
    r"\b(?:his|her|hers|their|theirs|he|she|they|helper|partner|buddy|apprentice|guys?|\w*cian\w*|"
    r"customer\w*|owner\w*|tenant\w*|super|somebody|someone|plumber\w*)\b"
)
_BESIDES: Final = re.compile(r"\b(?:too|also|both|as well|besides)\b")


def names_another(part: str, own: Iterable[str]) -> bool:
    """Whether it names another unit than that of these numbers."""
    return bool(_OTHER.search(part)) or not {*_numbers(part)} <= {*own}


def is_next_door(part: str) -> bool:
    """Whether it names a unit beside this one, and not by a number, which may be this one's."""
    return bool(_OTHER.search(part))


def only_another(part: str, own: Iterable[str]) -> bool:
    """Whether it tells of another unit alone, and of nothing that is one's own."""
    return names_another(part, own) and not _is_own(part)


def told_of_own(part: str, own: Iterable[str]) -> bool:
    """Whether it is told that what is one's own stands at another unit, or was a mistake."""
    if _MISTAKEN.search(part):
        return True
    if not names_another(part, own) and not _OTHER_EQUIPMENT.search(part):
        return False
    return _is_own(part)


def may_be_of_own(part: str, name: str) -> bool:
    """Whether what is one's own stands at a unit that is named by a word that is not this one's."""
    named = _NAMED.search(part)
    known = {*_THIS, *name.lower().split()}
    return named is not None and named[1] not in known and _is_own(part)


def joined(said: str) -> str:
    """With what only points back to the part before it as one part."""
    return _FOLLOWS.sub(" ", said)


def as_done(part: str) -> str:
    """What was done, without the unit's name and the words of a mistake: they deny nothing."""
    return _OTHER.sub(" ", _MISTAKEN.sub(" ", part))


def _numbers(part: str) -> Iterator[str]:
    for found in (*_BY_KIND.finditer(in_figures(part)), *_BY_FIGURES.finditer(part)):
        said = next(filter(None, found.groups()))
        yield said.lstrip("0") or "0"


def _is_own(part: str) -> bool:
    if _BESIDES.search(part):
        return False
    alone = _COMPANY.sub("helper", part)
    if _OWN.search(alone) or _POINTS.search(alone):
        return True
    return bool(_BEGINS.match(alone)) and not _OTHERS.search(alone)
