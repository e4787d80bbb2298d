"""A reading beside what a mechanic makes of the thing is that reading, and of no other thing."""

from __future__ import annotations

import pytest

from troubleshoot.dialogue.answering import answer_event_from
from troubleshoot.dialogue.verdict_beside import number_beside_verdict
from troubleshoot.knowledge.model import Knowledge

CAPACITOR = "capacitance-out-of-circuit"


@pytest.mark.parametrize(
    ("typed", "number"),
    [
        ("cap is shot, reads 2", "2"), ("its junk, 2.1 uF", "2.1 uF"), ("reads 2, its shot", "2"),
        ("the cap is bad, only reads 31", "31"), ("capacitor toast; 3.5 uf.", "3.5 uf"),
        ("Cap is Shot, Reads 2", "2"), ("READS 2, ITS SHOT", "2"),
    ],
)  # fmt: skip
def test_the_number_is_the_reading(typed: str, number: str, shipped: Knowledge) -> None:
    """Regression: it was asked whether the number counts, or whether all still stands."""
    assert number_beside_verdict(shipped, shipped.tests[CAPACITOR], typed) == number


@pytest.mark.parametrize(
    "typed",
    [
        "meter is bad, reads 2", "lock is shot, 2", "2 uF, my meter is junk", "cap is shot",
        "cap is fine, reads 2", "cap is not bad, reads 2", "cap is shot, reads psi",
        "cap is shot, 2 psi", "2 psi, cap is shot",
    ],
)  # fmt: skip
def test_of_another_thing_or_without_either_it_is_none(typed: str, shipped: Knowledge) -> None:
    assert number_beside_verdict(shipped, shipped.tests[CAPACITOR], typed) == ""


def test_a_thing_may_be_named_in_full(shipped: Knowledge) -> None:
    outdoors = shipped.tests["outdoor-temperature"]
    assert number_beside_verdict(shipped, outdoors, "outdoor temperature is bad, 70") == "70"


def test_what_shows_that_a_danger_has_gone_is_typed_as_it_is_read(shipped: Knowledge) -> None:
    clearing = {hazard.all_clear for hazard in shipped.hazards.values()} - {""}
    read = [test for test in shipped.tests.values() if test.id in clearing and test.reads]
    assert read
    for test in read:
        assert number_beside_verdict(shipped, test, "its bad, reads 0") == ""


@pytest.mark.parametrize(
    ("test", "typed", "number"),
    [
        (CAPACITOR, "cap is shot, reads 2", "2"), ("compressor-shell-heat", "hot, 170", "170"),
        (CAPACITOR, "2 uF", "2 uF"),
    ],
)  # fmt: skip
def test_the_answer_is_the_number_beside_a_verdict_or_a_word(
    test: str, typed: str, number: str, shipped: Knowledge
) -> None:
    asked = shipped.tests[test]
    outcomes = tuple(outcome.id for outcome in asked.outcomes)
    answer = answer_event_from(shipped, asked, None, typed, outcomes)
    assert (answer.text, answer.outcomes) == (number, ())
