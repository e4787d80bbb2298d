"""The walk round the unit: first of all that is done on the roof, once, and in nobody's way."""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.steps import EDGE_PROTECTION, ROOF, STOP_BY_CONTROLS
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import (
    Aimed,
    Answered,
    DangerReported,
    Event,
    Skipped,
    Started,
    StepDone,
    replay,
)

LOOK = "walk-round"
GOOD_ROOF: Event = StepDone(ROOF, ("safe",))
CALLS = ("no-cooling", "no-heat", "water-leak", "dead-unit", "noise", "routine-inspection")


@pytest.fixture(scope="module")
def decider(shipped: Knowledge) -> Decider:
    return Decider(shipped)


def next_on(decider: Decider, *events: Event) -> Decision:
    return decider.decide(replay(decider.knowledge, events))


def names(decider: Decider, events: list[Event], skip: bool = False) -> list[str]:
    """What is asked until something on the roof is, without the roof itself and what it needs."""
    asked: list[str] = []
    while True:
        state = replay(decider.knowledge, events)
        decision = decider.decide(state)
        if decision.test is None:
            return asked
        if decision.aim is not None and state.aim is None:
            events.append(Aimed(*(decision.aim[0], str(decision.aim[1] or "") or None)))
        if decision.step is not None:
            events.append(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
        elif skip:
            events.append(Skipped.over(decision.test.id, decision.at))
        else:
            events.append(Answered(decision.test.id, None, (str(decision.test.healthy),)))
        asked.append(decision.test.id)
        if decision.step is None and needs_of(decision.test, None, state.at_work).roof:
            return asked


@pytest.mark.parametrize("facts", [{}, {"heat": "gas"}], ids=["nothing known", "heat known"])
@pytest.mark.parametrize("call", CALLS)
def test_it_is_the_first_thing_on_a_good_roof(
    call: str, facts: dict[str, object], decider: Decider
) -> None:
    asked = names(decider, [Started(complaint=call, unit=facts)], skip=True)
    assert asked[-2:] == [ROOF, LOOK]


def test_a_look_in_the_room_below_waits_for_no_roof(decider: Decider) -> None:
    asked = names(decider, [Started(complaint="no-cooling"), Aimed("thermostat-settings")])
    assert asked[0] == "thermostat-settings"


def test_it_comes_after_what_protects_at_an_edge(decider: Decider) -> None:
    near: tuple[Event, ...] = (
        Started(complaint="no-heat"),
        StepDone(ROOF, ("edge-6-to-15-ft",)),
        Aimed("condenser-fan-turning", chosen=True),
    )
    step = next_on(decider, *near).step
    assert step is not None and step.id == EDGE_PROTECTION
    protected = next_on(decider, *near, StepDone.of(step, ("on",)))
    assert protected.test is not None and protected.test.id == LOOK


@pytest.mark.parametrize("chosen", ["ignition-trials", "superheat", "air-filters"])
@pytest.mark.parametrize(
    "after", [Answered(LOOK, None, ("clean",)), Skipped(LOOK)], ids=["read", "skipped"]
)
def test_a_test_that_was_chosen_comes_after_it_and_not_instead(
    chosen: str, after: Event, decider: Decider
) -> None:
    start: tuple[Event, ...] = (
        Started(complaint="weak-cooling", unit={"heat": "gas", "circuits": 1}),
        Aimed(chosen, chosen=True),
        GOOD_ROOF,
    )
    look = next_on(decider, *start)
    assert look.test is not None and look.test.id == LOOK
    assert "before anything is touched" in look.reason
    state = replay(decider.knowledge, (*start, after))
    assert state.aim is not None and state.aim[0] == chosen
    going_on = decider.decide(state)
    assert going_on.test is not None and going_on.test.id != LOOK


def test_it_does_not_come_once_something_was_touched(decider: Decider) -> None:
    touched = next_on(
        decider,
        Started(complaint="no-heat"),
        GOOD_ROOF,
        StepDone("tell-occupants", ("told",)),
        StepDone("tell-fire-panel", ("on-test",)),
        StepDone(STOP_BY_CONTROLS, ("stopped",)),
        Aimed("board-code", chosen=True),
    )
    assert touched.test is not None and touched.test.id != LOOK


def test_the_way_out_of_a_stop_does_not_wait_for_it(decider: Decider) -> None:
    stopped = next_on(
        decider, Started(complaint="no-heat"), GOOD_ROOF, DangerReported("gas-odour", "gas")
    )
    assert stopped.kind == "stop"
