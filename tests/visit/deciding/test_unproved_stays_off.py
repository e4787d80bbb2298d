"""What stopped the job and was repaired stays off until the repair is proved."""

from __future__ import annotations

import pytest

from tests.visit.deciding.test_lifting_metered import CLOSED, CO
from tests.visit.deciding.test_proofs_that_run import CRACKED, asked_until_the_end
from tests.visit.deciding.test_stops import RESULT, UNIT, Events, next_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.safety.stops.record import LeftOn
from troubleshoot.visit.deciding.left_off import left_for, left_off_at
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import (
    Answered,
    Closing,
    Halted,
    LeftBefore,
    ProofRead,
    Reopened,
    Repaired,
    Skipped,
    Started,
    StepDone,
    TakenAfresh,
    replay,
)

STOPPED = "carbon-monoxide-in-room"
PROVED = {
    "Flue steady through three blower starts": "0.1 % three times",
    "Nothing in the supply air": "none",
    "Rise in its range": "45 F",
    "Flue under the unit's limit": "under the limit, 30 ppm air free",
    "Under 9 ppm in the rooms with the heat on": "0 ppm",
}


@pytest.fixture(scope="module")
def decider(shipped: Knowledge) -> Decider:
    return Decider(shipped)


def lifted() -> Events:
    """Carbon monoxide was found, handed over, and read sound afresh; then the repair."""
    unit = {**UNIT, "heat-rise-low": "35 F", "heat-rise-high": "65 F"}
    return [
        Started(complaint="no-heat", unit=unit), Answered(CO[0], text="38 ppm"),
        Halted.over(STOPPED, CO), CLOSED, Reopened.on(STOPPED, RESULT, CO), TakenAfresh.of(CO),
        Answered(CO[0], text="0 ppm"), Repaired(CRACKED), Closing(),
    ]  # fmt: skip


def test_an_exchanger_that_is_not_proved_leaves_the_heat_off_and_its_cock_shut(
    decider: Decider,
) -> None:
    """Regression: it was closed as running, its cock open, no tag, and nothing told next time."""
    events = lifted()
    told = asked_until_the_end(decider, events)
    assert set(PROVED) <= set(told)
    assert next_of(decider, events).kind == "prove", "whether the complaint is still there"
    events += [Repaired(CRACKED, "n"), Closing(cured=True)]
    told = asked_until_the_end(decider, events)
    assert "gas-cock-shut" in told
    state = replay(decider.knowledge, events)
    assert state.work.gas == "shut" and next_of(decider, events).kind == "ending"
    off = left_off_at(decider.knowledge, state, conclude_visit(decider.reasoner, state))
    assert [fired.hazard.id for fired in off.heat] == [STOPPED]
    assert STOPPED in left_for(off, state.work)


def test_one_that_is_proved_is_left_running(decider: Decider) -> None:
    events = lifted()
    for _ in range(60):
        decision = next_of(decider, events)
        if decision.proof is not None:
            events.append(ProofRead(decision.proof.text, PROVED[decision.proof.text]))
        elif decision.step is not None:
            done = StepDone.of(decision.step, (CONFIRMED[decision.step.id],))
            events.append(done)
        elif decision.kind == "ask" and decision.test is not None:
            events.append(Skipped.over(decision.test.id, decision.at))
        else:
            break
    events += [Repaired(CRACKED, "n"), Closing(cured=True)]
    state = replay(decider.knowledge, events)
    off = left_off_at(decider.knowledge, state, conclude_visit(decider.reasoner, state))
    assert off.all == () and state.work.gas == "on"


@pytest.mark.parametrize(("read", "off"), [(None, True), ("8 ppm", True), ("0 ppm", False)])
def test_the_next_visit_meets_it_and_may_read_it(
    read: str | None, off: bool, decider: Decider
) -> None:
    left = LeftBefore(("The heat was left off.",), (LeftOn(STOPPED, (1,), (CO[0],)),), cock=True)
    events: Events = [left, Started(complaint="no-heat", unit={**UNIT, "circuits": 1})]
    if read is not None:
        events.append(Answered(CO[0], text=read))
    state = replay(decider.knowledge, events)
    found = conclude_visit(decider.reasoner, state)
    assert not found.standing_stops
    assert bool(left_off_at(decider.knowledge, state, found).heat) is off
