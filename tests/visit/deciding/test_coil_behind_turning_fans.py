"""With a head or an approach that is high and every fan turning, the coil is looked through next.

A stopped fan is seen from outside in a minute; what is left of the air over the condenser is the
coil, its rows apart (common practice, no source).
"""

from __future__ import annotations

from typing import Any

import pytest

from tests.practice.playing import reasoner_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.unit.places import spoken
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.visit.cases.assessment import candidates_for
from troubleshoot.visit.cases.file import read_case
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Answered, Event, Started, StepDone, replay

UNIT: dict[str, Any] = {
    "refrigerant": "R-410A", "metering": "txv", "circuits": 1, "heat": "gas",
    "fuel": "natural-gas", "condenser-fans": 2,
}  # fmt: skip
COIL = "condenser-coil-face"
HEAD = {"test": "head-pressure", "text": "480 psig"}
LIQUID = {"test": "liquid-line-temperature", "text": "118 F"}
MOST = 6
"""More looks than these are not followed."""


def concluded(reasoner: Reasoner, *read: dict[str, str], **fans: str) -> Conclusions:
    """On a unit that dies every afternoon, at 95 F outdoors."""
    turning = [
        {"test": "condenser-fan-turning", "at": f"condenser fan {number[-1]}", "outcome": seen}
        for number, seen in fans.items()
    ]
    case = {
        "unit": UNIT,
        "conditions": {"outdoor-temperature": "95 F", "minutes-running": 25},
        "complaint": "fails-hot-afternoons",
        "readings": [*read, *turning],
    }
    return reasoner.conclude(read_case(reasoner.knowledge, case))


def next_looks(found: Conclusions, many: int = 5) -> list[str]:
    return [each.test.id for each in candidates_for(found)[:many]]


@pytest.mark.parametrize("read", [(HEAD,), (LIQUID,), (HEAD, LIQUID)])
def test_the_coil_is_looked_through_first(
    read: tuple[dict[str, str], ...], shipped: Knowledge
) -> None:
    """Regression: nine tests came before it, among them a panel opened live."""
    found = concluded(reasoner_of(shipped), *read, fan1="normal", fan2="normal")
    assert next_looks(found, 1) == [COIL]


def test_a_fan_nobody_has_looked_at_comes_before_the_coil(shipped: Knowledge) -> None:
    found = concluded(reasoner_of(shipped), HEAD, LIQUID, fan1="normal")
    assert next_looks(found, 2) == ["condenser-fan-turning", COIL]


@pytest.mark.parametrize("seen", ["stopped", "slow", "backward"])
def test_a_fan_that_does_not_turn_as_it_should_comes_before_the_coil(
    seen: str, shipped: Knowledge
) -> None:
    found = concluded(reasoner_of(shipped), HEAD, fan1="normal", fan2=seen)
    assert next_looks(found, 1) != [COIL]


def test_a_sound_head_does_not_lead_to_the_coil(shipped: Knowledge) -> None:
    sound = {"test": "head-pressure", "text": "380 psig"}
    found = concluded(reasoner_of(shipped), sound, fan1="normal", fan2="normal")
    assert COIL not in next_looks(found, 1)


@pytest.mark.parametrize("fans", [{}, {"fan1": "normal", "fan2": "normal"}])
def test_a_dirty_coil_may_have_the_subcooling_of_a_clean_one(
    fans: dict[str, str], shipped: Knowledge
) -> None:
    """Regression: 12 F made it six times less likely, and fan capacitors led.

    Rossi and Braun 1997, from memory: fouling a condenser lowers the subcooling, if anything.
    """
    found = concluded(reasoner_of(shipped), HEAD, LIQUID, **fans)
    chances = [(c.fault.id, c.probability) for c in found.causes]
    coil = dict(chances)["condenser-coil-dirty"]
    capacitors = [chance for fault, chance in chances if fault == "condenser-fan-capacitor-weak"]
    assert coil > max(capacitors)
    if fans:
        assert chances[0][0] == "condenser-coil-dirty"


@pytest.mark.parametrize("read", [HEAD, LIQUID])
def test_on_a_visit_only_the_clock_and_a_walk_round_come_before_it(
    read: dict[str, str], shipped: Knowledge
) -> None:
    """Regression: line volts, amps and the board's lamp came first."""
    decider = Decider(shipped, reasoner_of(shipped))
    fans = (f"condenser fan {number}" for number in (1, 2))
    events: list[Event] = [
        Started(
            complaint="fails-hot-afternoons",
            unit={**UNIT, "supply-phase": "three", "line-volts-class": "208-to-240-volt"},
            conditions={"outdoor-temperature": "95 F", "minutes-running": "25"},
        ),
        *(Answered("condenser-fan-turning", fan, ("normal",)) for fan in fans),
        Answered(read["test"], "circuit 1", text=read["text"]),
    ]
    looks: list[str] = []
    while COIL not in looks and len(looks) < MOST:
        decision = decider.decide(replay(shipped, events))
        test = decision.test
        assert test is not None, f"{decision.kind} after {looks}"
        if decision.step is not None:
            events.append(StepDone.of(decision.step, (CONFIRMED[test.id],)))
            continue
        looks.append(test.id)
        events.append(Answered(test.id, spoken(decision.at), test.healthy[:1]))
    assert looks == ["weather-pattern", "walk-round", COIL]
