"""A unit that moves: what it reads once something has been done to it.

A repair takes away the signs of the fault it mends; what is left reads as the faults that are
left have it. A deed by feel makes a fault, whose readings are drawn so that they hold together, as
those of a drawn case do. What a fault that stays makes wrong is never better for it: refrigerant
added to a circuit with air in it drives no air out. A number that a deed can only bring up or only
down stands as it was where a draw would have it the other way. Everything else stays as it was.
"""

from __future__ import annotations

import random
from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Final

from troubleshoot.practice.answering import AnsweringUnit
from troubleshoot.practice.building import shown_as
from troubleshoot.practice.consistency import consistency_problems
from troubleshoot.practice.deeds import Deed
from troubleshoot.practice.drawn_readings import DrawnReadings
from troubleshoot.practice.scenario import Scenario, TrueFault
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.evidence.hypotheses import Hypothesis
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.visit.cases.file import read_case

MOST_TRIES: Final = 12
_KINDS_THAT_STAY: Final = ("question",)
"""What people tell of the past is not changed by any deed."""
_Spot = tuple[str, str | None]
"""A test and the place it is taken at; None for the whole unit."""


def moved(reasoner: Reasoner, scenario: Scenario, deed: Deed, at: Place | None) -> Scenario:
    """The unit after a deed at a place; the scenario itself where the deed changes nothing."""
    met = [fault for fault in scenario.truth.faults if _meets(deed, fault, at)]
    if met:
        return _without(reasoner, scenario, met)
    if not deed.makes:
        return scenario
    return _with(reasoner, scenario, deed, at)


def _meets(deed: Deed, fault: TrueFault, at: Place | None) -> bool:
    """Whether a deed mends or hides a fault where it is."""
    here = fault.at is None or at is None or fault.at == at
    return here and fault.fault in (deed.mends, *deed.hides)


def _without(reasoner: Reasoner, scenario: Scenario, gone: list[TrueFault]) -> Scenario:
    """The unit without these faults: their signs gone, the numbers after the repair in place."""
    left = tuple(fault for fault in scenario.truth.faults if fault not in gone)
    signs = _signs(reasoner, scenario, (fault.fault for fault in gone))
    plain = [
        reading
        for reading in _plain_readings(scenario)
        if not _changes(reasoner, str(reading["test"]), signs)
    ]
    if not left:
        plain += [dict(reading) for reading in scenario.truth.proof_readings]
    return _reading(reasoner, scenario, plain, left)


def _with(reasoner: Reasoner, scenario: Scenario, deed: Deed, at: Place | None) -> Scenario:
    """The unit with a fault more: the first draw whose numbers hold together, and are no better.

    Where no draw is so, it reads as before, with the fault in it.
    """
    hypothesis = _hypothesis(reasoner, scenario, deed.makes, at)
    if hypothesis is None:
        return scenario
    faults = (*scenario.truth.faults, TrueFault(deed.makes, hypothesis.at))
    unit = AnsweringUnit(reasoner, scenario)
    wrong = reads_wrong(reasoner, scenario, scenario.truth.faults)
    for inputs_stay in (False, True):
        for seed in range(MOST_TRIES):
            dice = random.Random(f"{scenario.id} {deed.makes} {seed}")
            readings = _drawn_over(reasoner, scenario, hypothesis, dice, wrong, inputs_stay)
            readings = _held(unit, deed, readings, hypothesis.at)
            worse = _reading(reasoner, scenario, readings, faults)
            still = reads_wrong(reasoner, worse, scenario.truth.faults)
            if wrong <= still and not any(consistency_problems(reasoner, worse)):
                return worse
    return _reading(reasoner, scenario, list(_plain_readings(scenario)), faults)


def _drawn_over(
    reasoner: Reasoner,
    scenario: Scenario,
    made: Hypothesis,
    dice: random.Random,
    wrong: frozenset[_Spot],
    inputs_stay: bool,
) -> list[dict[str, object]]:
    """One draw of a fault over the readings of a scenario, of which the wrong ones stay.

    `inputs_stay`: so do the numbers from which others are reckoned.
    """
    unit, day = scenario.plain["unit"], scenario.plain["conditions"]
    assert isinstance(unit, dict) and isinstance(day, dict)
    drawn = DrawnReadings(reasoner, unit, day, scenario.complaint, made, dice).readings()
    signs = _signs(reasoner, scenario, (made.fault.id,)) | {str(each["test"]) for each in drawn}
    tests = reasoner.knowledge.tests

    def stays(reading: dict[str, object]) -> bool:
        test = str(reading["test"])
        kept = tests[test].kind in (*_KINDS_THAT_STAY, *(("input",) if inputs_stay else ()))
        return kept or test not in signs or bool(_spots(reading) & wrong)

    kept = [reading for reading in _plain_readings(scenario) if stays(reading)]
    taken = {spot for reading in kept for spot in _spots(reading)}
    return [*kept, *(_as_case(each) for each in drawn if not _spots(each) & taken)]


