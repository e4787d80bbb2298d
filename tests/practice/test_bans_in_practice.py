"""The apprentice is held to what a danger forbids, and no hint or expert's way goes against it."""

from __future__ import annotations

from tests.practice.playing import session_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.played import Stopped
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.visit.events import Answered, Skipped, StepDone

RUNS = ("running", "running-open")
OF_A_CIRCUIT = ("circuit", "compressor", "contactor")


def locked_out_on_low_pressure(shipped: Knowledge) -> Session:
    """A unit of two circuits, the second held off by its low-pressure switch."""
    session = session_of(shipped, "lock-house")
    session.add(Answered("safety-string-walk", "circuit 2", ("low-pressure-open",)))  # fmt: skip
    return session


def test_a_test_that_needs_the_circuit_to_run_is_refused(shipped: Knowledge) -> None:
    session = locked_out_on_low_pressure(shipped)
    amps = shipped.tests["compressor-amps"]
    assert not session.may(amps, Place("compressor", 2))
    result = session.choose(amps, Place("compressor", 2))
    assert isinstance(result, Stopped) and result.slip.read == "low-pressure-switch-open"
    assert "low-pressure switch open" in result.slip.missing[0]
    other = session.choose(amps, Place("compressor", 1))
    assert isinstance(other, Stopped) and "the danger gone" not in " ".join(other.slip.missing)


def test_no_hint_leads_to_a_running_test_on_that_circuit(shipped: Knowledge) -> None:
    session = locked_out_on_low_pressure(shipped)
    hinted = []
    for _ in range(40):
        decision = session.hint()
        if decision.aim is None and decision.step is not None:  # what may not run is stopped first
            step = decision.step
            session.add(StepDone.of(step, (CONFIRMED[step.id],)))
            continue
        if decision.aim is None:
            break
        hinted.append(decision.aim)
        session.add(Skipped.over(*decision.aim))
    assert len(hinted) > 3
    for name, at in hinted:
        test = shipped.tests[name]
        on_two = at is not None and at.number == 2 and test.per in OF_A_CIRCUIT
        assert not (on_two and test.work_state in RUNS), (name, at)
