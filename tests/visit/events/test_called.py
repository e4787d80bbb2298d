"""What a start or a test leaves unburnt: by what the unit is called for, and by what came of it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.record import Spot
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
from troubleshoot.visit.events.called import unit_as_called

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
        (SEQUENCE, "10 min", True),
        ("flame-current", "0 uA", True),
        ("flame-current", "4 uA", False),
        ("gas-valve-volts", "9 V", True),
    ],
)
def test_a_number_counts_by_what_it_shows(
    test: str, read: str, left: bool, shipped: Knowledge
) -> None:
    """Where it shows nothing a light may have failed."""
    assert unburnt(shipped, "no-heat", Answered(test, None, text=read)) is left


@pytest.mark.parametrize("read", [None, "4 uA", "0 uA"])
@pytest.mark.parametrize(("said", "left"), [("zero", True), ("good", False)])
def test_what_was_said_of_a_burner_goes_before_its_number(
    said: str, left: bool, read: str | None, shipped: Knowledge
) -> None:
    """A number beside it does not bring back the flame that somebody saw was gone."""
    answer = Answered("flame-current", None, (said,), text=read)
    assert unburnt(shipped, "no-heat", answer) is left


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


@pytest.mark.parametrize(
    ("fault", "proof", "read"),
    [
        ("heat-exchanger-cracked", "Flue under the unit's limit", "900 ppm"),
        ("rollout-switch-tripped", "The cause is written down and put right", "not found"),
        ("gas-valve-failed", "Lights at the first try", None),
    ],
)
def test_a_proof_that_is_bad_with_the_burner_alight_or_was_not_read_leaves_nothing_unburnt(
    fault: str, proof: str, read: str | None, shipped: Knowledge
) -> None:
    assert proof in {each.text for each in shipped.faults[fault].proof}
    events = (FactTold("heat", "gas"), Repaired(fault), ProofRead(proof, read))
    assert not unburnt(shipped, "no-heat", *events)


def test_a_light_that_failed_has_failed_whether_or_not_the_trial_counts(
    shipped: Knowledge,
) -> None:
    assert unburnt(shipped, "no-heat", Answered(TRIALS, None, ("locks-out",), valid=False))
    locked_out = Answered(TRIALS, None, ("locks-out",))
    assert unburnt(shipped, "no-heat", locked_out, MarkedInvalid("reset first"))


BURNER, FAN = (TRIALS, None), ("weather-pattern", None)


@pytest.mark.parametrize(
    ("aim", "fresh", "to_cool"),
    [
        (None, None, True),
        (FAN, FAN, True),
        (BURNER, None, False),
        (None, BURNER, False),
        (FAN, BURNER, False),
        (BURNER, FAN, False),
    ],
)
def test_a_burner_that_is_read_afresh_is_called_for_as_one_that_is_aimed_at(
    aim: Spot | None, fresh: Spot | None, to_cool: bool, shipped: Knowledge
) -> None:
    """A start on the way to it is one of heat, and leaves its gas unburnt where it fails."""
    state = replay(shipped, [Started(complaint="no-cooling", unit={"heat": "gas", "circuits": 1})])
    called = unit_as_called(shipped, replace(state, aim=aim, fresh=fresh))
    assert called == replace(state.at_work, called_to_cool=to_cool)
