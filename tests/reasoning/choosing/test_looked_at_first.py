"""What a rule puts first comes first, at the circuit where the rule holds."""

from __future__ import annotations

from tests.practice.playing import reasoner_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.choosing.looked_at_first import looked_at_first, rules_first
from troubleshoot.reasoning.conclude import Conclusions
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.visit.cases.assessment import candidates_for

SECOND = Place("circuit", 2)
TWO_CIRCUITS = {
    "refrigerant": "R-410A", "metering": "txv", "circuits": 2,
    "supply-phase": "three", "compressor-phase": "three",
}  # fmt: skip


def concluded(knowledge: Knowledge, *answers: Answer) -> Conclusions:
    unit = read_unit(knowledge, TWO_CIRCUITS)
    case = Case(unit, answers=answers, complaint="weak-cooling")
    return reasoner_of(knowledge).conclude(case)


def test_gauges_that_are_on_a_running_circuit_are_read_there(shipped: Knowledge) -> None:
    found = concluded(
        shipped,
        Answer("gauges-on", ("on",), places=(SECOND,)),
        Answer("restart-and-watch", ("runs",)),
    )
    spots = [(each.test.id, each.at) for each in candidates_for(found)[:3]]
    assert spots == [
        ("suction-pressure", SECOND),
        ("head-pressure", SECOND),
        ("subcooling", SECOND),
    ]


def test_gauges_on_a_unit_that_stands_put_nothing_first(shipped: Knowledge) -> None:
    found = concluded(shipped, Answer("gauges-on", ("on",), places=(SECOND,)))
    layout = found.case.unit.layout
    assert list(looked_at_first(found.procedures, candidates_for(found), layout)) == []


def test_what_no_rule_puts_first_keeps_its_place_and_nothing_is_lost(shipped: Knowledge) -> None:
    found = concluded(shipped, Answer("line-volts-idle", ("one-leg-dead",)))
    candidates = candidates_for(concluded(shipped))
    ordered = rules_first(found.procedures, candidates, found.case.unit.layout)
    first = [
        each for each in ordered if each.test.id in ("breaker-and-disconnect", "fuse-continuity")
    ]
    assert ordered[: len(first)] == tuple(first)
    assert [c for c in ordered if c not in first] == [c for c in candidates if c not in first]