def _held(
    unit: AnsweringUnit, deed: Deed, readings: list[dict[str, object]], at: Place | None
) -> list[dict[str, object]]:
    """Readings as drawn; those that the deed cannot bring that way, as they were before it.

    Any charge more stands no lower and condenses no lower (conservation of mass in a shut circuit).
    """
    held = list(readings)
    for name, sign in deed.brings.items():
        before = unit.shows(unit.knowledge.tests[name], at)
        was = None if before is None else _number(before.text)
        if before is None or was is None:
            continue
        spot = (name, None if at is None else str(at))
        drawn = next((each for each in held if spot in _spots(each)), None)
        now = None if drawn is None else _number(drawn.get("text"))
        if now is None or sign * (now - was) < 0:
            held = [each for each in held if each is not drawn]
            held.append({"test": name, "at": spot[1], "text": before.text})
    return held


def _number(text: object) -> float | None:
    """The number that a typed text begins with; None without one."""
    try:
        return float(str(text).split()[0])
    except (IndexError, ValueError):
        return None


def reads_wrong(
    reasoner: Reasoner, scenario: Scenario, faults: Iterable[TrueFault]
) -> frozenset[_Spot]:
    """Where something of which the cards of these faults speak does not read sound."""
    signs = _signs(reasoner, scenario, (fault.fault for fault in faults))
    return frozenset(
        (reading.test, None if reading.at is None else str(reading.at))
        for reading in reasoner.conclude(scenario.case).readings
        if reading.valid
        and reading.test in signs
        and reading.seen
        and not {*reading.seen} & {*reasoner.knowledge.tests[reading.test].healthy}
    )


def _spots(reading: dict[str, object]) -> set[_Spot]:
    """Where a reading of a file is taken: at one place, at several, or of the whole unit."""
    at = reading.get("at")
    places = at if isinstance(at, list) else [at]
    return {(str(reading["test"]), None if place is None else str(place)) for place in places}


def _hypothesis(
    reasoner: Reasoner, scenario: Scenario, fault: str, at: Place | None
) -> Hypothesis | None:
    """The fault at its worst, which cards tell last: by feel is by a lot."""
    hypotheses, _ = reasoner.hypotheses(scenario.unit)
    found = [h for h in hypotheses.causes if h.fault.id == fault and at in (None, h.at)]
    return found[-1] if found else None


def _signs(reasoner: Reasoner, scenario: Scenario, faults: Iterable[str]) -> frozenset[str]:
    """The tests that the cards of these faults speak of, on this unit."""
    hypotheses, _ = reasoner.hypotheses(scenario.unit)
    wanted = set(faults)
    return frozenset(
        test
        for hypothesis in (*hypotheses.causes, *hypotheses.effects)
        if hypothesis.fault.id in wanted
        for test in hypothesis.picture.cells
    )


def _changes(reasoner: Reasoner, test: str, signs: frozenset[str]) -> bool:
    """Whether a test reads anew: it is one of these signs, or what they are reckoned from."""
    kind = reasoner.knowledge.tests[test].kind
    return kind not in _KINDS_THAT_STAY and (test in signs or kind == "input")


def _plain_readings(scenario: Scenario) -> Iterator[dict[str, object]]:
    """The readings as they stand in the file; one that misleads is not met a second time."""
    readings = scenario.plain["readings"]
    assert isinstance(readings, list)
    yield from (dict(reading) for reading in readings if reading.get("valid") is not False)


def _as_case(reading: dict[str, object]) -> dict[str, object]:
    return {key: reading[key] for key in ("test", "at", "text", "outcome") if key in reading}


def _reading(
    reasoner: Reasoner,
    scenario: Scenario,
    readings: list[dict[str, object]],
    faults: tuple[TrueFault, ...],
) -> Scenario:
    """The scenario with other readings and faults."""
    plain = {**scenario.plain, "readings": readings}
    case = read_case(reasoner.knowledge, plain)
    says = {(shown.test, shown.places): shown.says for shown in scenario.listed}
    listed = tuple(
        shown_as(answer, says.get((answer.test, answer.places), "")) for answer in case.answers
    )
    truth = replace(scenario.truth, faults=faults)
    return replace(scenario, plain=plain, case=case, listed=listed, truth=truth, works_out=())
