"""Whoever goes on with a visit is shown nothing beyond them, whatever somebody else began.

Live parts are for qualified persons, 29 CFR 1910.333(c)(2).
"""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.profiles import FULLY_QUALIFIED, hand_over
from troubleshoot.safety.steps import LOCKOUT
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import (
    Aimed,
    Closing,
    DangerReported,
    Event,
    Resumed,
    Skipped,
    Started,
    StepDone,
    replay,
)

KNOWLEDGE = load_shipped()
DECIDER = Decider(KNOWLEDGE)
LEAST = (("technician",), ("apprentice",))
START = Started(
    complaint="no-cooling",
    unit={"refrigerant": "R-410A", "circuits": 1, "duct-smoke-detector": "not-fitted"},
    profiles=tuple(sorted(FULLY_QUALIFIED)),
)
AIM = Aimed("contactor-coil-ohms", "contactor 1", chosen=True)


def resumed(profiles: tuple[str, ...], minutes: float = 5.0) -> Event:
    """Somebody goes on, soon enough that nothing has expired."""
    return Resumed(minutes, True, profiles=profiles)


def locked_out() -> list[Event]:
    """The events up to the lock, on the way to a winding."""
    looks = ("walk-round", "board-code", "operating-sequence")
    events: list[Event] = [START, AIM, *(Skipped(test) for test in looks)]
    step = None
    while step is None or step.id != LOCKOUT:
        step = DECIDER.decide(replay(KNOWLEDGE, events)).step
        assert step is not None
        events.append(StepDone.of(step, (CONFIRMED[step.id],)))
    return events


def next_for(events: list[Event]) -> tuple[Decision, str | None]:
    """What comes next, and to whom it had to be handed over."""
    state = replay(KNOWLEDGE, events)
    decision = DECIDER.decide(state)
    return decision, decision.test and hand_over(decision.test, state.profiles)


@pytest.mark.parametrize("profiles", LEAST)
def test_what_another_aimed_at_is_not_gone_on_with_beyond_the_profile(
    profiles: tuple[str, ...],
) -> None:
    events = locked_out()
    assert next_for([*events, resumed(tuple(sorted(FULLY_QUALIFIED)))])[0].test is not None
    decision, beyond = next_for([*events, resumed(profiles)])
    assert beyond is None
    assert decision.aim is None or decision.aim[0] != AIM.test


@pytest.mark.parametrize("profiles", LEAST)
def test_a_way_back_beyond_the_profile_is_handed_over(profiles: tuple[str, ...]) -> None:
    events = [*locked_out(), resumed(profiles), Closing()]
    while (decision := next_for(events)[0]).step is not None:
        assert next_for(events)[1] is None
        step = decision.step
        events.append(StepDone.of(step, (CONFIRMED[step.id],)))
    ((handed, phrase),) = decision.handed_over
    assert hand_over(KNOWLEDGE.tests[handed], profiles) == phrase
    assert next_for([*events, resumed(tuple(sorted(FULLY_QUALIFIED)))])[0].step is not None


def test_a_test_may_be_named_while_a_reported_danger_stands() -> None:
    danger = DangerReported.of(KNOWLEDGE.hazards["rotating-parts"], "the guard is off")
    state = replay(KNOWLEDGE, [START, danger])
    conclusions = conclude_visit(DECIDER.reasoner, state)
    assert DECIDER.forbidden(conclusions, "contactor-coil-ohms", "contactor 1") is not None
