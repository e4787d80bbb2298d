"""The legs of a proof are judged beside each other, whatever the plate says and however told."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Proof
from troubleshoot.reasoning.unit.equipment import Unit, read_unit
from troubleshoot.visit.hearing.legs_read import is_leg_gone, legs_in
from troubleshoot.visit.hearing.proof_read import A_LEG_MISSING, NOT_RIGHT, why_unproved

KNOWLEDGE = load_shipped()
THREE = {"supply-phase": "three", "compressor-phase": "three"}
BARE = read_unit(KNOWLEDGE, THREE)
PLATED = read_unit(KNOWLEDGE, {**THREE, "compressor-rla": "10 A"})
LEGS = KNOWLEDGE.faults["contactor-pole-burnt-away"].proof[0]
HEATER = KNOWLEDGE.faults["heater-fuse-open"].proof[-1]
FAN = KNOWLEDGE.faults["condenser-fan-motor-seized"].proof[1]


def gone(typed: str) -> bool:
    return is_leg_gone(KNOWLEDGE, LEGS, legs_in(KNOWLEDGE, BARE, LEGS, typed))


@pytest.mark.parametrize(
    "typed",
    [
        "18.2/2.1/19.5 A", "9.1, 4.0, 9.3", "0/9.1/9.0 A", "legs 9.1/2.0/9.2 A, all fine",
        "read 9.1, 2.0 and 9.2 A", "9.1A 9.0A 2A", "9.1 9.0 2.1", "L1 9.1, L2 9.0, L3 nothing",
    ],
)  # fmt: skip
@pytest.mark.parametrize("unit", [BARE, PLATED], ids=["no plate", "plate"])
def test_a_leg_that_is_gone_is_no_proof(typed: str, unit: Unit) -> None:
    """Regression: two legs of three counted as three within 5 % of each other."""
    assert why_unproved(KNOWLEDGE, unit, LEGS, typed) == NOT_RIGHT
    assert gone(typed)


@pytest.mark.parametrize(
    "typed",
    [
        "9.1/9.0/9.2 A", "L1 9.1 L2 9.0 L3 9.2", "legs 9.1/9.0/9.2 A steady",
        "9.1 A on each leg", "9.1, 9.0 and 9.2 after ten minutes",
    ],
)  # fmt: skip
@pytest.mark.parametrize("unit", [BARE, PLATED], ids=["no plate", "plate"])
def test_legs_that_are_alike_are_proved(typed: str, unit: Unit) -> None:
    assert why_unproved(KNOWLEDGE, unit, LEGS, typed) == ""
    assert not gone(typed)


def test_the_figure_of_the_proof_is_the_one_that_counts() -> None:
    assert why_unproved(KNOWLEDGE, BARE, LEGS, "9.0/9.0/9.9 A") == NOT_RIGHT
    assert why_unproved(KNOWLEDGE, BARE, HEATER, "9.0/9.0/9.9 A") == ""
    assert why_unproved(KNOWLEDGE, BARE, HEATER, "24/24/0 A") == NOT_RIGHT
    assert why_unproved(KNOWLEDGE, BARE, FAN, "1.8/0.2/1.8 A") == NOT_RIGHT


@pytest.mark.parametrize("typed", ["9.1/9.0 A", "9.1 A"])
def test_all_legs_have_to_be_told(typed: str) -> None:
    assert why_unproved(KNOWLEDGE, BARE, LEGS, typed) == A_LEG_MISSING


@given(st.lists(st.integers(0, 400), min_size=3, max_size=3), st.sampled_from([" A", "", " amps"]))
def test_legs_more_than_five_per_cent_from_their_average_prove_nothing(
    legs: list[int], unit: str
) -> None:
    amps = [leg / 10 for leg in legs]
    mean = sum(amps) / 3
    why = why_unproved(KNOWLEDGE, BARE, LEGS, "/".join(f"{a:g}" for a in amps) + unit)
    is_even = mean > 0 and max(abs(a - mean) for a in amps) <= 0.05 * mean
    assert (why == "") == is_even


def proof_of(fault: str, words: str) -> Proof:
    return next(proof for proof in KNOWLEDGE.faults[fault].proof if words in proof.text)


FUSES = proof_of("one-fuse-open-whole-unit", "across every fuse")
POLES = proof_of("contactor-coil-open", "Each pole")
SINGLE = read_unit(KNOWLEDGE, {"supply-phase": "single", "compressor-phase": "single"})


@pytest.mark.parametrize(
    ("proof", "unit", "typed", "why"),
    [
        (FUSES, BARE, "40 mv", A_LEG_MISSING),
        (FUSES, BARE, "40/35 mV", A_LEG_MISSING),
        (FUSES, BARE, "40/35/38 mV", ""),
        (FUSES, BARE, "all under 40 mV", ""),
        (FUSES, BARE, "40/300/38 mV", NOT_RIGHT),
        (FUSES, SINGLE, "40 mV", A_LEG_MISSING),
        (FUSES, SINGLE, "40/38 mV", ""),
        (POLES, BARE, "0.1 V", A_LEG_MISSING),
        (POLES, SINGLE, "0.1 V", ""),
    ],
)  # fmt: skip
def test_every_wants_as_many_numbers_as_there_are(
    proof: Proof, unit: Unit, typed: str, why: str
) -> None:
    """Regression: the drop across every fuse was proved by one number."""
    assert why_unproved(KNOWLEDGE, unit, proof, typed) == why
