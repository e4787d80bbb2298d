"""A proof that speaks of what runs is asked when it does, never before."""

from __future__ import annotations

import re

import pytest

from tests.visit.deciding.test_stops import UNIT, Events, next_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import (
    Closing,
    LeftBefore,
    ProofRead,
    Repaired,
    Skipped,
    Started,
    StepDone,
    replay,
)

CRACKED = "heat-exchanger-cracked"
RUNNING = re.compile(
    r"\bheat on\b|hours? of heat|day of cooling|\bruns?\b|everything running|unit starts"
    r"|every call$"
)


@pytest.fixture(scope="module")
def decider(shipped: Knowledge) -> Decider:
    return Decider(shipped)


def asked_until_the_end(decider: Decider, events: Events) -> list[str]:
    """The steps and proofs that are asked for, each confirmed, each proof left out."""
    told = []
    for _ in range(60):
        decision = next_of(decider, events)
        if decision.proof is not None:
            told.append(decision.proof.text)
            events.append(ProofRead(decision.proof.text, ""))
        elif decision.step is not None:
            told.append(decision.step.id)
            events.append(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
        elif decision.kind == "ask" and decision.test is not None:
            events.append(Skipped.over(decision.test.id, decision.at))
        else:
            return told
    raise AssertionError(told)


def test_no_burner_is_read_on_the_ground_nor_behind_a_cock_that_may_be_shut(
    decider: Decider,
) -> None:
    """Regression: 0 ppm "with the heat on" was taken before the roof, and with the cock shut."""
    unit = {**UNIT, "heat-rise-low": "35 F", "heat-rise-high": "65 F"}
    left = LeftBefore(("gas cock shut",), cock=True)
    events: Events = [
        left, Started(complaint="no-heat", unit=unit), Repaired(CRACKED), Closing(),
    ]  # fmt: skip
    assert replay(decider.knowledge, events).work.gas == "unsure"
    told = asked_until_the_end(decider, events)
    proofs = [proof.text for proof in decider.knowledge.faults[CRACKED].proof]
    assert [each for each in told if each in proofs] == proofs
    first = min(told.index(proof) for proof in proofs)
    assert {"roof-conditions", "gas-cock-look"} <= set(told[:first])


def test_what_speaks_of_what_runs_is_read_when_it_does(shipped: Knowledge) -> None:
    for fault in shipped.faults.values():
        for proof in fault.proof:
            if proof.later or proof.finding is None or not RUNNING.search(proof.text):
                continue
            test = shipped.tests[proof.finding.test]
            live = test.work_state in ("running", "running-open")
            assert live or proof.called or proof.runs or test.area in SEEN_INDOORS, proof.text


SEEN_INDOORS = {"controls"}
"""Of these the test itself has it run, or stop, as its proof says: a door, a thermostat."""
