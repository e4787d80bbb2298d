"""With the head where the switch opens the condenser is looked at before anything else.

What raises the head so far is air that does not come through: fans, both faces of the coil
(common practice, no source). 600 psig on R-410A is past what most switches let stand.
"""

from __future__ import annotations

import pytest

from tests.practice.playing import reasoner_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.places import spoken
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Aimed, Answered, Event, Started, StepDone, replay

UNIT = {
    "heat": "gas", "line-volts-class": "208-to-240-volt", "supply-phase": "three", "circuits": 1,
    "refrigerant": "R-410A", "metering": "txv", "condenser-fans": 1,
    "duct-smoke-detector": "not-fitted",
}  # fmt: skip
HEAD = "head-pressure"
AT_THE_CONDENSER = {"condenser-fan-turning", "condenser-coil-face", "condenser-fan-hand-spin"}
MOST = 90


def looks_after(knowledge: Knowledge, call: str, head: str, *, count: int) -> list[str]:
    """The first tests after a head pressure that somebody chose to read, each sound."""
    decider = Decider(knowledge, reasoner_of(knowledge))
    events: list[Event] = [
        Started(complaint=call, unit=UNIT, conditions={"outdoor-temperature": "95 F"}),
        Aimed(HEAD, "circuit 1", chosen=True),
    ]
    looks: list[str] = []
    read = False
    while len(looks) < count and len(events) < MOST:
        decision = decider.decide(replay(knowledge, events))
        test, at = decision.test, spoken(decision.at)
        assert test is not None, f"{decision.kind} {decision.ending} after {looks}"
        if decision.step is not None:
            events.append(StepDone.of(decision.step, (CONFIRMED[test.id],)))
            continue
        if test.id == HEAD:
            read = True
            events.append(Answered(HEAD, at, text=head))
            continue
        events.append(Answered(test.id, at, test.healthy[:1]))
        looks += [test.id] if read else []
    return looks


@pytest.mark.parametrize("call", ["weak-cooling", "cooling-short-cycles", "fails-hot-afternoons"])
def test_the_condenser_is_looked_at_before_anything_else(call: str, shipped: Knowledge) -> None:
    """Regression: thermostat, damper and transformer came first, and the coil late or never.

    But the board's code, which the power cut for the coil would take.
    """
    looks = {*looks_after(shipped, call, "600 psig", count=2)} - {"board-code"}
    assert "condenser-coil-face" in looks <= AT_THE_CONDENSER


def test_what_a_sound_head_brings_is_not_the_coil(shipped: Knowledge) -> None:
    assert not AT_THE_CONDENSER & {*looks_after(shipped, "weak-cooling", "340 psig", count=1)}
