"""What a part is like is told apart from whatever may tell of a state that has gone, or a danger.

All that people were heard to say of the second kind is held against it: not one may pass for the
first. A lock, power and whoever is in the unit: 29 CFR 1910.147 and 1910.333, from memory.
"""

from __future__ import annotations

import pytest

from tests.dialogue import at_test_sentences, gone_sentences, test_told_at_a_step
from tests.dialogue.mechanic_sentences import GONE
from troubleshoot.safety.hearing.findings import tells_a_finding

TOLD: dict[str, tuple[str, ...]] = {
    "gone": tuple(each for said in gone_sentences.GONE.values() for each in said),
    "in-passing": tuple(e for said in gone_sentences.TOLD_IN_PASSING.values() for e in said),
    "asked": tuple(each for said in gone_sentences.ASKED.values() for each in said),
    "at-tests": tuple(each for said in at_test_sentences.TOLD.values() for each in said),
    "in-no-list": at_test_sentences.PASSED_UNASKED,
    "like-an-outcome": tuple(said for _, said in GONE),
    "left-in": test_told_at_a_step.LEFT_IN,
    "states": test_told_at_a_step.STATES,
    "dangers": test_told_at_a_step.DANGERS,
}


@pytest.mark.parametrize("kind", TOLD)
def test_nothing_of_a_state_or_a_danger_is_a_finding(kind: str) -> None:
    assert not [said for said in TOLD[kind] if tells_a_finding(said)]


@pytest.mark.parametrize(
    "said",
    [
        "filters are plugged solid", "a little gray, light still comes through",
        "belt is loose and glazed", "fins combed over flat", "spider web in the burner",
        "nice and tight, no cracks, lines up", "suction line is white with frost",
        "fan blades are dirty", "half inch of scum in it, outlet plugged",
        "all good, new faces clean", "clean as a whistle, set screw tight",
    ],
)  # fmt: skip
def test_what_a_part_is_like_is_one(said: str) -> None:
    assert tells_a_finding(said)


@pytest.mark.parametrize(
    "said",
    [
        "", "12", "cover is loose", "contactor is stuck in", "the relay is open", "blower is loose",
        "filters are dirty, fan just started", "filters dirty and he is at the switch",
        "belt is glazed and my lock is gone", "coil is wet, rain is coming in",
        "dirty, Dave stands at the other end", "meter is new", "clean and back on",
        "it broke", "the gas cock is rusty", "panel is clean",
    ],
)  # fmt: skip
def test_one_word_of_the_work_makes_it_none(said: str) -> None:
    assert not tells_a_finding(said)
