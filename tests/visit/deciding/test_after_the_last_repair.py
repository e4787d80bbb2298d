"""A danger found after one repair and mended by the next is read afresh after that."""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.places import spoken
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.profiles import FULLY_QUALIFIED
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import TAKES_IT_AWAY, Decider
from troubleshoot.visit.events import (
    Aimed,
    Answered,
    Closing,
    Event,
    FactTold,
    ProofRead,
    Repaired,
    Started,
    StepDone,
    replay,
)

SECTION, CAN, COIL = (
    "capacitance-out-of-circuit", "condenser-fan-capacitor-weak", "condenser-coil-dirty",
)  # fmt: skip
PLATE = FactTold("capacitor-rated", "7.5 uF")


def unit(fans: int) -> Started:
    data = {"circuits": 1, "condenser-fans": fans, "supply-phase": "three", "refrigerant": "R-410A"}
    return Started(complaint="weak-cooling", unit=data, profiles=(*FULLY_QUALIFIED,))


def led(decider: Decider, events: list[Event], last: str, most: int = 60) -> Decision:
    """The decision for a test, each step and test before it done and sound."""
    for _ in range(most):
        decision = decider.decide(replay(decider.knowledge, events))
        test = decision.test
        if test is None or test.id == last:
            return decision
        if decision.step is not None:
            events.append(StepDone.of(decision.step, (CONFIRMED[test.id],)))
        elif decision.proof is None:
            events.append(Answered(test.id, spoken(decision.at), (str(test.healthy),)))
        else:
            events.append(ProofRead(COIL, decision.proof.text, "light shows all through"))
    raise AssertionError(events)


@pytest.mark.parametrize("fans", [1, 2])
@pytest.mark.parametrize("earlier", [False, True])
def test_a_capacitor_changed_after_another_repair_is_read_afresh(
    shipped: Knowledge, fans: int, *, earlier: bool
) -> None:
    """Regression: after a coil's repair the new capacitor was never asked for, and the unit left
    locked: the bad reading itself stood behind a repair, the coil's."""
    decider = Decider(shipped)
    places = {1: "capacitor condenser fan", 2: "capacitor condenser fan 2"}
    coil: list[Event] = [Repaired(COIL), Repaired(COIL, "y")] if earlier else []
    events: list[Event] = [unit(fans), PLATE, *coil, Aimed(SECTION, places[fans], chosen=True)]
    at = spoken(led(decider, events, SECTION).at)
    events.append(Answered(SECTION, at, (), "3.1 uF"))
    events += [Repaired(CAN), Closing()]
    decision = led(decider, events, SECTION, most=1)
    assert (decision.reason, spoken(decision.at)) == (TAKES_IT_AWAY, at)
