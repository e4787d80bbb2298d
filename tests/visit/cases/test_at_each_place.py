"""A file that reads each test once at each place is judged at once, as if line by line.

The long way looks at every beginning of the file for a STOP that a later line might take away. A
table of logged readings would take it for every row of a unit with two circuits.
"""

from __future__ import annotations

import random
from dataclasses import replace

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.chaining.chains import FlatRule, compile_chains
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.visit.cases import nothing_lifts
from troubleshoot.visit.cases.nothing_lifts import conclude_file

UNIT = {
    "refrigerant": "R-454B", "metering": "txv", "circuits": 2, "condenser-fans": 2, "heat": "gas",
    "compressor-phase": "single", "condenser-fan-phase": "single", "line-volts-class": "480-volt",
}  # fmt: skip


def drawn_case(knowledge: Knowledge, seed: int) -> Case:
    """Answers to tests at every place of theirs, each once, good and bad, in any order."""
    dice = random.Random(seed)
    unit = read_unit(knowledge, UNIT)
    tests = [t for t in knowledge.tests.values() if t.outcomes and len(unit.layout.places(t.per))]
    answers = [
        Answer(test.id, (dice.choice(test.outcomes).id,), places=(place,))
        for test in dice.sample([t for t in tests if t.per or t.kind != "step"], 4)
        for place in unit.layout.places(test.per)
    ]
    dice.shuffle(answers)
    return Case(unit, dice.choice(list(knowledge.complaints)), tuple(answers))


def told(conclusions: Conclusions) -> tuple[list[object], list[object]]:
    """The hazards with what stands of them, and the causes with their chances."""
    hazards = ((f.hazard.id, f.stops, f.found, f.circuits) for f in conclusions.hazards)
    causes = ((c.fault.id, c.at, c.probability) for c in conclusions.causes)
    return sorted(hazards), list(causes)


@pytest.mark.parametrize("seed", range(12))
def test_the_short_way_finds_what_the_long_one_does(
    shipped: Knowledge, monkeypatch: pytest.MonkeyPatch, seed: int
) -> None:
    case = drawn_case(shipped, seed)
    at_once = conclude_file(Reasoner(shipped), case)
    monkeypatch.setattr(nothing_lifts, "_may_take_away", lambda *_: True)
    by_line = conclude_file(Reasoner(shipped), case)
    assert told(at_once) == told(by_line)


def test_two_places_need_no_look_at_every_beginning(shipped: Knowledge) -> None:
    unit = read_unit(shipped, UNIT)
    first, second = unit.layout.places("circuit")
    apart = tuple(Answer("suction-pressure", text="128 psig", places=(p,)) for p in (first, second))
    may_take_away = nothing_lifts._may_take_away
    assert not may_take_away(shipped, Case(unit, answers=apart))
    assert may_take_away(shipped, Case(unit, answers=(*apart, apart[0])))
    shared = replace(apart[0], places=(first, second), shared=True)
    assert may_take_away(shipped, Case(unit, answers=(shared, apart[1])))


def test_no_stop_rests_on_what_was_not_seen(shipped: Knowledge) -> None:
    """Why another place takes nothing away: what leads to a STOP only ever grows."""
    rules: dict[str, list[FlatRule]] = {}
    for rule in compile_chains(shipped):
        rules.setdefault(rule.concludes, []).append(rule)
    waiting = [
        atom for atom in rules
        if atom.startswith("hazard:") and shipped.hazards[atom.split(":")[1]].stop is not None
    ]  # fmt: skip
    reached: set[str] = set()
    while waiting:
        atom = waiting.pop()
        reached.add(atom)
        needs = [need for rule in rules.get(atom, ()) for need in rule.needs]
        waiting += [need for need in needs if need not in reached]
    assert len(reached) > 100
    assert not any(atom.startswith(("unseen:", "state:")) for atom in reached)
