"""What a rule puts first comes first, at the circuit where the rule holds."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from tests.practice.playing import reasoner_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.choosing.looked_at_first import looked_at_first, put_first, rules_first
from troubleshoot.reasoning.conclusions import Conclusions
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
    return concluded_on(knowledge, TWO_CIRCUITS, *answers)


def concluded_on(
    knowledge: Knowledge, facts: Mapping[str, object], *answers: Answer
) -> Conclusions:
    case = Case(read_unit(knowledge, facts), answers=answers, complaint="weak-cooling")
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
    assert (
        list(looked_at_first(found.procedures, candidates_for(found), layout, found.readings)) == []
    )


def test_what_no_rule_puts_first_keeps_its_place_and_nothing_is_lost(shipped: Knowledge) -> None:
    found = concluded(shipped, Answer("line-volts-idle", ("one-leg-dead",)))
    candidates = candidates_for(concluded(shipped))
    ordered = rules_first(found.procedures, candidates, found.case.unit.layout, found.readings)
    first = [
        each for each in ordered if each.test.id in ("breaker-and-disconnect", "fuse-continuity")
    ]
    assert ordered[: len(first)] == tuple(first)
    assert [c for c in ordered if c not in first] == [c for c in candidates if c not in first]


FANS = {
    "refrigerant": "R-410A", "metering": "txv", "circuits": 1, "condenser-fans": 2,
    "fans-serve": "all", "supply-phase": "single", "condenser-fan-phase": "single",
}  # fmt: skip
ONE, OTHER = Place("condenser-fan", 1), Place("condenser-fan", 2)


def test_only_the_fan_that_was_found_standing_is_spun_by_hand(shipped: Knowledge) -> None:
    found = concluded_on(
        shipped, FANS, Answer("condenser-fan-turning", ("stopped",), places=(ONE,))
    )
    layout, offered = found.case.unit.layout, candidates_for(found)
    assert ("condenser-fan-hand-spin", OTHER) in [(c.test.id, c.at) for c in offered]
    first = looked_at_first(found.procedures, offered, layout, found.readings)
    assert [(c.test.id, c.at) for c, _ in first] == [("condenser-fan-hand-spin", ONE)]


def test_with_hands_inside_what_needs_the_power_back_waits(shipped: Knowledge) -> None:
    """A contactor that chatters: its coil is read live, unless the unit is open and dead by now."""
    found = concluded_on(shipped, FANS, Answer("contactor-pull-in", ("chatters",)))
    layout = found.case.unit.layout
    offered = tuple(
        replace(c, switch_minutes=0.0 if c.test.work_state == "locked-out" else 60.0)
        for c in candidates_for(found)
    )
    as_found = put_first(found.procedures, offered, layout, found.readings, dead=False, least=0.0)
    dead = put_first(found.procedures, offered, layout, found.readings, dead=True, least=0.0)
    assert as_found is not None and as_found[0].test.id == "contactor-coil-volts"
    assert dead is None
    # Where nothing at hand pays, it waits for nothing. (Of what spares a wrong call all pays.)
    told = tuple(replace(c, surer=0.0) for c in offered)
    idle = put_first(found.procedures, told, layout, found.readings, dead=True, least=math.inf)
    assert idle == (replace(as_found[0], surer=0.0), as_found[1])
