"""Whether a scenario's numbers can all be true of one unit on one day.

Each check says what does not fit, what to do about it, and where that stands in the file.
Saturation is read from the tables, everything else from how machines behave; the bands are wide,
common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.physics import physical_problems
from troubleshoot.practice.scenario import Scenario, WorkedOut
from troubleshoot.quantities.typed import Expected, NotUnderstood, read
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.readings.measuring import read_text
from troubleshoot.reasoning.readings.readings import Reading, take_readings
from troubleshoot.reasoning.readings.values import Values
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.places import Place, PlaceNotUnderstood, parse_place
from troubleshoot.visit.cases.file import read_case

DEGREES_OFF: Final = 0.35
"""A temperature or difference that follows may differ by this from the author's, in F."""
SHARE_OFF: Final = 0.02
"""Any other value may differ by this share of itself."""
POSSIBLE: Final = 0.01
"""The least chance at which a number can mean a word."""

Keys = tuple[str | int, ...]


@frozen
class Inconsistency:
    """What does not fit, and what to do. `at`: the keys and list numbers that lead to it."""

    what: str
    instead: str
    at: Keys

    def __str__(self) -> str:
        return f"{self.what}; {self.instead}"


@frozen
class _Readings:
    """One set of readings that must hold together: the scenario's, or those after the repair.

    `at` leads to them in the file.
    """

    name: str
    at: Keys
    case: Case
    readings: tuple[Reading, ...]
    values: Values


def consistency_problems(reasoner: Reasoner, scenario: Scenario) -> Iterator[Inconsistency]:
    """What does not fit together in a scenario."""
    knowledge = reasoner.knowledge
    yield from _plate(knowledge, scenario.unit)
    found = _taken(knowledge, "as found", ("readings",), scenario.case)
    yield from _worked_out(knowledge, found, scenario.works_out)
    yield from _stated_outcomes(knowledge, scenario)
    yield from _stops(reasoner, scenario)
    yield from _faults(reasoner, scenario)
    repaired = proof_case(knowledge, scenario)
    after = _taken(knowledge, "after the repair", ("truth", "proof-readings"), repaired)
    yield from _sound(knowledge, after)
    for each in (found, after):
        yield from _said_twice(knowledge, each)
        for problem in physical_problems(knowledge, each.values):
            yield Inconsistency(f"{each.name}: {problem}", "fix the readings", each.at)


def _plate(knowledge: Knowledge, unit: Unit) -> Iterator[Inconsistency]:
    """What a plate says against itself: a three-phase motor on a single-phase supply."""
    for implied in knowledge.implications:
        if not unit.proves(implied.when):
            continue
        for fact, word in implied.then.items():
            stated = unit.facts.get(fact, word)
            if stated != word:
                given = " and ".join(implied.when)
                what = f"{fact} {stated} does not go with {given}, which make it {word}"
                yield Inconsistency(what, "put one of them right", ("unit", fact))


def proof_case(knowledge: Knowledge, scenario: Scenario) -> Case:
    """The case that the readings after the repair make."""
    readings = list(scenario.truth.proof_readings)
    return read_case(knowledge, {**scenario.plain, "readings": readings})


def _taken(knowledge: Knowledge, name: str, at: Keys, case: Case) -> _Readings:
    readings, values = take_readings(knowledge, case)
    return _Readings(name, at, case, readings, values)


def _worked_out(
    knowledge: Knowledge, found: _Readings, stated: tuple[WorkedOut, ...]
) -> Iterator[Inconsistency]:
    """What the author says the readings come to, against what they do come to."""
    for number, each in enumerate(stated):
        at = ("works-out", number)
        quantity = knowledge.quantities[each.quantity]
        name = each.quantity + (f" at {each.at}" if each.at else "")
        try:
            wanted = read(each.value, Expected(quantity.unit)).values[0].value
            place = _place(found, quantity.per, each.at)
        except NotUnderstood as error:
            yield Inconsistency(f"{name}: {error.why}", error.instead, at)
            continue
        except PlaceNotUnderstood as error:
            yield Inconsistency(f"{name}: {error.problem}", error.instead, at)
            continue
        value = _value(found, each.quantity, place)
        if value is None:
            what = f"{name} does not follow from the readings"
            yield Inconsistency(what, "list what it follows from, or leave it out", at)
        elif abs(value - wanted) > _allowance(quantity.unit, wanted):
            what = f"{name} comes to {value:.1f}, not {each.value}"
            yield Inconsistency(what, "fix the readings or this value", at)


def _value(found: _Readings, quantity: str, place: Place | None) -> float | None:
    """The value of a quantity; one that a test makes of several legs is in its reading."""
    value = found.values.get(quantity, place)
    if value is not None:
        return value.number
    for reading in found.readings:
        made = reading.classified
        if made is not None and made.quantity == quantity and place in (None, reading.at):
            return made.value
    return None


