"""What shows that a danger has gone: the number on the instrument, or the outcome of a look.

A number is judged by the danger's own all-clear, by its sound limits and in their direction; one of
gas in the air in a unit that the all-clear does not read is sound only as nothing at all. Nothing
but the number and its unit is taken: whatever stands beside it may take it back.
"""

from __future__ import annotations

import re
from functools import partial
from typing import Final

from troubleshoot.knowledge.model import Hazard, Knowledge, Test
from troubleshoot.outside.numbers import choice
from troubleshoot.outside.text import plain_words
from troubleshoot.quantities.typed import Expected, Leg, NotUnderstood, read
from troubleshoot.quantities.units import unit
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.readings.readings import outcomes_of
from troubleshoot.reasoning.readings.values import Values
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.safety.declared import STEPS, sound_outcomes
from troubleshoot.safety.stops.numbers_shown import own_units
from troubleshoot.safety.stops.result import NotAResult

_SHARES: Final = ("percent-LEL", "percent-LFL")
_GAS_IN_AIR: Final = (*_SHARES, "ppm")
"""Units of a gas in air: what one instrument shows in one of them, another shows in the next."""
_PLAIN: Final = re.compile(r"(?:[<>]=? ?)?-?[0-9.][0-9.,/ ]*[A-Za-zµΩ%][A-Za-z%. ]*")
"""A number or one of each leg, and a unit."""
_NOT_OF_A_LINE: Final = re.compile(r"(?i)k ?v|dc\b|(?:^|[/, ])-0*[.,]?0*(?=[ /a-z])")
"""Beside volts: what a meter set for the AC of a line never shows."""
_INSULATION, _VOLTS = "Mohm", "V"
_LEAST_MOHM: Final = 1.0
"""Under it no circuit of this size is put back (common practice, no source); a new one has more."""
_MOST_VOLTS: Final = 2.0
"""More than that after the switch is no dead circuit (common practice, no source)."""
_ANY: Final = 1e9
"""More than anything here is read as."""


def read_in(knowledge: Knowledge, hazard: Hazard, test: Test) -> tuple[str, ...]:
    """The units of the number that shows a hazard gone; empty where a look shows it.

    `test`: its all-clear, or the finding itself where it has none.
    """
    if hazard.tested:
        return (_INSULATION, _VOLTS)
    units = own_units(knowledge, test)
    return tuple(dict.fromkeys((*units, *_GAS_IN_AIR))) if {*units} & {*_SHARES} else units


def spoken_units(units: tuple[str, ...]) -> str:
    """Units as they are said, each once: % LEL or ppm."""
    return " or ".join(dict.fromkeys(unit(each).spoken for each in units))


def seen_as(test: Test) -> tuple[str, ...]:
    """The outcomes of the look that shows a hazard gone, as they are said; the sound ones first."""
    sound = sound_outcomes(test)
    return tuple(each.spoken for each in sorted(test.outcomes, key=lambda o: o.id not in sound))


def as_seen(test: Test, typed: str) -> str:
    """The look, picked by its number or its words. Raises NotAResult for any but a sound one."""
    listed, said = seen_as(test), plain_words(typed.rstrip(" .!"))
    number = choice(typed, len(listed))
    picked = listed[number - 1] if number is not None else said
    outcome = next((each for each in test.outcomes if each.spoken == picked), None)
    if outcome is None:
        raise NotAResult(f"Give a number from 1 to {len(listed)}, or one of: {', '.join(listed)}.")
    if outcome.id not in sound_outcomes(test):
        raise NotAResult(
            f"{outcome.spoken}: the danger is still there, and the STOP stands. q leaves it so."
        )
    return f"{test.name}: {outcome.spoken}"


def as_read(knowledge: Knowledge, hazard: Hazard, test: Test, on: Unit, typed: str) -> str:
    """The number that was read with its unit. Raises NotAResult for any but a sound one."""
    units = read_in(knowledge, hazard, test)
    told = _numbers(typed, units)
    if told is None:
        raise NotAResult(
            f"Give the number that the instrument shows, with its unit ({spoken_units(units)}) and "
            "nothing else. A note keeps words beside it: note and what to write."
        )
    unit_id, legs = told
    judged = _is_tested if hazard.tested else partial(_is_sound, knowledge, test, on)
    if not all(judged(unit_id, leg) for leg in legs):
        raise NotAResult(
            f"{typed} is not sound: it shows that the danger is still there. The STOP stands "
            "until it reads sound; q leaves it so."
        )
    return typed


def _numbers(typed: str, units: tuple[str, ...]) -> tuple[str, tuple[Leg, ...]] | None:
    """What was read, and in which of some units; None where it is no number in a unit of theirs."""
    if not _PLAIN.fullmatch(typed.strip()) or ("-" in typed and _VOLTS not in units):
        return None
    for each in units:
        try:
            legs = read(typed, Expected(each, legs=each == _VOLTS)).values
        except NotUnderstood:
            continue
        if each == _VOLTS and _NOT_OF_A_LINE.search(typed):
            return None
        if all(leg.typed_unit is not None for leg in legs):
            return each, legs
    return None


def sweep_in(knowledge: Knowledge, unit_id: str) -> Test | None:
    """The safety step that reads the air in a unit, if any does."""
    steps = (knowledge.tests[step] for step in STEPS if step in knowledge.tests)
    return next((test for test in steps if unit_id in own_units(knowledge, test)), None)


def _is_tested(unit_id: str, leg: Leg) -> bool:
    """Whether a number shows insulation that may be put back, or a circuit that is dead."""
    if unit_id == _INSULATION:
        return leg.value >= _LEAST_MOHM and leg.bound != "less-than"
    return abs(leg.value) <= _MOST_VOLTS and leg.bound != "more-than"


def _is_sound(knowledge: Knowledge, test: Test, on: Unit, unit_id: str, leg: Leg) -> bool:
    """Whether a number is sound by a test; in a unit that it does not read, only nothing.

    One that lies outside what there can be shows nothing sound, nor a bound behind which not all
    is sound, to the end of what can be: where it is nobody knows.
    """
    if unit_id not in own_units(knowledge, test):
        return leg.value == 0 and leg.bound is None
    value = abs(leg.value)
    low, high = _ends(knowledge, test, unit_id)
    told = {None: (value,), "less-than": (low, value), "more-than": (value, high)}[leg.bound]
    return low <= value <= high and all(_judged(knowledge, test, unit_id, x, on) for x in told)


def _ends(knowledge: Knowledge, test: Test, unit_id: str) -> tuple[float, float]:
    """The least and the most that what a test reads in a unit can be, of what is above nothing."""
    quantities = (knowledge.quantities[one.quantity] for one in test.reads)
    bounds = [each.can_be for each in quantities if each.unit == unit_id and each.can_be]
    return max((0.0, *(low for low, _ in bounds))), min((_ANY, *(high for _, high in bounds)))


def _judged(knowledge: Knowledge, test: Test, unit_id: str, value: float, on: Unit) -> bool:
    """Whether all that a number may come to by a test is sound; one that is not judged is."""
    answer = Answer(test.id, text=f"{value:g} {unit(unit_id).spoken}")
    try:
        seen = outcomes_of(knowledge, answer, None, Values(knowledge, on, {}))
    except NotUnderstood:
        return False
    return {*seen} <= {*sound_outcomes(test)}
