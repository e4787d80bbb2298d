"""Why a test is next names two causes that it does tell apart, by the belief at that moment.

Held against the rows of the two: in how many cases their reports differ.
"""

from __future__ import annotations

import math

import pytest

from tests.practice.playing import reasoner_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.choosing.next_test import Candidate
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.evidence.outcome_chances import pattern_row
from troubleshoot.reasoning.evidence.weighing import row_alone
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.visit.telling.why_next import separates

UNIT = {
    "heat": "gas", "supply-phase": "single", "line-volts-class": "208-to-240-volt", "circuits": 1,
    "metering": "txv", "refrigerant": "R-410A", "condenser-fans": 1,
}  # fmt: skip
CALLS = ("no-cooling", "weak-cooling", "no-heat", "noise", "no-air", "dead-unit")


def found_on(shipped: Knowledge, call: str) -> Conclusions:
    return reasoner_of(shipped).conclude(Case(read_unit(shipped, UNIT), complaint=call))


def candidates_of(shipped: Knowledge, found: Conclusions) -> dict[str, Candidate]:
    """What tells most in its minutes and what the call looks at first, each at its first place."""
    every = found.candidates(frozenset(), lambda test, _: (test,), lambda test, _: 0.0)
    first = {c.test.id: c for c in reversed(every)}
    worth = [c.test.id for c in every[:12]] + [n for n in found.first_tests if n in first]
    return {name: first[name] for name in worth}


def named_in(shipped: Knowledge, said: str) -> tuple[str, str] | None:
    """The two causes that a reason names; none where it names fewer."""
    names = {fault.name for fault in shipped.faults.values()}
    pairs = [
        (one, other)
        for one in names
        if said.startswith(f"it tells {one} from ")
        for other in names
        if said == f"it tells {one} from {other}"
    ]
    return pairs[0] if pairs else None


def apart(found: Conclusions, test: str, one: str, other: str) -> float:
    """In which share of all cases the reports of two causes differ most, 0 to 1."""
    rows = {
        name: [
            pattern_row(row_alone(found.hypotheses, cause, test))
            for cause in found.hypotheses.causes
            if cause.fault.name == name
            if test in cause.picture.cells or cause.picture.grouped(test) is not None
        ]
        or [found.hypotheses.usual(test)]
        for name in (one, other)
    }
    return max(
        math.fsum(abs(first[o] - second[o]) for o in first) / 2
        for first in rows[one]
        for second in rows[other]
    )


@pytest.mark.parametrize("call", CALLS)
def test_the_two_that_are_named_are_told_apart(call: str, shipped: Knowledge) -> None:
    """Regression: the thermostat's settings told a weak capacitor from a locked compressor."""
    found = found_on(shipped, call)
    named, hardly = 0, {}
    for name, candidate in candidates_of(shipped, found).items():
        said = separates(found, candidate)
        pair = named_in(shipped, said)
        named += pair is not None
        if pair and apart(found, name, *pair) < 0.25:
            hardly[name] = said
    assert hardly == {} and named > 6


def test_what_is_told_apart_is_by_the_belief_at_that_moment(shipped: Knowledge) -> None:
    """With no call at the board the schedule is no longer what the fan speaks against."""
    absent = Answer("cooling-call", ("absent",), places=(Place("circuit", 1),))
    said = set()
    for answers in ((), (absent,)):
        case = Case(read_unit(shipped, UNIT), complaint="no-cooling", answers=answers)
        found = reasoner_of(shipped).conclude(case)
        every = found.candidates(frozenset(), lambda test, _: (test,), lambda test, _: 0.0)
        said |= {separates(found, c) for c in every if c.test.id == "condenser-fan-turning"}
    assert len(said) == 2