def _place(found: _Readings, kind: str | None, at: str | None) -> Place | None:
    layout = found.case.unit.layout
    if at is not None:
        return parse_place(at, kind, layout)[0]
    return layout.places(kind)[0] if kind is not None else None


def _allowance(unit: str, wanted: float) -> float:
    if unit in ("F", "F-diff"):
        return DEGREES_OFF
    return max(SHARE_OFF * abs(wanted), 0.06)


def _stated_outcomes(knowledge: Knowledge, scenario: Scenario) -> Iterator[Inconsistency]:
    """A reading with a number and a word: the number must be able to mean the word."""
    for number, answer in enumerate(scenario.case.answers):
        if answer.text is None or not answer.outcomes:
            continue
        alone = replace(scenario.case, answers=(replace(answer, outcomes=()),))
        readings, _ = take_readings(knowledge, alone)
        chances = [r.chances.items() for r in readings if r.test == answer.test]
        seen = {outcome for each in chances for outcome, chance in each if chance >= POSSIBLE}
        if seen and not seen & set(answer.outcomes):
            word = ", ".join(answer.outcomes)
            what = f"{answer.test}: {answer.text} is called {word}, the rules call it {min(seen)}"
            yield Inconsistency(what, "fix the number or the word", ("readings", number))


def _stops(reasoner: Reasoner, scenario: Scenario) -> Iterator[Inconsistency]:
    """The STOP that the truth names is called up by the readings or the complaint."""
    stop = scenario.truth.stop
    if stop is None:
        return
    opening = replace(scenario.case, answers=())
    for case in (scenario.case, opening):
        if any(f.stops and f.hazard.id == stop for f in reasoner.conclude(case).hazards):
            return
    what = f"nothing here calls up the STOP {stop}"
    yield Inconsistency(what, "list the finding that does, or leave it out", ("truth", "stop"))


def _faults(reasoner: Reasoner, scenario: Scenario) -> Iterator[Inconsistency]:
    """The true faults are such as this unit can have, one of them in the named subsystem."""
    found, _ = reasoner.hypotheses(scenario.unit)
    possible = {hypothesis.fault.id for hypothesis in (*found.causes, *found.effects)}
    lies_in = {reasoner.knowledge.faults[true.fault].subsystem for true in scenario.truth.faults}
    if lies_in and scenario.subsystem not in lies_in:
        what = f"no true fault lies in {scenario.subsystem}"
        yield Inconsistency(what, f"write {' or '.join(sorted(lies_in))}", ("subsystem",))
    for number, true in enumerate(scenario.truth.faults):
        if true.fault not in possible:
            what = f"this unit cannot have {true.fault}"
            at = ("truth", "faults", number)
            yield Inconsistency(what, "name another, or say under unit what it has", at)


def _sound(knowledge: Knowledge, after: _Readings) -> Iterator[Inconsistency]:
    """After the repair every reading that can be judged is sound."""
    order = [answer.test for answer in after.case.answers]
    for reading in after.readings:
        healthy = knowledge.tests[reading.test].healthy
        if healthy and reading.seen and not reading.computed:
            wrong = [outcome for outcome in reading.seen if outcome not in healthy]
            if wrong:
                what = f"{after.name}: {reading.test} still reads {', '.join(wrong)}"
                at = (*after.at, order.index(reading.test))
                yield Inconsistency(what, "write what it reads once put right", at)


def _said_twice(knowledge: Knowledge, found: _Readings) -> Iterator[Inconsistency]:
    """A value typed although it follows from others must agree with them."""
    for number, answer in enumerate(found.case.answers):
        test = knowledge.tests[answer.test]
        if answer.text is None or answer.valid is False or not test.reads:
            continue
        quantity = knowledge.quantities[test.reads[0].quantity]
        if quantity.computed:
            for what in _against_others(knowledge, found, answer, quantity.id):
                yield Inconsistency(what, "fix it or the others", (*found.at, number))


def _against_others(
    knowledge: Knowledge, found: _Readings, answer: Answer, quantity: str
) -> Iterator[str]:
    others = replace(found.case, answers=tuple(a for a in found.case.answers if a is not answer))
    _, values = take_readings(knowledge, others)
    typed = read_text(knowledge.tests[answer.test], answer.text or "", knowledge).values
    for place in answer.places:
        value = values.get(quantity, place)
        off = 0.0 if value is None else abs(value.number - typed[0].value)
        if off > _allowance(knowledge.quantities[quantity].unit, typed[0].value):
            assert value is not None
            yield f"{found.name}: {answer.test} is {answer.text}, others make it {value.number:.1f}"
