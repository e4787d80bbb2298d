"""A reading in words: as typed, with its unit; what was computed in the figures it is worth."""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.quantities.units import unit as unit_of
from troubleshoot.reasoning.readings.measuring import read_text

_OWN_UNIT: Final = re.compile(r"\bpp[mb]\b", re.IGNORECASE)


def as_read(knowledge: Knowledge, test: Test, text: str) -> str:
    """A reading as it was typed, with the unit that was taken for it where none was typed."""
    try:
        legs = read_text(test, text, knowledge).values
    except NotUnderstood:
        return text
    bare = all(leg.typed_unit is None and not leg.over_range for leg in legs)
    bare = bare and not _OWN_UNIT.search(text)  # nothing of gas in ppm is nothing in % LEL too
    return f"{text} {unit_of(legs[0].unit).spoken}".rstrip() if bare else text


def as_computed(value: float) -> str:
    """A computed number in three figures, and never fewer than its whole number has."""
    return f"{value:.0f}" if abs(value) >= 100 else f"{value:.3g}"
