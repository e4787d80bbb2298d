"""From answers to readings: each answer's outcome at each place, how sure, and whether it counts.

A reading keeps what was typed, the value, the chance of each outcome, the verdict, and whether it
is valid and why not. Computed tests become readings by themselves when their inputs are known.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from troubleshoot.knowledge.model import Knowledge, Read, Test
from troubleshoot.quantities.instruments import (
    INSTRUMENTS,
    default_instrument,
    standard_uncertainty,
)
from troubleshoot.quantities.typed import Expected, Leg, NotUnderstood, Typed, read
from troubleshoot.reasoning.answers import Answer, Case
from troubleshoot.reasoning.classify import Classified, classify, outcomes_here
from troubleshoot.reasoning.legs import OVER_RANGE, REDUCERS, SPREAD_OF_LEGS, farthest
from troubleshoot.reasoning.places import Place
from troubleshoot.reasoning.values import Value, Values
from troubleshoot.reasoning.withdrawal import withdraw

ERROR_OF_QUESTION = 0.06
ERROR_OF_METER = 0.03
ERROR_OF_LOOK = 0.02
"""Chance that a report is wrong (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Reading:
    """One outcome of one test at one place.

    `seen`: the outcomes ticked (one, or several for a test of signs; empty for an input test).
    `chances`: the chance of each outcome where the number lies near a limit, else {outcome: 1}.
    `among`: the places one unplaced reading may belong to; empty where the place is known.
    `before`: what earlier readings of the same test and place made of the outcomes.
    """

    test: str
    at: Place | None
    seen: tuple[str, ...]
    chances: Mapping[str, float]
    text: str | None
    classified: Classified | None = None
    valid: bool = True
    why_invalid: str = ""
    stated_valid: bool | None = None
    computed: bool = False
    among: tuple[Place | None, ...] = ()
    conditions: Mapping[str, str] = field(default_factory=dict)
    before: tuple[Mapping[str, float], ...] = ()
    after_repair: bool = False

    @property
    def possible(self) -> frozenset[str]:
        """Every outcome the reading may be, for hazards: the worse side counts."""
        return frozenset(self.seen) | {o for o, chance in self.chances.items() if chance > 0.02}


def report_error(test: Test) -> float:
    """Chance that the report of this test is wrong."""
    if test.kind in ("measurement", "computed", "input"):
        return ERROR_OF_METER
    return ERROR_OF_QUESTION if test.kind == "question" else ERROR_OF_LOOK


def expected_for(test: Test, knowledge: Knowledge) -> tuple[Expected, ...]:
    """The grammars a typed answer to this test may follow, tried in order."""
    grammars: list[Expected] = []
    for one in test.reads[:1]:
        unit = knowledge.quantities[one.quantity].unit
        if one.unit is not None and one.unit != unit:
            grammars.append(Expected(one.unit, legs=True, allow_over_range=_can_be_open(one.unit)))
            grammars.append(Expected(unit))
        else:
            grammars.append(Expected(unit, legs=True, allow_over_range=_can_be_open(unit)))
    return tuple(grammars)


def _can_be_open(unit: str) -> bool:
    return unit in ("ohm", "kohm", "Mohm", "uF")


def read_text(test: Test, text: str, knowledge: Knowledge) -> Typed:
    """Typed text by the test's own grammar; raises NotUnderstood (of the first grammar)."""
    first: NotUnderstood | None = None
    for expected in expected_for(test, knowledge):
        try:
            return read(text, expected)
        except NotUnderstood as error:
            first = first or error
    if first is None:
        raise NotUnderstood(text, f"{test.id} takes no number", "choose one of its outcomes")
    raise first


def quantities_of(
    test: Test, typed: Typed, knowledge: Knowledge, values: Values, place: Place | None
) -> dict[str, Value]:
    """The quantities that a typed reading gives, each with its standard uncertainty."""
    numbers = [OVER_RANGE if leg.over_range else leg.value for leg in typed.values]
    found: dict[str, Value] = {}
    for one in test.reads:
        number = _reduced(one, numbers, typed.values, knowledge, values, place)
        if number is None:
            continue
        u = 0.0
        if math.isfinite(number) and one.legs not in SPREAD_OF_LEGS:
            u = _uncertainty(test, number, typed.values[0])
        found[one.quantity] = Value(number, u, soft=len(numbers) == 1)
    return found


def _reduced(
    one: Read,
    numbers: list[float],
    legs: tuple[Leg, ...],
    knowledge: Knowledge,
    values: Values,
    place: Place | None,
) -> float | None:
    spread = one.legs in SPREAD_OF_LEGS
    bare = len(numbers) == 1 and legs[0].unit == knowledge.quantities[one.quantity].unit
    if one.legs is None or (spread and bare and one.unit is not None):
        return numbers[0]
    if one.legs == "farthest":
        reference = values.unit.plate_value("nameplate-volts", place)
        return farthest(numbers, reference)
    return REDUCERS[one.legs](numbers)


def _uncertainty(test: Test, number: float, leg: Leg) -> float:
    if leg.plus_minus is not None:
        return leg.plus_minus / math.sqrt(3)
    meter = INSTRUMENTS[test.meter] if test.meter else default_instrument(leg.unit)
    return standard_uncertainty(number, meter, leg.resolution) if meter else 0.0


def take_readings(knowledge: Knowledge, case: Case) -> tuple[tuple[Reading, ...], Values]:
    """All readings of a case, one for each test and place, and the values behind them.

    A test read again at the same place is one reading, the latest, that remembers what the earlier
    ones that counted made of it; one taken after a repair stands alone.
    """
    case = replace(case, answers=withdraw(knowledge, case.answers))
    typed = _typed_values(knowledge, case)
    values = Values(knowledge, case.unit, typed)
    latest: dict[tuple[str, Place | None], Reading] = {}
    for answer in case.answers:
        test = knowledge.tests[answer.test]
        for place in answer.places if not answer.shared else (None,):
            reading = _reading(knowledge, test, answer, place, values)
            key = (test.id, place)
            earlier = latest.get(key)
            if reading.valid or earlier is None or not earlier.valid:
                latest.pop(key, None)
                latest[key] = _again(test, reading, earlier)
    for reading in _computed(knowledge, case, values):
        latest.setdefault((reading.test, reading.at), reading)
    return tuple(latest.values()), values


def _again(test: Test, reading: Reading, earlier: Reading | None) -> Reading:
    """A reading taken again, with what the earlier ones made of it."""
    counts = earlier is not None and earlier.valid and earlier.chances and reading.chances
    if not counts or earlier is None or reading.after_repair or test.kind == "step":
        return reading
    if test.choose == "several":
        return reading
    return replace(reading, before=(*earlier.before, earlier.chances))


def _typed_values(knowledge: Knowledge, case: Case) -> dict[tuple[str, Place | None], Value]:
    """Every typed number of the case by quantity and place; invalid ones give no value."""
    bare = Values(knowledge, case.unit, {})
    found: dict[tuple[str, Place | None], Value] = {}
    for name, text in case.conditions.items():
        quantity = knowledge.quantities[name]
        found[(name, None)] = Value(read(text, Expected(quantity.unit)).values[0].value)
    for answer in case.answers:
        if answer.text is None or answer.valid is False:
            continue
        test = knowledge.tests[answer.test]
        try:
            typed = read_text(test, answer.text, knowledge)
        except NotUnderstood:
            continue
        for place in answer.places if not answer.shared else (None,):
            for name, value in quantities_of(test, typed, knowledge, bare, place).items():
                found[(name, place if knowledge.quantities[name].per else None)] = value
    return found


def _reading(
    knowledge: Knowledge, test: Test, answer: Answer, place: Place | None, values: Values
) -> Reading:
    classified = None
    seen = answer.outcomes
    chances: Mapping[str, float] = {}
    if answer.text is not None and test.reads and not seen:
        own = values
        if answer.valid is False:
            own = _alone(knowledge, test, answer, place, values)
        classified = classify(test, place, own)
        if classified is not None:
            seen, chances = (classified.outcome,), classified.chances
    if seen and not chances:
        chances = dict.fromkeys(seen, 1.0)
    return Reading(
        test.id,
        place,
        seen,
        chances,
        answer.text,
        classified,
        valid=answer.valid is not False,
        why_invalid=answer.why_invalid or ("stated" if answer.valid is False else ""),
        stated_valid=answer.valid,
        among=answer.places if answer.shared else (),
        conditions=answer.conditions,
        after_repair=answer.after_repair,
    )


def _alone(
    knowledge: Knowledge, test: Test, answer: Answer, place: Place | None, values: Values
) -> Values:
    """An invalid reading is still classified, for the record and for hazards."""
    try:
        typed = read_text(test, answer.text or "", knowledge)
    except NotUnderstood:
        return values
    own = quantities_of(test, typed, knowledge, values, place)
    return values.with_typed({(name, place): value for name, value in own.items()})


def _computed(knowledge: Knowledge, case: Case, values: Values) -> list[Reading]:
    """Tests whose quantities are known by now without being asked, at every place of their kind."""
    answered = {(a.test, p) for a in case.answers for p in a.places}
    found = []
    for test in knowledge.tests.values():
        if not _knows_itself(knowledge, test) or not case.unit.allows(test.exists_when):
            continue
        for place in case.unit.layout.places(test.per):
            if (test.id, place) in answered:
                continue
            classified = classify(test, place, values)
            if classified is not None:
                found.append(
                    Reading(
                        test.id,
                        place,
                        (classified.outcome,),
                        classified.chances,
                        None,
                        classified,
                        computed=True,
                    )
                )
    return found


def _knows_itself(knowledge: Knowledge, test: Test) -> bool:
    """Computed tests, and measurements of a quantity that others may give (drier in, drier out)."""
    if test.kind != "measurement" or not test.reads:
        return test.kind == "computed"
    return bool(knowledge.quantities[test.reads[0].quantity].computed)


def voided(reading: Reading, reason: str) -> Reading:
    """The reading, kept, but weighing nothing."""
    return replace(reading, valid=False, why_invalid=reason)


__all__ = [
    "Reading",
    "expected_for",
    "outcomes_here",
    "quantities_of",
    "read_text",
    "report_error",
    "take_readings",
    "voided",
]
