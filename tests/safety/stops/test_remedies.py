"""What was done about a STOP is picked from the remedies of its hazard, and read from no sentence.

The sentences are those by which strangers got past, or tried to get past, what read them before.
"""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.safety.stops.little_rules import hazard
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.remedies import NONE_OF_THESE, OF_ANY, remedies_of, remedy
from troubleshoot.safety.stops.result import NotAResult

GAS = hazard(
    "gas",
    "whole-job",
    remedies=("The joint was made tight", "The joint was left out", "It was no gas"),
)

IN_WORDS = [
    "", "done", "yes", "ok", "fixed it", "made safe", "all good now", "0", "5", "-1", "1.", "1 2",
    "one", "first", "1st", "no 1", "it", "it was", "the", "the joint", "the joint was", "joint",
    "nothing", "tightened the union but it weeps", "used plumber's putty at the joint",
    "jammed the contactor open with cardboard", "the super says it was fixed last week",
    "put a stronger overload in", "waited until it was cool", "turned the detector off",
    "tightened the union in my head", "replaced the lug with a piece of copper pipe",
    "painted over the leak with rubber paint", "i would say the joint was made tight",
    "the joint was made tight?", "the joint was not made tight", "union remade and soaped",
    "The joint was made tight, no it was not", "1 but only for now", "1?", "not 1", "two thirds",
]  # fmt: skip


@pytest.mark.parametrize("typed", IN_WORDS)
def test_no_sentence_is_a_remedy(typed: str) -> None:
    with pytest.raises(NotAResult, match="Give the number of what was done, from 1 to 4"):
        remedy(typed, GAS)


@given(st.text(max_size=40))
def test_nothing_but_a_number_of_the_list_or_its_own_words_is_taken(typed: str) -> None:
    listed = remedies_of(GAS)
    try:
        done = remedy(typed, GAS)
    except NotAResult:
        return
    own = " ".join(re.findall(r"\w+", typed.lower()))
    assert own in ("1", "2", "3", "4") or any(each.lower().startswith(own) for each in listed)
    assert done in (*GAS.remedies, "")


@pytest.mark.parametrize(
    ("typed", "done"),
    [
        ("1", "The joint was made tight"), ("2", "The joint was left out"), ("3", "It was no gas"),
        ("it was no gas", "It was no gas"), ("The joint was MADE tight.", GAS.remedies[0]),
        ("the joint was left", "The joint was left out"),
        ("4", ""), (NONE_OF_THESE, ""), ("none of these", ""),
    ],
)  # fmt: skip
def test_a_remedy_is_its_number_or_the_beginning_that_it_alone_has(typed: str, done: str) -> None:
    assert remedy(typed, GAS) == done


def test_a_hazard_without_any_of_its_own_has_those_of_any() -> None:
    assert remedies_of(hazard("x", "this-step")) == (*OF_ANY, NONE_OF_THESE)


@pytest.mark.parametrize(
    "done",
    [
        "All that its orders say was done",
        "What it came from was repaired or replaced",
        "It was seen or read wrongly, and is not there",
    ],
)
def test_those_of_any_are_the_orders_the_repair_and_the_error(done: str) -> None:
    assert remedy(done.lower(), hazard("x", "this-step")) == done


def test_every_stop_for_the_whole_job_says_what_takes_it_away(shipped: Knowledge) -> None:
    for each in shipped.hazards.values():
        assert not each.stops_the_job or (each.remedies and each.all_clear), each.id


PATCHED = ("patch", "seal", "tape", "weld", "bypass", "jumper", "silence", "reset it", "for now")


def test_no_remedy_gets_round_or_patches_anything(shipped: Knowledge) -> None:
    """An exchanger is replaced or proved sound: none is patched (the orders of its hazard)."""
    for each in shipped.hazards.values():
        for said in each.remedies:
            assert not any(word in said.lower().replace("nothing patched", "") for word in PATCHED)


@pytest.mark.parametrize("name", ["heat-exchanger-breach", "smoke-or-heat-now", "wet-electrical"])
def test_off_alone_is_no_remedy_where_it_is_back_once_somebody_switches_it_on(
    name: str, shipped: Knowledge
) -> None:
    for said in shipped.hazards[name].remedies:
        assert re.search(r"\b(switched|shut|turned|power(?:ed)?|is) off\b", said.lower()) is None
