"""Bands that do not rise, or that leave numbers without an outcome.

What: a band but the last that says not where it ends, or says it twice; a last band that ends; an
end that is not above the one before it; an outcome of a band that has numbers of its own besides.
Why: bands are there so that every number means one thing; each begins where the one before it ends.
Fix: write them from low to high, each with `below` (its end is the next one's) or `up-to` (its end
is its own), the last with neither.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.base import RuleFile, entries
from troubleshoot.knowledge.definitions import Definitions
from troubleshoot.knowledge.nodes import Located, LocatedList, LocatedMapping, LocatedValue
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.walking import text_of, value_at

ID: Final = "bands-rise"

_ENDS: Final = ("below", "up-to")


def find(files: tuple[RuleFile, ...], definitions: Definitions) -> Iterator[Problem]:
    """Yield a problem for every band that does not go on from the one before it."""
    for test in definitions.of("test").values():
        bands = value_at(test.node, "bands", "from-low-to-high")
        if isinstance(bands, LocatedList):
            for at, what, instead in (*_ends(bands), *_said_twice(bands, test.node)):
                yield Problem(test.file.path, at.line, at.column, what, instead, ID)


def _ends(bands: LocatedList) -> Iterator[tuple[Located, str, str]]:
    before: float | None = None
    for number, band in enumerate(bands.items, start=1):
        ends = [end for end in (value_at(band, key) for key in _ENDS) if end is not None]
        if number == len(bands.items):
            if ends:
                yield ends[0], "the last band ends", "leave its end out: it holds all above"
        elif len(ends) != 1:
            what = "the band has two ends" if ends else "the band has no end"
            yield band, what, "write below or up-to"
        elif isinstance(ends[0], LocatedValue) and isinstance(ends[0].value, int | float):
            if before is not None and ends[0].value <= before:
                what = f"the band ends at {ends[0].value:g}, and the one before it at {before:g}"
                yield ends[0], what, "write the bands from low to high"
            before = ends[0].value


def _said_twice(bands: LocatedList, test: LocatedMapping) -> Iterator[tuple[Located, str, str]]:
    in_bands = {text_of(value_at(band, "outcome")) for band in bands.items}
    for outcome in entries(test, "outcomes"):
        limits = value_at(outcome, "limits")
        lines = limits.items if isinstance(limits, LocatedList) else ()
        numbers = any(value_at(line, "reads") is None for line in lines)
        if limits is not None and numbers and text_of(value_at(outcome, "id")) in in_bands:
            yield limits, "the outcome has a band and limits of its own", "keep one of them"
