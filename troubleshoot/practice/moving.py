"""A unit that moves: what it reads once something has been done to it.

A repair takes away the signs of the fault it mends; what is left reads as the faults that are
left have it. A deed by feel makes a fault, whose readings are drawn so that they hold together, as
those of a drawn case do. Everything else stays as it was.
"""

from __future__ import annotations

import random
from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Final

from troubleshoot.practice.consistency import consistency_problems
from troubleshoot.practice.deeds import Deed
from troubleshoot.practice.drawn_readings import DrawnReadings
from troubleshoot.practice.scenario import Scenario, Shown, TrueFault
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.evidence.hypotheses import Hypothesis
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.visit.cases.file import read_case

MOST_TRIES: Final = 12
_KINDS_THAT_STAY: Final = ("question",)
"""What people tell of the past is not changed by any deed."""


def moved(reasoner: Reasoner, scenario: Scenario, deed: Deed, at: Place | None) -> Scenario:
    """The unit after a deed at a place; the scenario itself where the deed changes nothing."""
    met = [fault for fault in scenario.truth.faults if _meets(deed, fault, at)]
    if met:
        return _without(reasoner, scenario, met)
    if not deed.makes:
        return scenario
    return _with(reasoner, scenario, deed.makes, at)


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


def _with(reasoner: Reasoner, scenario: Scenario, made: str, at: Place | None) -> Scenario:
    """The unit with a fault more: the first draw whose numbers hold together."""
    for seed in range(MOST_TRIES):
        dice = random.Random(f"{scenario.id} {made} {seed}")
        hypothesis = _hypothesis(reasoner, scenario, made, at)
        if hypothesis is None:
            return scenario
        unit, day = scenario.plain["unit"], scenario.plain["conditions"]
        assert isinstance(unit, dict) and isinstance(day, dict)
        drawn = DrawnReadings(reasoner, unit, day, scenario.complaint, hypothesis, dice).readings()
        changed = {reading["test"] for reading in drawn}
        signs = _signs(reasoner, scenario, (made,))
        kept = [
            reading
            for reading in _plain_readings(scenario)
            if reading["test"] not in changed
            and not _changes(reasoner, str(reading["test"]), signs)
        ]
        faults = (*scenario.truth.faults, TrueFault(made, hypothesis.at))
        worse = _reading(reasoner, scenario, [*kept, *map(_as_case, drawn)], faults)
        if not any(consistency_problems(reasoner, worse)):
            return worse
    return scenario


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
        Shown(
            answer.test,
            answer.places,
            answer.shared,
            answer.text,
            answer.outcomes,
            says.get((answer.test, answer.places), ""),
        )
        for answer in case.answers
    )
    truth = replace(scenario.truth, faults=faults)
    return replace(scenario, plain=plain, case=case, listed=listed, truth=truth, works_out=())
