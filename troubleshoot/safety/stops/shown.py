"""What shows that a danger has gone: a reading that says something of it, or a look in words.

A number is judged by the danger's own all-clear, by its sound limits and in their direction; one of
gas in the air, where the all-clear reads none, by the sweep of the air. Words of a look are held to
what is known to be none.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.knowledge.model import Hazard, Knowledge, Test
from troubleshoot.outside.text import as_said
from troubleshoot.quantities.typed import Expected, NotUnderstood, read
from troubleshoot.quantities.units import unit
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.readings.readings import outcomes_of
from troubleshoot.reasoning.readings.values import Values
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.safety.declared import STEPS, sound_outcomes
from troubleshoot.safety.hearing.trade_words import trade_words
from troubleshoot.safety.steps import REFRIGERANT_SWEEP
from troubleshoot.safety.stops.by_its_orders import (
    shown_by_a_test,
    why_too_near,
    why_untested,
    without_clearance,
)
from troubleshoot.safety.stops.no_result import why_no_look
from troubleshoot.safety.stops.numbers_shown import (
    NUMBER,
    SHARES,
    is_in,
    numbers_in,
    own_units,
    told_in,
    with_its_share,
)
from troubleshoot.safety.stops.of_the_danger import (
    why_another_gas,
    why_another_unit,
    why_by_no_instrument,
    why_no_number,
    why_not_now,
    why_of_a_dead_pipe,
)
from troubleshoot.safety.stops.plain_reading import NO_WORD, names_its_gas, why_not_plain
from troubleshoot.safety.stops.reopening import NotAResult, TooFewWords, of_the_trade

_PERCENT: Final = re.compile(r"[<>]? ?[0-9][0-9.,]* ?(?:%|per ?cent|pct)\.?", re.IGNORECASE)
_EXPONENT: Final = re.compile(r"(?<![\w.,])[0-9][0-9.,]*e[-+]?[0-9]", re.IGNORECASE)
_WORD: Final = re.compile(r"[^\W\d_]{3,}")
_GAS_IN_AIR: Final = (*SHARES, "ppm")
"""Units of a gas in air: what one instrument shows in one of them, another shows in the next."""
_OF_THE_FLUE: Final = re.compile(r"\b(flue|stack|vent|air[- ]free)\b", re.IGNORECASE)
_INSTRUMENT: Final = re.compile(
    r"meter|detector|sniffer|analy[sz]er|monitor|gauge|gage|tester|probe|sensor|instrument|scope"
    r"|\bcgi\b|\bgas tech\b|thermo|camera|clamp",
    re.IGNORECASE,
)
_OF_GAS: Final = re.compile(r"\b(?:detector|sniffer|monitor|analy[sz]er)", re.IGNORECASE)
NO_NUMBER_SHOWN: Final = "may be the limit itself: give the number that the instrument shows, or q."
LEAST_WORDS: Final = 2
"""Of what a share is, and what shows it: LEL, gas detector."""


def as_read(knowledge: Knowledge, typed: str, hazard: Hazard, on: Unit | None = None) -> str:
    """The reading or look that shows it: a number with its unit, or a few words.

    Of a hazard whose all-clear is a reading only such a number says anything, and only a sound one.
    """
    share = with_its_share(typed)
    _require_sound(knowledge, share, hazard, on or Unit())
    units = _units_of(knowledge, hazard)
    known = units or tuple(quantity.unit for quantity in knowledge.quantities.values())
    said = as_said(typed)
    if (
        why := why_no_look(typed)
        or why_too_near(said, hazard)
        or why_not_now(without_clearance(said, hazard))
    ):
        raise NotAResult(why)
    if why := why_untested(typed, hazard):
        raise NotAResult(why)
    if read_in := units or shown_by_a_test(hazard) or _told_of_refrigerant(share, hazard):
        _require_plain(share, hazard, read_in)
        return typed
    if any(is_in(number, each) for number, _ in numbers_in(share, known) for each in known):
        return typed
    try:
        return of_the_trade(knowledge, typed, 1 if NUMBER.search(typed) else LEAST_WORDS)
    except TooFewWords:
        raise NotAResult(
            "Give the reading with its unit (0 ppm), or say in a few words what was looked at and "
            "how it was."
        ) from None


def _told_of_refrigerant(typed: str, hazard: Hazard) -> tuple[str, ...]:
    """The units of a number that is told where the air is swept for a refrigerant by a word."""
    is_told = hazard.all_clear == REFRIGERANT_SWEEP and any(numbers_in(typed, _GAS_IN_AIR))
    return _GAS_IN_AIR if is_told else ()


def _require_plain(typed: str, hazard: Hazard, units: tuple[str, ...]) -> None:
    """Raise NotAResult for what the instrument itself does not show: its number alone does.

    Each number has its own unit, and says of which gas it is, where the unit does not.
    """
    sweep, example = hazard.all_clear or "", _spoken(units)
    told = tuple(told_in(typed, units))
    if not told:
        bare = next((each.text for each in told_in(typed, units, units[:1])), "")
        why = f"{bare} may be of anything." if bare else NO_WORD
        raise NotAResult(f"{why} Give the reading with its unit ({example}).")
    of_any = (each.text for each in told if each.unit == "ppm" and {*units} & {*SHARES})
    unsure = None if names_its_gas(typed, sweep) else next(of_any, None)
    if unsure is not None and not any(each.unit in SHARES for each in told):
        raise NotAResult(
            f"{unsure} may be of anything: type it with its unit, {unit(units[0]).spoken}, or "
            "with the gas that it is of."
        )
    if why := why_not_plain(typed, ((each.start, each.end) for each in told), sweep, example):
        raise NotAResult(why)


def of_this_unit(typed: str, name: str) -> None:
    """Raise NotAResult for what is told of another unit than the one of this name."""
    if why := why_another_unit(typed, name):
        raise NotAResult(why)


def is_share_of_nothing(typed: str) -> bool:
    """Whether a share is told without of what: 0 % may be of humidity as well as of gas."""
    return _PERCENT.fullmatch(typed.strip()) is not None


def of_what(knowledge: Knowledge, typed: str) -> str:
    """Of what a share is, and with which instrument it was read, in words of the trade."""
    if why := why_no_look(typed):
        raise NotAResult(why)
    said = {word for word in _WORD.findall(as_said(typed)) if word not in ("the", "and", "with")}
    told = len(said) >= LEAST_WORDS and any(map(trade_words(knowledge), said))
    if not told or not _INSTRUMENT.search(typed):
        raise NotAResult("Say both: of what it is a share, and which instrument showed it.")
    return typed


def _require_sound(knowledge: Knowledge, typed: str, hazard: Hazard, on: Unit) -> None:
    """Raise NotAResult for a number that shows the danger to be there, whatever else is said."""
    own = knowledge.tests.get(hazard.all_clear or "")
    if _EXPONENT.search(typed):
        raise NotAResult("No instrument shows an exponent: write the number out as it is shown.")
    said, sweep = as_said(typed), hazard.all_clear or ""
    why = why_another_gas(said, sweep) or why_of_a_dead_pipe(said, sweep)
    if why := why or why_by_no_instrument(said, sweep):
        raise NotAResult(why)
    units = _units_of(knowledge, hazard)
    read_in = units or _GAS_IN_AIR
    for number, unit_id in numbers_in(
        typed, read_in, bare=units[:1] or _shown_of_gas(typed, sweep)
    ):
        if why := why_no_number(typed, number, unit_id in _GAS_IN_AIR):
            raise NotAResult(why)
        test = own if units else sweep_in(knowledge, unit_id)
        if not units and unit_id == "ppm" and _OF_THE_FLUE.search(typed):
            continue  # the air of the rooms is judged otherwise than what goes up the flue
        if not _is_sound(knowledge, test, number, unit_id, on):
            raise NotAResult(
                f"{number} is not sound: it shows that the danger is still there. The STOP stands "
                "until it reads sound; give the last reading alone, or q."
            )
        as_typed = read(number, Expected(unit_id))
        if as_typed.bounded and not _is_sound(knowledge, test, as_typed.at_its_ends, unit_id, on):
            raise NotAResult(f"{number} {NO_NUMBER_SHOWN}")


def _shown_of_gas(typed: str, sweep: str) -> tuple[str, ...]:
    """The unit of a bare number that a gas instrument shows, where the all-clear reads none."""
    if sweep == REFRIGERANT_SWEEP:
        return ("percent-LFL",)
    return ("ppm",) if _OF_GAS.search(typed) else ()


def sweep_in(knowledge: Knowledge, unit_id: str) -> Test | None:
    """The safety step that reads the air in a unit, if any does."""
    steps = (knowledge.tests[step] for step in STEPS if step in knowledge.tests)
    return next((test for test in steps if unit_id in own_units(knowledge, test)), None)


def _is_sound(knowledge: Knowledge, test: Test | None, number: str, unit_id: str, on: Unit) -> bool:
    """Whether a number is sound by a test; in a unit that the test does not read, only nothing.

    One that the test cannot read, or that lies outside what there can be, shows nothing sound.
    """
    try:
        leg = read(number, Expected(unit_id)).values[0]
    except NotUnderstood:
        return False
    if test is None or unit_id not in own_units(knowledge, test):
        return leg.value == 0 and leg.bound is None
    better = "less-than" if _are_sound(knowledge, test, "0", on) else "more-than"
    if leg.bound not in (None, better):
        return False  # how much worse it is nobody knows
    size = number.lstrip("-")  # leads change sides; gas below zero was refused before
    value = leg.value if size == number else abs(leg.value)
    return _can_be(knowledge, test, unit_id, value) and _are_sound(knowledge, test, size, on)


def _can_be(knowledge: Knowledge, test: Test, unit_id: str, value: float) -> bool:
    """Whether what a test reads in a unit can have a value at all."""
    read_in = (knowledge.quantities[one.quantity] for one in test.reads)
    bounds = (each.can_be for each in read_in if each.unit == unit_id)
    return all(low <= value <= high for low, high in filter(None, bounds))


def _are_sound(knowledge: Knowledge, test: Test, number: str, on: Unit) -> bool:
    """Whether all that a number may come to by a test is sound; one that is not judged is."""
    try:
        seen = outcomes_of(knowledge, Answer(test.id, text=number), None, Values(knowledge, on, {}))
    except NotUnderstood:
        return False
    return {*seen} <= {*sound_outcomes(test)}


def _units_of(knowledge: Knowledge, hazard: Hazard) -> tuple[str, ...]:
    """The units in which the all-clear of a hazard is read; empty where it is no reading."""
    test = knowledge.tests.get(hazard.all_clear or "")
    units = () if test is None else own_units(knowledge, test)
    return tuple(dict.fromkeys((*units, *_GAS_IN_AIR))) if {*units} & {*SHARES} else units


def _spoken(units: tuple[str, ...]) -> str:
    return " or ".join(dict.fromkeys(unit(each).spoken for each in units))
