"""A reading in words: as typed, with its unit; what was computed in the figures it is worth."""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.quantities.units import unit as unit_of
from troubleshoot.reasoning.readings.measuring import read_text

_OWN_UNIT: Final = re.compile(r"\bpp[mb]\b", re.IGNORECASE)
_GAUGE: Final = "psig"
_NOT_OF_A_GAUGE: Final = re.compile(
    r"\b[0-9]+[/\u2044][0-9]+\b|[\u00bc-\u00be\u215b-\u215e]|[0-9] ?(?:#|lbs?\b|pounds?\b)",
    re.IGNORECASE,
)
"""A fraction, or a weight: a slip as likely as a way to say it."""


def as_read(knowledge: Knowledge, test: Test, text: str) -> str:
    """A reading as it was typed, with the unit that was taken for it where none was typed."""
    try:
        legs = read_text(test, text, knowledge).values
    except NotUnderstood:
        return text
    bare = all(leg.typed_unit is None and not leg.over_range for leg in legs)
    bare = bare and not _OWN_UNIT.search(text)  # nothing of gas in ppm is nothing in % LEL too
    return f"{text} {unit_of(legs[0].unit).spoken}".rstrip() if bare else text


def read_otherwise(knowledge: Knowledge, test: Test, text: str) -> str | None:
    """What a gauge reading is taken for that is typed as no gauge shows it: 1/2, 128 lb."""
    try:
        legs = read_text(test, text, knowledge).values
    except NotUnderstood:
        return None
    if legs[0].unit != _GAUGE or not _NOT_OF_A_GAUGE.search(text):
        return None
    read = "/".join(f"{leg.value:g}" for leg in legs)
    return f'"{text}" is read as {read} {unit_of(_GAUGE).spoken}.'


def as_computed(value: float) -> str:
    """A computed number in three figures, and never fewer than its whole number has."""
    return f"{value:.0f}" if abs(value) >= 100 else f"{value:.3g}"
