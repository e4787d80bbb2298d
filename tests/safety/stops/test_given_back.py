"""Which STOPs are given back with the last one: of the same words, shown by the same reading."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.given_back import given_back_with
from troubleshoot.safety.stops.record import HandOverResult, StopMet

AIR, SAID = ("room-carbon-monoxide", None), "my monitor reads 85 ppm of co"
RESULT = HandOverResult("combustion", "flue sealed", "0 ppm", "2026-11-26 09:30")
LAST = StopMet(
    "carbon-monoxide-evacuate", 3, AIR, SAID, result=RESULT, reopened=True, called="9:10",
    said_yes_to=("Was it read?",),
)  # fmt: skip
FIRST = StopMet("carbon-monoxide-in-room", 1, AIR, SAID)


def test_one_of_the_same_words_has_all_that_was_told_of_the_last(shipped: Knowledge) -> None:
    assert given_back_with(shipped, FIRST, LAST, (FIRST, LAST)) == replace(
        FIRST, answers=3, result=RESULT, reopened=True, called="9:10", said_yes_to=("Was it read?",)
    )


def test_one_of_the_same_danger_is_open_again_with_its_own_answers(shipped: Knowledge) -> None:
    met = replace(LAST, answers=1, result=None, reopened=False, called="", said_yes_to=())
    assert given_back_with(shipped, met, LAST, (met, LAST)) == replace(met, reopened=True)


@pytest.mark.parametrize(
    ("met", "last"),
    [
        ({"hazard": "of-a-pack-that-is-gone"}, {}),
        ({"reported": "the alarm sounded in the hall"}, {}),
        ({"reported": None}, {"reported": None}),
        ({"spot": None}, {"spot": None}), ({"spot": None}, {}),
        ({"spot": ("combustible-gas-sweep", None)}, {}),
        ({"spot": ("all-clear", None)}, {"spot": ("all-clear", None)}),
        ({}, {"result": None}), ({}, {"result": replace(RESULT, by="medical-service")}),
        ({"reopened": True}, {}),
    ],
)  # fmt: skip
def test_any_other_stays_as_it_was(
    met: dict[str, Any], last: dict[str, Any], shipped: Knowledge
) -> None:
    """Told otherwise, shown by a word or elsewhere, cleared by others, or given back before."""
    one, other = replace(FIRST, **met), replace(LAST, **last)
    assert given_back_with(shipped, one, other, (one, other)) == one


def test_it_is_enough_that_the_last_danger_was_told_once_in_the_same_words(
    shipped: Knowledge,
) -> None:
    told = replace(LAST, reported=SAID)
    last = replace(LAST, reported="smells again")
    assert given_back_with(shipped, FIRST, last, (FIRST, told, last)).reopened
