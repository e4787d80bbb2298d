"""Whoever closes a visit leaves off what a danger is about that a finding has called up."""

from __future__ import annotations

from typing import Any

import pytest

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Hazard, Knowledge, Trigger
from troubleshoot.reasoning.unit.places import Place, spoken
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import GAS_OPEN, LOCK_OFF, RESTART
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.deciding.left_off import LEFT_SHUT, gas_left, left_off
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import (
    Aimed,
    Answered,
    Closing,
    Event,
    Skipped,
    Started,
    StepDone,
    replay,
)
from troubleshoot.visit.state import VisitState

UNIT: dict[str, Any] = {
    "refrigerant": "R-410A", "refrigerant-class": "a1", "metering": "txv", "circuits": 2,
    "supply-phase": "three", "compressor-phase": "three", "heat": "gas",
    "line-volts-class": "480-volt", "duct-smoke-detector": "fitted",
    "blower-motor": "three-phase", "variable-speed-drive": "not-fitted",
}  # fmt: skip
STARTS = (LOCK_OFF, RESTART)


@pytest.fixture(scope="module")
def decider(shipped: Knowledge) -> Decider:
    return Decider(shipped)


def called_up() -> list[tuple[str, Trigger]]:
    """Each way in which a test calls up a danger that halts no visit and keeps something off."""
    known = load_shipped()
    halting = {
        (finding.test, outcome)
        for hazard in known.hazards.values()
        if _halts(hazard)
        for trigger in hazard.triggers
        for finding in trigger.findings
        for outcome in finding.outcomes
    }
    return [
        (hazard.id, trigger)
        for hazard in known.hazards.values()
        if hazard.keeps_off not in (None, "nothing") and not _halts(hazard)
        for trigger in hazard.triggers
        if len(trigger.findings) == 1 and known.tests[trigger.findings[0].test].kind != "step"
        if (trigger.findings[0].test, trigger.findings[0].outcomes[0]) not in halting
    ]


def _halts(hazard: Hazard) -> bool:
    return hazard.stop is not None and hazard.stop.scope != "this-step"


def found(knowledge: Knowledge, trigger: Trigger) -> list[Event]:
    unit = {**UNIT, **{fact: words[0] for fact, words in trigger.equipment.items()}}
    unit |= {
        fact: words[0]
        for finding in trigger.findings
        for fact, words in knowledge.tests[finding.test].exists_when.items()
    }
    start: list[Event] = [Started(complaint="routine-inspection", unit=unit)]
    layout = replay(knowledge, start).unit.layout
    return start + [
        Answered(
            finding.test,
            spoken(layout.places(knowledge.tests[finding.test].per)[0]),
            (finding.outcomes[0],),
        )
        for finding in trigger.findings
    ]


def closed(decider: Decider, events: list[Event]) -> tuple[VisitState, list[str]]:
    """The visit closed by a careful person, and the steps that this took."""
    events = [*events, Closing()]
    done: list[str] = []
    for _ in range(60):
        state = replay(decider.knowledge, events)
        decision = decider.decide(state)
        if decision.step is None:
            assert decision.kind == "ending", decision
            return state, done
        done.append(decision.step.id)
        events.append(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
    raise AssertionError(f"no end: {done}")


@pytest.mark.parametrize(("name", "trigger"), called_up())
def test_what_a_danger_is_about_is_left_off(
    name: str, trigger: Trigger, decider: Decider, shipped: Knowledge
) -> None:
    """Regression: a unit with an open ground, a warm lug or a blocked flue was started."""
    state, done = closed(decider, found(shipped, trigger))
    off = left_off(conclude_visit(decider.reasoner, state))
    assert name in [fired.hazard.id for fired in off.all]
    if off.unit:
        assert state.work.power == "locked-out" and state.work.panels == "on"
        assert not {*STARTS, GAS_OPEN} & set(done) and done.count("tools-clear") <= 1
        assert state.work.fire_panel == "in-service"
    if off.heat:
        assert state.work.gas == "shut" and GAS_OPEN not in done
    assert len(off.lines) == len(off.all)


def test_a_sound_unit_is_left_running(decider: Decider) -> None:
    events: list[Event] = [
        Started(complaint="routine-inspection", unit=UNIT),
        Skipped("walk-round"),
        Aimed("wiring-burn-marks", chosen=True),
    ]
    while (decision := decider.decide(replay(decider.knowledge, events))).test is not None:
        if decision.step is not None:
            events.append(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
        else:
            break
    state, done = closed(decider, events)
    assert {*STARTS} <= set(done) and state.work.power == "on"
    assert left_off(conclude_visit(decider.reasoner, state)).all == ()


@pytest.mark.parametrize("name", ["roof-edge-under-6-ft", "roof-heat", "ladder-and-hatch"])
def test_a_danger_to_people_alone_keeps_nothing_off(name: str, shipped: Knowledge) -> None:
    assert shipped.hazards[name].keeps_off == "nothing"


def test_one_bad_circuit_of_two_is_left_off_and_the_unit_is_not(
    decider: Decider, shipped: Knowledge
) -> None:
    events: list[Event] = [
        Started(complaint="no-cooling", unit=UNIT),
        Answered("compressor-windings", spoken(Place("compressor", 2)), ("shorted",)),
    ]
    state, _ = closed(decider, events)
    off = left_off(conclude_visit(decider.reasoner, state))
    assert off.unit == () and state.work.power == "on"
    assert off.lines == (
        "Circuit 2 stays off and tagged, so that no call starts it: winding shorted stands in the "
        "way.",
    )


def test_a_unit_left_off_with_its_cock_shut_is_swept_once_and_left(decider: Decider) -> None:
    """Regression: the sweep behind a cock that is not opened was asked for without end."""
    events: list[Event] = [
        Started(complaint="no-heat", unit={"circuits": 1}),
        StepDone("roof-conditions", ("safe",)),
        StepDone("stop-by-controls", ("stopped",)),
        StepDone("gas-cock-shut", ("shut",)),
        Answered("ignition-trials", None, ("locks-out",)),
    ]
    state, done = closed(decider, events)
    off = left_off(conclude_visit(decider.reasoner, state))
    assert off.unit and state.work.power == "locked-out" and state.work.gas == "shut"
    assert done.count("combustible-gas-sweep") <= 1
    assert gas_left(off, state.work) == (LEFT_SHUT,)
