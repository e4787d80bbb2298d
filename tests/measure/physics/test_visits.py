"""Whole visits to units that obey physics."""

from __future__ import annotations

import random

import pytest

pytest.importorskip("scipy", reason="the optional extra physics is not installed")

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.measure.physics.cases import Examined, examined
from troubleshoot.measure.physics.draws import ROUND, Drawn, singles
from troubleshoot.measure.physics.visits import PhysicalVisit, Visited
from troubleshoot.physics.knobs import AirFaults, Day, Faults
from troubleshoot.physics.sizing import Nameplate
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.declared import CONFIRMED


def unit_with(card: str, faults: Faults, call: str) -> Examined:
    """A single-phase unit of one circuit with this wrong on a hot day, on this call."""
    plate = Nameplate(volts=230.0, three_phase=False)
    cards = (card,) if card else ()
    drawn = Drawn(plate, cards, "cooling", faults, Day())
    (found,) = examined([(drawn, random.Random(1))])
    return Examined(drawn, call, found.rows, found.by_chance)


def visited(knowledge: Knowledge, unit: Examined) -> tuple[PhysicalVisit, Visited]:
    visit = PhysicalVisit(Reasoner(knowledge), unit)
    return visit, visit.visit()


LOADED = Faults(air=AirFaults(filter=12.0))


def test_filters_seen_loaded_are_named_on_a_call_and_on_a_round(shipped: Knowledge) -> None:
    for call in ("weak-cooling", "routine-inspection"):
        visit, came_to = visited(shipped, unit_with("filters-loaded", LOADED, call))
        assert came_to.said.right, call
        assert came_to.on_round == (call == "routine-inspection")
        asked = [each.test for each in visit.state.asked]
        assert came_to.tests == sum(test not in CONFIRMED for test in asked)
        assert came_to.minutes >= sum(each.minutes for each in visit.state.asked)


def test_what_physics_does_not_reckon_is_left_unknown(shipped: Knowledge) -> None:
    visit, _ = visited(shipped, unit_with("filters-loaded", LOADED, "weak-cooling"))
    read = {each.test for each in visit.state.answers} - {*CONFIRMED}
    assert read <= visit.known
    assert not {test for test, _ in visit.state.skipped} & read


def test_the_same_meter_reads_the_same_again(shipped: Knowledge) -> None:
    unit = unit_with("", Faults(), "weak-cooling")
    visit = PhysicalVisit(Reasoner(shipped), unit)
    (place,) = visit.state.unit.layout.places("circuit")
    twice = [visit._answer("suction-pressure", place) for _ in range(2)]
    assert twice[0] is not None and twice[0] == twice[1]


def test_every_drawn_visit_comes_to_an_end(shipped: Knowledge) -> None:
    """Every thirteenth of the round, so that each kind of call is there."""
    for unit in examined(list(singles(len(ROUND), "3"))[::13]):
        _, came_to = visited(shipped, unit)
        assert came_to.said.causes and came_to.minutes > 0
        assert 0 <= came_to.said.chance <= 1 + 1e-9
