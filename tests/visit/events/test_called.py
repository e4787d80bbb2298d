"""What a start or a test leaves unburnt: by what the unit is called for, and by what came of it."""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import (
    Aimed,
    Answered,
    Event,
    FactTold,
    MarkedInvalid,
    ProofRead,
    Repaired,
    Started,
    StepDone,
    replay,
)

RESTART, SEQUENCE, TRIALS = "restart-and-watch", "operating-sequence", "ignition-trials"
FAILS = StepDone(RESTART, ("does-not-start",))


def unburnt(knowledge: Knowledge, complaint: str | None, *events: Event) -> bool:
    """Whether gas may be left unburnt after these events, at a unit of which nothing is told."""
    started = Started(complaint=complaint, unit={"circuits": 1})
    return replay(knowledge, [started, *events]).work.unburnt


@pytest.mark.parametrize(
    ("complaint", "left"),
    [("no-heat", True), ("no-air", True), (None, True), ("no-cooling", False)],
)
def test_a_start_that_fails_leaves_gas_unless_it_is_called_to_cool(
    complaint: str | None, left: bool, shipped: Knowledge
) -> None:
    assert unburnt(shipped, complaint, FAILS) is left
    assert unburnt(shipped, complaint, Answered(SEQUENCE, None, ("short-cycles",))) is left
    assert not unburnt(shipped, complaint, StepDone(RESTART, ("runs",)))
    assert not unburnt(shipped, complaint, FactTold("heat", "electric"), FAILS)


def test_a_start_on_the_way_to_a_burner_is_one_of_heat(shipped: Knowledge) -> None:
    for aimed, left in ((TRIALS, True), ("compressor-amps", False), (SEQUENCE, False)):
        assert unburnt(shipped, "no-cooling", Aimed(aimed, chosen=True), FAILS) is left
    assert unburnt(shipped, "no-cooling", Answered(TRIALS, None, ("locks-out",)))


@pytest.mark.parametrize(
    ("complaint", "to_cool"),
    [("no-cooling", True), ("no-heat", False), ("no-air", False), (None, False)],
)
def test_a_visit_knows_what_its_unit_is_called_for_and_keeps_it_as_facts_are_told(
    complaint: str | None, to_cool: bool, shipped: Knowledge
) -> None:
    started = Started(complaint=complaint, unit={"circuits": 1})
    for told in ((), (FactTold("heat", "gas"),)):
        assert replay(shipped, [started, *told]).at_work.called_to_cool is to_cool


@pytest.mark.parametrize(
    ("test", "read", "left"),
    [
        (SEQUENCE, "2 min", True),
        ("flame-current", "0 uA", True),
        ("flame-current", "4 uA", False),
        ("gas-valve-volts", "9 V", True),
    ],
)
def test_a_number_counts_by_what_it_shows(
    test: str, read: str, left: bool, shipped: Knowledge
) -> None:
    assert unburnt(shipped, "no-heat", Answered(test, None, text=read)) is left


@pytest.mark.parametrize(
    ("read", "left"), [("locks out", True), ("lights at first try", False), ("n/a", False)]
)
def test_a_proof_that_a_burner_did_not_give_counts(
    read: str, left: bool, shipped: Knowledge
) -> None:
    name, proof = next(
        (fault.id, proof.text)
        for fault in shipped.faults.values()
        for proof in fault.proof
        if proof.finding is not None and proof.finding.test == TRIALS
    )
    events = (FactTold("heat", "gas"), Repaired(name), ProofRead(proof, read))
    assert unburnt(shipped, "no-heat", *events) is left


def test_a_light_that_failed_has_failed_whether_or_not_the_trial_counts(
    shipped: Knowledge,
) -> None:
    assert unburnt(shipped, "no-heat", Answered(TRIALS, None, ("locks-out",), valid=False))
    locked_out = Answered(TRIALS, None, ("locks-out",))
    assert unburnt(shipped, "no-heat", locked_out, MarkedInvalid("reset first"))
