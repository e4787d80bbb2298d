"""Whoever goes on with a visit is shown nothing beyond them, whatever somebody else began.

Live parts are for qualified persons, 29 CFR 1910.333(c)(2).
"""

from __future__ import annotations

from typing import Any

import pytest

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.profiles import FULLY_QUALIFIED, hand_over
from troubleshoot.safety.steps import LOCKOUT
from troubleshoot.safety.stops import conclude_visit
from troubleshoot.visit.decide import Decider
from troubleshoot.visit.decision import Decision
from troubleshoot.visit.event_shapes import danger_event, step_event
from troubleshoot.visit.events import replay

KNOWLEDGE = load_shipped()
DECIDER = Decider(KNOWLEDGE)
LEAST = (["technician"], ["apprentice"])
START = {
    "event": "start",
    "complaint": "no-cooling",
    "unit": {"refrigerant": "R-410A", "circuits": 1, "duct-smoke-detector": "not-fitted"},
    "profiles": sorted(FULLY_QUALIFIED),
}
AIM = {"event": "aim", "test": "contactor-coil-ohms", "at": "contactor 1", "chosen": True}


def resumed(profiles: list[str], minutes: float = 5.0) -> dict[str, Any]:
    """Somebody goes on, soon enough that nothing has expired."""
    return {"event": "resumed", "minutes_away": minutes, "same_day": True, "profiles": profiles}


def locked_out() -> list[dict[str, Any]]:
    """The events up to the lock, on the way to a winding."""
    events: list[Any] = [START, AIM]
    while events[-1].get("step") != LOCKOUT:
        step = DECIDER.decide(replay(KNOWLEDGE, events)).step
        assert step is not None
        events.append(dict(step_event(step, (CONFIRMED[step.id],))))
    return events


def next_for(events: list[dict[str, Any]]) -> tuple[Decision, str | None]:
    """What comes next, and to whom it had to be handed over."""
    state = replay(KNOWLEDGE, events)
    decision = DECIDER.decide(state)
    return decision, decision.test and hand_over(decision.test, state.profiles)


@pytest.mark.parametrize("profiles", LEAST)
def test_what_another_aimed_at_is_not_gone_on_with_beyond_the_profile(profiles: list[str]) -> None:
    events = locked_out()
    assert next_for([*events, resumed(sorted(FULLY_QUALIFIED))])[0].test is not None
    decision, beyond = next_for([*events, resumed(profiles)])
    assert beyond is None
    assert decision.aim is None or decision.aim[0] != AIM["test"]


@pytest.mark.parametrize("profiles", LEAST)
def test_a_way_back_beyond_the_profile_is_handed_over(profiles: list[str]) -> None:
    events = [*locked_out(), resumed(profiles), {"event": "closing"}]
    while (decision := next_for(events)[0]).step is not None:
        assert next_for(events)[1] is None
        step = decision.step
        events.append(dict(step_event(step, (CONFIRMED[step.id],))))
    ((handed, phrase),) = decision.handed_over
    assert hand_over(KNOWLEDGE.tests[handed], profiles) == phrase
    assert next_for([*events, resumed(sorted(FULLY_QUALIFIED))])[0].step is not None


def test_a_test_may_be_named_while_a_reported_danger_stands() -> None:
    danger = dict(danger_event(KNOWLEDGE.hazards["rotating-parts"], "the guard is off"))
    state = replay(KNOWLEDGE, [START, danger])
    conclusions = conclude_visit(DECIDER.reasoner, state)
    assert DECIDER.forbidden(conclusions, "contactor-coil-ohms", "contactor 1") is not None
