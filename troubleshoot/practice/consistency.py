"""Whether a scenario's numbers can all be true of one unit on one day.

Each check says in one sentence what does not fit. Saturation is read from the tables, everything
else from how machines behave; the bands are wide, common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.physics import physical_problems
from troubleshoot.practice.scenario import Scenario, WorkedOut
from troubleshoot.quantities.typed import Expected, NotUnderstood, read
from troubleshoot.reasoning.answers import Answer, Case
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.measuring import read_text
from troubleshoot.reasoning.places import Place, PlaceNotUnderstood, parse_place
from troubleshoot.reasoning.readings import Reading, take_readings
from troubleshoot.reasoning.values import Values
from troubleshoot.visit.case_file import read_case

DEGREES_OFF: Final = 0.35
"""A temperature or difference that follows may differ by this from the author's, in F."""
SHARE_OFF: Final = 0.02
"""Any other value may differ by this share of itself."""


@dataclass(frozen=True, slots=True)
class _Readings:
    """One set of readings that must hold together: the scenario's, or those after the repair."""

    name: str
    case: Case
    readings: tuple[Reading, ...]
    values: Values


def consistency_problems(reasoner: Reasoner, scenario: Scenario) -> Iterator[str]:
    """What does not fit together in a scenario, one sentence each."""
    knowledge = reasoner.knowledge
    found = _taken(knowledge, "as found", scenario.case)
    yield from _worked_out(knowledge, found, scenario.works_out)
    yield from _stated_outcomes(knowledge, scenario)
    yield from _stops(reasoner, scenario)
    after = _taken(knowledge, "after the repair", proof_case(knowledge, scenario))
    yield from _sound(knowledge, after)
    for each in (found, after):
        yield from _said_twice(knowledge, each)
        for problem in physical_problems(knowledge, each.case, each.values):
            yield f"{each.name}: {problem}"


def proof_case(knowledge: Knowledge, scenario: Scenario) -> Case:
    """The case that the readings after the repair make."""
    readings = list(scenario.truth.proof_readings)
    return read_case(knowledge, {**scenario.plain, "readings": readings})


def _taken(knowledge: Knowledge, name: str, case: Case) -> _Readings:
    readings, values = take_readings(knowledge, case)
    return _Readings(name, case, readings, values)


def _worked_out(
    knowledge: Knowledge, found: _Readings, stated: tuple[WorkedOut, ...]
) -> Iterator[str]:
    """What the author says the readings come to, against what they do come to."""
    for each in stated:
        quantity = knowledge.quantities[each.quantity]
        where = f" at {each.at}" if each.at else ""
        try:
            wanted = read(each.value, Expected(quantity.unit)).values[0].value
            place = _place(found, quantity.per, each.at)
        except (NotUnderstood, PlaceNotUnderstood) as error:
            yield f"{each.quantity}{where}: {error}"
            continue
        value = _value(found, each.quantity, place)
        if value is None:
            yield f"{each.quantity}{where} does not follow from the readings"
        elif abs(value - wanted) > _allowance(quantity.unit, wanted):
            yield f"{each.quantity}{where} comes to {value:.1f}, not {each.value}"


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


def _stated_outcomes(knowledge: Knowledge, scenario: Scenario) -> Iterator[str]:
    """A reading with a number and a word: the number must be able to mean the word."""
    for answer in scenario.case.answers:
        if answer.text is None or not answer.outcomes:
            continue
        alone = replace(scenario.case, answers=(replace(answer, outcomes=()),))
        readings, _ = take_readings(knowledge, alone)
        seen = {o for r in readings if r.test == answer.test for o in r.chances}
        if seen and not seen & set(answer.outcomes):
            word = ", ".join(answer.outcomes)
            yield f"{answer.test}: {answer.text} is called {word}, the rules call it {min(seen)}"


def _stops(reasoner: Reasoner, scenario: Scenario) -> Iterator[str]:
    """The STOP that the truth names is called up by the readings or the complaint."""
    if scenario.truth.stop is None:
        return
    opening = replace(scenario.case, answers=())
    for case in (scenario.case, opening):
        if any(
            fired.stops and fired.hazard.id == scenario.truth.stop
            for fired in reasoner.conclude(case).hazards
        ):
            return
    yield f"nothing here calls up the STOP {scenario.truth.stop}"


def _sound(knowledge: Knowledge, after: _Readings) -> Iterator[str]:
    """After the repair every reading that can be judged is sound."""
    for reading in after.readings:
        healthy = knowledge.tests[reading.test].healthy
        if healthy and reading.seen and not reading.computed:
            wrong = [outcome for outcome in reading.seen if outcome not in healthy]
            if wrong:
                yield f"{after.name}: {reading.test} still reads {', '.join(wrong)}"


def _said_twice(knowledge: Knowledge, found: _Readings) -> Iterator[str]:
    """A value typed although it follows from others must agree with them."""
    for answer in found.case.answers:
        test = knowledge.tests[answer.test]
        if answer.text is None or answer.valid is False or not test.reads:
            continue
        quantity = knowledge.quantities[test.reads[0].quantity]
        if quantity.computed:
            yield from _against_others(knowledge, found, answer, quantity.id)


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
