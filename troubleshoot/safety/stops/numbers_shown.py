"""Every number that is told of a reading: as it stands, in which unit, and where it stands."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.quantities.typed import Expected, NotUnderstood, read

SHARES: Final = ("percent-LEL", "percent-LFL")
_SHARE_SAID: Final = re.compile(
    r"(?P<number>\b[0-9.]*[0-9]) ?(?:(?:%|per ?cent|pct)\.? ?)?"
    r"(?:of (?:the )?)?(?P<share>LEL|LFL)\b",
    re.IGNORECASE,
)
_SHARE_FIRST: Final = re.compile(
    r"(?:(?<![0-9])(?<![0-9] )% ?|(?<!%)(?<!% )\b)(?P<share>LEL|LFL)[:=]? ?"
    r"(?:(?:is|was|at|of|now|reads?|reading|shows?|showed|showing|=) ?){0,2}"
    r"(?P<number>(?:(?:[<>]=?|under|below|less than|over|above|more than) ?)?-?[0-9.]*[0-9])"
    r"(?![0-9.:]| ?%| ?ppm)",
    re.IGNORECASE,
)
"""A share of the explosive limit as people say it: 0 LEL, 0 % of the LEL, LEL 0, LEL is under 3."""
_OF_OXYGEN: Final = re.compile(r" ?(?:%|per ?cent|pct) ?(?:o2|oxygen|rh|humidity)\b", re.IGNORECASE)
"""A share of the air that is of no gas to be afraid of."""
NUMBER: Final = re.compile(
    r"(?P<bound>(?:[<>]=? ?|\b(?:under|below|less than|over|above|more than) )?)"
    r"(?<![\w.,])(?P<number>-?(?:[0-9][0-9.,]*(?<![.,])|\.[0-9]+))(?=(?P<rest> ?\S*(?: \S+){0,2}))"
)
_SHOWN: Final = re.compile(r"\b(?:shows?|showed|showing|reads?|reading|it(?: i|')s|was|at|got) $")
_PERCENTS: Final = ("%", "percent", "pct")
_COUNTED: Final = re.compile(
    r" ?(?:h|hours?|min|minutes?|s|sec\w*|times|joints?|unions?|fittings?|points?|places?|spots?|"
    r"ft|feet|in|inch\w*|psig?|deg\w*|f|c|o'?clock|am|pm|:[0-9]+|/[0-9]+|lb\w*|sides?|ends?)\b",
    re.IGNORECASE,
)
"""What stands behind a number that no instrument shows of the danger."""


@frozen
class Number:
    """A number as it stands, with the unit it was told in, and from where to where it is told."""

    text: str
    unit: str
    start: int
    end: int


def with_its_share(typed: str) -> str:
    """What was typed with each share of the explosive limit as its unit is written: 3 % LEL."""
    for form in (_SHARE_SAID, _SHARE_FIRST):
        typed = form.sub(r"\g<number> % \g<share>", typed)
    return typed


def numbers_in(
    typed: str, units: tuple[str, ...], bare: tuple[str, ...] = ()
) -> Iterator[tuple[str, str]]:
    """Every number that is told in one of some units, as it stands, and the unit; as `told_in`."""
    return ((each.text, each.unit) for each in told_in(typed, units, bare))


def told_in(typed: str, units: tuple[str, ...], bare: tuple[str, ...] = ()) -> Iterator[Number]:
    """Every number that is told in one of some units, and where it stands.

    `bare`: the unit of a share, or of what an instrument is said to show, without any.
    """
    end = 0
    for found in NUMBER.finditer(typed):
        if found.start("number") < end:
            continue  # the second part of one number: 8 lb 4 oz
        head = f"{found['bound']}{found['number']}"
        tokens = [token.rstrip(".,;:!") for token in found["rest"].split()]
        spoken = (
            Number(text, each, found.start(), found.end() + _behind(found["rest"], n))
            for n in (3, 2, 1)
            if tokens[n - 1 :]
            for text in (f"{head} {' '.join(tokens[:n])}",)
            for each in units
            if is_in(text, each)
        )
        one = next(spoken, None)
        shown = _SHOWN.search(typed[: found.start()].lower()) and not _COUNTED.match(found["rest"])
        if one is not None:
            end = one.end
            yield one
        elif _OF_OXYGEN.match(typed, found.end()):
            continue
        elif bare and (shown or (bare[0] in SHARES and _is_share(tokens[:2]))):
            yield Number(head, bare[0], found.start(), found.end())


def _behind(rest: str, words: int) -> int:
    """How far so many words reach in what stands behind a number."""
    found = re.match(rf" ?\S*(?: \S+){{{words - 1}}}", rest)
    return 0 if found is None else found.end()


def _is_share(tokens: list[str]) -> bool:
    """Whether what stands behind a number says that it is a share."""
    said = [token.lower() for token in tokens]
    return said[:1] in [[sign] for sign in _PERCENTS] or said == ["per", "cent"]


def own_units(knowledge: Knowledge, test: Test) -> tuple[str, ...]:
    """The units in which a test is read, each once."""
    units = (one.unit or knowledge.quantities[one.quantity].unit for one in test.reads)
    return tuple(dict.fromkeys(units))


@lru_cache(maxsize=4_000)
def is_in(typed: str, unit_id: str) -> bool:
    """Whether what was typed is a number in a unit that it names; each word is tried in many."""
    try:
        return read(typed, Expected(unit_id)).values[0].typed_unit is not None
    except NotUnderstood:
        return False
