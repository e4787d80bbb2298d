"""Readings of a meter that fails its proof are withdrawn together."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from tests.building import base, case, fault, test_of
from troubleshoot.knowledge.model import Finding, Hazard, Knowledge, Stop, Trigger
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.readings.withdrawal import METER_PROOF, WITHDRAWN, withdraw

VOLTS = replace(test_of("volts", "high"), kind="measurement", needs_state=("meter-proved",))
LIVE = replace(test_of("live", "high"), kind="measurement", exposes="line")
LOOK = test_of("look", "high")
DEAD = replace(test_of("dead", "live", healthy="dead"), kind="step", needs_state=("meter-proved",))
PROOF = replace(test_of(METER_PROOF, "proved", "failed", healthy="proved"), kind="step")


def rule_base() -> Knowledge:
    stop = Stop("whole-job", "all")
    hazard = Hazard("shock", "DANGER", "keep off", (Trigger((Finding("volts", ("high",)),)),), stop)
    return base(
        [VOLTS, LIVE, LOOK, DEAD, PROOF], [fault("f", {"often": [{"volts": "high"}]})],
        hazards=[hazard],
    )  # fmt: skip


KNOWLEDGE = rule_base()
PROVED, FAILED = Answer(METER_PROOF, ("proved",)), Answer(METER_PROOF, ("failed",))


def read(test: str = "volts", valid: bool | None = None) -> Answer:
    return Answer(test, ("high",), valid=valid)


def counting(*answers: Answer) -> list[bool]:
    """Whether each answer that is no proof still counts."""
    kept = withdraw(KNOWLEDGE, answers)
    return [a.valid is not False for a in kept if a.test != METER_PROOF]


def test_all_since_the_last_proof_are_withdrawn_and_no_earlier_one() -> None:
    assert counting(PROVED, read(), read(), FAILED) == [False, False]
    assert counting(PROVED, read(), PROVED, read(), FAILED) == [True, False]
    assert counting(read(), FAILED) == [False]


def test_later_ones_are_withdrawn_until_a_meter_is_proved_again() -> None:
    assert counting(FAILED, read(), PROVED, read()) == [False, True]
    assert counting(FAILED, FAILED, read(), PROVED, read(), FAILED) == [False, False]


def test_only_readings_that_need_a_proved_meter_are_withdrawn() -> None:
    assert counting(read("look"), read("live"), FAILED) == [True, False]


def test_a_stated_true_wins_and_a_stated_false_keeps_its_own_reason() -> None:
    assert counting(read(valid=True), FAILED, read(valid=True)) == [True, True]
    own = Answer("volts", ("high",), valid=False, why_invalid="wrong leads")
    kept = withdraw(KNOWLEDGE, (read(), own, FAILED))
    assert kept[0].why_invalid == WITHDRAWN
    assert not kept[1].valid and kept[1].why_invalid == "wrong leads"


def test_a_proof_that_is_not_valid_proves_nothing() -> None:
    doubtful = Answer(METER_PROOF, ("proved",), valid=False)
    assert counting(FAILED, doubtful, read()) == [False]
    assert counting(PROVED, read(), doubtful, FAILED) == [False]


def test_hazards_of_withdrawn_readings_still_fire_and_their_weight_is_gone() -> None:
    reasoner = Reasoner(KNOWLEDGE)
    found = reasoner.conclude(case(KNOWLEDGE, read(), FAILED))
    silent = reasoner.conclude(case(KNOWLEDGE, FAILED))
    assert [h.hazard.id for h in found.hazards if h.stops] == ["shock"]
    assert [c.probability for c in found.causes] == [c.probability for c in silent.causes]
    reading = next(r for r in found.readings if r.test == "volts")
    assert not reading.valid and reading.why_invalid == WITHDRAWN


ANSWERS = st.sampled_from([PROVED, FAILED, read(), read("look"), read(valid=True)])


@given(st.lists(ANSWERS, max_size=12))
def test_a_reading_counts_exactly_where_no_failure_touches_it(answers: list[Answer]) -> None:
    kept = withdraw(KNOWLEDGE, answers)
    assert len(kept) == len(answers)
    for index, (answer, after) in enumerate(zip(answers, kept, strict=True)):
        proofs = [a for a in answers[:index] if a.test == METER_PROOF]
        following = [a for a in answers[index:] if a.test == METER_PROOF]
        touched = (proofs and proofs[-1] == FAILED) or (following and following[0] == FAILED)
        exempt = answer.test in ("look", METER_PROOF) or answer.valid is True
        assert (after.valid is False) == bool(touched and not exempt)
        assert (after.outcomes, after.text) == (answer.outcomes, answer.text)
