"""After a repair, what had forbidden tests is read once more, so that the work can go on."""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.safety.stops.standing import Forbidden
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.left_off import left_off
from troubleshoot.visit.deciding.next import TAKES_IT_AWAY, Decider
from troubleshoot.visit.events import Answered, Closing, Event, Repaired, Skipped, Started, replay

FAN = "capacitor condenser fan 1"
UNIT = {"circuits": 1, "supply-phase": "single", "condenser-fan-phase": "single",
        "compressor-phase": "single", "refrigerant": "R-410A"}  # fmt: skip
Events = list[Event]


@pytest.fixture(scope="module")
def decider(shipped: Knowledge) -> Decider:
    return Decider(shipped)


def weak_and_replaced(*more: Event) -> Events:
    return [
        Started(complaint="fails-hot-afternoons", unit=UNIT),
        read("very-low"),
        Repaired("condenser-fan-capacitor-weak"),
        *more,
    ]


def read(outcome: str) -> Event:
    return Answered("capacitance-out-of-circuit", FAN, (outcome,))  # fmt: skip


def next_of(decider: Decider, events: Events) -> Decision:
    return decider.decide(replay(decider.knowledge, events))


def forbids_the_fan(decider: Decider, events: Events) -> bool:
    conclusions = decider.reasoner.conclude(replay(decider.knowledge, events).case)
    amps = decider.knowledge.tests["condenser-fan-amps"]
    return Forbidden(conclusions).by(amps, Place("condenser-fan", 1)) is not None


def test_the_new_part_is_measured_first_and_takes_the_danger_away(decider: Decider) -> None:
    events = weak_and_replaced()
    assert forbids_the_fan(decider, events)
    decision = next_of(decider, events)
    assert decision.aim == ("capacitance-out-of-circuit", Place("condenser-fan-capacitor", 1))
    assert decision.reason == TAKES_IT_AWAY
    sound = weak_and_replaced(read("normal"))
    assert not forbids_the_fan(decider, sound)
    assert next_of(decider, sound).reason != TAKES_IT_AWAY


@pytest.mark.parametrize("more", [read("open"), Skipped("capacitance-out-of-circuit", FAN)])
def test_it_is_asked_once(more: Event, decider: Decider) -> None:
    """Read bad again, or skipped: the danger stands, and is not asked about again."""
    events = weak_and_replaced(more)
    assert forbids_the_fan(decider, events)
    assert next_of(decider, events).reason != TAKES_IT_AWAY


def test_a_computed_finding_is_read_afresh_by_what_it_is_computed_from(decider: Decider) -> None:
    start = Started(complaint="no-cooling", unit={
        "circuits": 1, "supply-phase": "three", "compressor-phase": "three",
        "nameplate-volts": "460 V"})  # fmt: skip
    extreme = Answered("line-volts-running", text="480/430/475")
    events = [start, extreme, Repaired("loose-or-burnt-terminal")]
    conclusions = decider.reasoner.conclude(replay(decider.knowledge, events).case)
    assert [f.hazard.id for f in Forbidden(conclusions).holding()] == ["motor-on-bad-supply"]
    decision = next_of(decider, events)
    assert decision.reason == TAKES_IT_AWAY and decision.aim is not None
    assert decision.aim[0] == "line-volts-running"


SWITCH = "safety-string-walk"


@pytest.mark.parametrize(
    ("more", "stays_off"),
    [
        ((), True),
        ((Answered(SWITCH, "circuit 1", ("all-closed",)),), False),
        ((Answered(SWITCH, "circuit 1", ("high-pressure-open",)),), True),
        ((Skipped(SWITCH, "circuit 1"),), True),
    ],
)
def test_what_would_leave_the_unit_off_is_read_afresh_once_the_complaint_is_gone(
    more: tuple[Event, ...], stays_off: bool, decider: Decider
) -> None:
    """Regression: a charge was proved, and the unit left locked for a switch found open before."""
    events = [
        Started(complaint="cooling-short-cycles", unit=UNIT),
        Answered(SWITCH, "circuit 1", ("high-pressure-open",)),
        *(Repaired("overcharge"), Closing(), Repaired("overcharge", "n"), Closing(cured=True)),
        *more,
    ]
    decision = next_of(decider, events)
    assert (decision.reason == TAKES_IT_AWAY) is not more
    if not more:
        assert decision.aim == (SWITCH, Place("circuit", 1))
    state = replay(decider.knowledge, events)
    assert bool(left_off(conclude_visit(decider.reasoner, state)).unit) is stays_off
