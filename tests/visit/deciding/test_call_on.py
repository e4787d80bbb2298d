"""What is read with the call on is read after the step that makes the call, tools and people clear.

Regression: it was asked for straight after the unit had been stopped by its controls.
"""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import RESTART, ROOM_AIR, STOP_BY_CONTROLS, TOOLS_CLEAR
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Aimed, Event, Skipped, Started, StepDone, replay

UNIT = {
    "heat": "gas",
    "circuits": 1,
    "supply-phase": "three",
    "line-volts-class": "208-to-240-volt",
}


def way_to(knowledge: Knowledge, test: str, at: str | None) -> list[str]:
    """The steps that lead to a test which somebody chose."""
    decider, steps = Decider(knowledge), []
    events: list[Event] = [
        Started(complaint="no-cooling", unit=UNIT),
        Skipped("walk-round"),
        Aimed(test, at, chosen=True),
    ]
    while (step := decider.decide(replay(knowledge, events)).step) is not None:
        steps.append(step.id)
        events.append(StepDone.of(step, (CONFIRMED[step.id],)))
    return steps


@pytest.mark.parametrize(
    ("test", "at"),
    [
        ("contactor-pull-in", "contactor 1"),
        ("contactor-coil-volts", "contactor 1"),
        ("cooling-call", "circuit 1"),
        ("safety-string-walk", "circuit 1"),
        ("heating-call", "heat stage 1"),
    ],
)
def test_the_call_is_made_first(test: str, at: str, shipped: Knowledge) -> None:
    steps = way_to(shipped, test, at)
    assert STOP_BY_CONTROLS in steps, "the panel was opened on a unit that could not start"
    assert steps[-2:] == [TOOLS_CLEAR, RESTART]


def test_a_call_for_heat_waits_for_the_air_of_the_rooms_below(shipped: Knowledge) -> None:
    assert ROOM_AIR in way_to(shipped, "heating-call", "heat stage 1")
    assert ROOM_AIR not in way_to(shipped, "cooling-call", "circuit 1")


def test_what_makes_the_call_itself_is_asked_while_nothing_can_start(shipped: Knowledge) -> None:
    assert RESTART not in way_to(shipped, "transformer-secondary-volts", None)
