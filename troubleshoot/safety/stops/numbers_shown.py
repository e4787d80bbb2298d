"""Every number that is told of a reading in words: as it stands, and in which unit."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.quantities.typed import Expected, NotUnderstood, read

_NUMBER: Final = re.compile(
    r"(?P<bound>(?:[<>]=? ?|\b(?:under|below|less than|over|above|more than) )?)"
    r"(?<![\w.,])(?P<number>-?(?:[0-9][0-9.,]*(?<![.,])|\.[0-9]+))(?=(?P<rest> ?\S*(?: \S+){0,2}))"
)


def numbers_in(typed: str, units: tuple[str, ...]) -> Iterator[tuple[str, str]]:
    """Every number that is told in one of some units, as it stands, and the unit."""
    end = 0
    for found in _NUMBER.finditer(typed):
        if found.start("number") < end:
            continue  # the second part of one number: 8 lb 4 oz
        head = f"{found['bound']}{found['number']}"
        tokens = [token.rstrip(".,;:!") for token in found["rest"].split()]
        spoken = (
            (text, each, n)
            for n in (3, 2, 1)
            if tokens[n - 1 :]
            for text in (f"{head} {' '.join(tokens[:n])}",)
            for each in units
            if is_in(text, each)
        )
        if (one := next(spoken, None)) is not None:
            text, each, words = one
            end = found.end() + _behind(found["rest"], words)
            yield text, each


def _behind(rest: str, words: int) -> int:
    """How far so many words reach in what stands behind a number."""
    found = re.match(rf" ?\S*(?: \S+){{{words - 1}}}", rest)
    return 0 if found is None else found.end()


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
