"""A leak that was made tight: its joints come before the call for heat, the flame after it."""

from __future__ import annotations

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import RESTART
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import (
    Closing,
    Event,
    ProofRead,
    Repaired,
    Started,
    StepDone,
    replay,
)

JOINTS, LIVE = "gas-joint-bubble-test", "panels-off-energised"
UNIT = {"heat": "gas", "fuel": "natural-gas", "line-volts-class": "208-to-240-volt"}
READ = {
    JOINTS: "no bubbles at any joint, signed",
    "combustible-gas-sweep": "0 % LEL",
    "ignition-trials": "lights first try",
    "flame-picture": "even blue",
    "flue-gas-analysis": "normal",
}


def test_joints_are_tight_before_the_light_and_the_flame_is_seen_after_it(
    shipped: Knowledge,
) -> None:
    """Regression: it was lit behind a live open panel, and the joints were asked for after it."""
    decider = Decider(shipped)
    start = Started(complaint="no-heat", unit=UNIT)
    events: list[Event] = [start, Repaired("gas-leak-at-unit"), Closing()]
    asked: list[str] = []
    for _ in range(60):
        decision = decider.decide(replay(shipped, events))
        if decision.kind == "prove" and decision.proof is None:
            break
        if decision.proof is not None:
            name = decision.test.id if decision.test else ""
            asked.append(name)
            events.append(ProofRead(decision.proof.text, READ.get(name, "nothing read")))
        else:
            assert decision.step is not None, decision
            asked.append(decision.step.id)
            assert decision.call == ("heat" if decision.step.id == RESTART else "")
            events.append(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
    assert asked.index(JOINTS) < asked.index(RESTART), asked
    lit = asked[asked.index(RESTART) :]
    assert {"ignition-trials", "flame-picture", "flue-gas-analysis"} <= {*lit}
    assert LIVE not in asked and asked.index("combustible-gas-sweep") < asked.index(JOINTS)
