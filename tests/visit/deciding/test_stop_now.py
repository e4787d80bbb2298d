"""A reading that says to stop now is followed by the stop, and by no other test."""

from __future__ import annotations

from typing import Any

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED, STEPS
from troubleshoot.safety.reaching import steps_before
from troubleshoot.safety.steps import LOCKOUT, STOP_BY_CONTROLS
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Answered, Event, Skipped, Started, StepDone, replay

UNIT: dict[str, Any] = {
    "heat": "gas",
    "refrigerant": "R-410A",
    "refrigerant-class": "a1",
    "circuits": 1,
    "condenser-fans": 1,
    "line-volts-class": "208-to-240-volt",
    "supply-phase": "three",
    "compressor-phase": "three",
    "duct-smoke-detector": "not-fitted",
    "variable-speed-drive": "not-fitted",
    "blower-motor": "three-phase",
}


@pytest.fixture(scope="module")
def decider(shipped: Knowledge) -> Decider:
    return Decider(shipped)


def at_the_open_unit(decider: Decider, test: str, **facts: Any) -> list[Event]:
    """A visit in which every step to a test has been done."""
    events: list[Event] = [Started(complaint="weak-cooling", unit={**UNIT, **facts})]
    while True:
        state = replay(decider.knowledge, events)
        steps = steps_before(state, decider.knowledge.tests[test], None)
        if not steps:
            return events
        events.append(StepDone.of(steps[0], (CONFIRMED[steps[0].id],)))


@pytest.mark.parametrize(
    ("test", "at", "text", "outcomes"),
    [
        ("line-volts-running", None, "480/440/436 V", ()),
        ("compressor-amps", "compressor 1", "30/0/31 A", ()),
        ("compressor-amps", "compressor 1", None, ("locked-rotor",)),
        ("condenser-fan-turning", "condenser fan 1", None, ("stopped",)),
        ("compressor-start-attempt", "compressor 1", None, ("runs-backward",)),
    ],
)
@pytest.mark.parametrize("volts", ["208-to-240-volt", "480-volt"])
def test_the_stop_is_next(
    test: str,
    at: str | None,
    text: str | None,
    outcomes: tuple[str, ...],
    volts: str,
    decider: Decider,
) -> None:
    """Regression: with the legs far out a look at the thermostat came first, the unit running."""
    events = at_the_open_unit(decider, test, **{"line-volts-class": volts})
    events.append(Answered(test, at, outcomes, text))
    steps = []
    for _ in range(6):
        decision = decider.decide(replay(decider.knowledge, events))
        assert decision.step is not None, decision.test
        steps.append(decision.step.id)
        events.append(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
        if decision.step.id == STOP_BY_CONTROLS:
            break
    assert steps[-1] == STOP_BY_CONTROLS
    after = decider.decide(replay(decider.knowledge, events))
    assert after.step is None or after.step.id != STOP_BY_CONTROLS


def test_a_unit_that_does_not_stop_is_asked_for_once_and_goes_on(decider: Decider) -> None:
    events = at_the_open_unit(decider, "line-volts-running")
    events.append(Answered("line-volts-running", None, (), "240/200/198 V"))
    for _ in range(2):
        decision = decider.decide(replay(decider.knowledge, events))
        if decision.step is not None and decision.step.id == STOP_BY_CONTROLS:
            events.append(StepDone.of(decision.step, ("runs-on",)))
    decision = decider.decide(replay(decider.knowledge, events))
    assert decision.step is None or decision.step.id != STOP_BY_CONTROLS


@pytest.mark.parametrize("volts", ["208-to-240-volt", "480-volt"])
def test_no_panel_is_opened_live_for_a_code_on_a_unit_that_stays_off(
    volts: str, decider: Decider
) -> None:
    """Regression: before a fan's capacitor was read dead the panel came off live for a code."""
    events: list[Event] = [
        Started(complaint="weak-cooling", unit={**UNIT, "line-volts-class": volts}),
        Answered("condenser-fan-turning", "condenser fan 1", ("stopped",)),
    ]
    asked: list[str] = []
    while LOCKOUT not in asked and len(asked) < 30:
        decision = decider.decide(replay(decider.knowledge, events))
        assert decision.test is not None
        asked.append(decision.test.id)
        if decision.step is not None:
            events.append(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
        else:
            events.append(Skipped.over(decision.test.id, decision.at))
    assert LOCKOUT in asked and "panels-off-energised" not in asked
    assert "board-code" not in asked and STEPS[STOP_BY_CONTROLS].id in asked
