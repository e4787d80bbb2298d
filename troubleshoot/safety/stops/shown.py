"""What shows that a danger has gone: a reading that says something of it, or a look in words."""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.quantities.typed import Expected, NotUnderstood, read
from troubleshoot.quantities.units import unit
from troubleshoot.safety.hearing.trade_words import trade_words
from troubleshoot.safety.stops.reopening import NotAResult, in_words

_NUMBER: Final = re.compile(r"[0-9]")
_PERCENT: Final = re.compile(r"[<>]? ?[0-9][0-9.,]* ?(?:%|per ?cent|pct)\.?", re.IGNORECASE)
_WORD: Final = re.compile(r"[^\W\d_]{3,}")
_GAS_IN_AIR: Final = ("percent-LEL", "percent-LFL", "ppm")
"""Units of a gas in air: what one instrument shows in one of them, another shows in the next."""
LEAST_WORDS: Final = 2
"""Of what a share is, and what shows it: LEL, gas detector."""


def as_read(knowledge: Knowledge, typed: str, hazard: Hazard | None = None) -> str:
    """The reading or look that shows it: a number with its unit, or a few words.

    Of a hazard whose all-clear is a reading only such a number says anything.
    """
    units = _units_of(knowledge, hazard)
    known = units or tuple(quantity.unit for quantity in knowledge.quantities.values())
    if _NUMBER.search(typed) and any(_is_in(typed, each) for each in known):
        return typed
    try:
        return in_words(knowledge, typed)
    except NotAResult:
        example = _spoken(units) if units else "0 ppm"
        raise NotAResult(
            f"Give the reading with its unit ({example}), or say in a few words what was looked "
            "at and how it was."
        ) from None


def is_reading(knowledge: Knowledge, typed: str) -> bool:
    """Whether what was typed tells a reading or a look at all."""
    try:
        as_read(knowledge, typed)
    except NotAResult:
        return False
    return True


def is_share_of_nothing(typed: str) -> bool:
    """Whether a share is told without of what: 0 % may be of humidity as well as of gas."""
    return _PERCENT.fullmatch(typed.strip()) is not None


def of_what(knowledge: Knowledge, typed: str) -> str:
    """Of what a share is, and with which instrument it was read, in words of the trade."""
    said = {word for word in _WORD.findall(typed.lower()) if word not in ("the", "and", "with")}
    if len(said) < LEAST_WORDS or not any(map(trade_words(knowledge), said)):
        raise NotAResult("Say both: of what it is a share, and which instrument showed it.")
    return typed


def _units_of(knowledge: Knowledge, hazard: Hazard | None) -> tuple[str, ...]:
    """The units in which the all-clear of a hazard is read; empty where it is no reading."""
    test = None if hazard is None else knowledge.tests.get(hazard.all_clear or "")
    reads = () if test is None else test.reads
    units = dict.fromkeys(one.unit or knowledge.quantities[one.quantity].unit for one in reads)
    return tuple(dict.fromkeys((*units, *_GAS_IN_AIR))) if {*units} & {*_GAS_IN_AIR} else (*units,)


def _is_in(typed: str, unit_id: str) -> bool:
    try:
        return read(typed, Expected(unit_id)).values[0].typed_unit is not None
    except NotUnderstood:
        return False


def _spoken(units: tuple[str, ...]) -> str:
    return " or ".join(dict.fromkeys(unit(each).spoken for each in units))
