"""What is told in doubt, or of the unit beside this one, tells no fact of this one.

An attacker's answers: with its service ports outside a unit keeps its panels on, so that what is
only thought of them may put hands on a live unit. Common practice, no source.
"""

from __future__ import annotations

import pytest

from troubleshoot.dialogue.hearing import hear
from troubleshoot.dialogue.talk import DangerCalled
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.facts_listed import facts_listed
from troubleshoot.reasoning.unit.facts_untold import is_doubted, is_of_another_unit

ASKED = "service-ports"
LINE = "480/3/60, gas, R-410A, txv"


@pytest.mark.parametrize(
    "typed",
    [
        "on the other unit outside", "outside on the other unit", "outside, other one is inside",
        "on the next unit outside", "outside, like the other RTU", "next door they are outside",
        "ports outside, not sure", "ports outside, I'm not sure", "ports outside, i think",
        "ports outside, maybe", "maybe ports outside", "ports outside?",
        "ports are outside I think", "ports outside probably",
    ],
)  # fmt: skip
def test_it_tells_nothing_of_this_unit(typed: str, shipped: Knowledge) -> None:
    """Regression: refrigerant other and ports outside were taken of the unit beside."""
    assert facts_listed(shipped, ASKED, typed)[0] == {}


@pytest.mark.parametrize("doubt", ["ports outside, not sure", "ports are outside I think"])
def test_the_rest_of_the_line_is_taken_and_the_doubt_named(doubt: str, shipped: Knowledge) -> None:
    said, left = facts_listed(shipped, "", f"{LINE}, {doubt}")
    assert said == facts_listed(shipped, "", LINE)[0] and ", ".join(left) == doubt
    said, left = facts_listed(shipped, "", f"{doubt}, 480/3/60, gas")
    assert ASKED not in said and ", ".join(left) == doubt


@pytest.mark.parametrize(
    "typed", ["ports outside", "outside", "ports are outside", "on the outside", "outside ports"]
)
def test_what_is_told_for_sure_is_taken(typed: str, shipped: Knowledge) -> None:
    assert facts_listed(shipped, ASKED, typed)[0] == {ASKED: "outside"}


def test_a_fact_told_in_doubt_is_no_danger_in_a_list(shipped: Knowledge) -> None:
    """Regression: gas, and ports that somebody thinks are outside, were heard as gas outside."""
    hear(shipped, f"{LINE}, ports are outside I think")


@pytest.mark.parametrize("typed", ["480, gas, everybody outside", "gas, outside i think"])
def test_gas_outside_is_one(typed: str, shipped: Knowledge) -> None:
    with pytest.raises(DangerCalled):
        hear(shipped, typed)


@pytest.mark.parametrize(
    ("pieces", "number", "doubted"),
    [
        (["MAYBE ports outside"], 0, True), (["ports?"], 0, True), (["gas", " "], 0, False),
        (["ports outside", " not sure"], 0, True), (["ports outside", " Not Sure."], 0, True),
        (["ports outside", " not sure, gas"], 0, False), (["ports outside", "gas"], 0, False),
        (["ports outside", "", " not sure"], 0, False),
        (["ports outside", "maybe gas"], 0, False), (["gas not sure", "ports"], 1, False),
        (["gas", "ports outside", "I THINK"], 0, False),
        (["gas", "ports outside", "I THINK"], 1, True), (["not sure", "gas"], 1, False),
    ],
)  # fmt: skip
def test_a_doubt_is_of_its_own_piece_and_one_by_itself_of_the_piece_before(
    pieces: list[str], number: int, doubted: bool
) -> None:
    assert is_doubted(pieces, number) is doubted


@pytest.mark.parametrize(
    ("typed", "another"), [("on the Other Unit", True), ("NEXT DOOR", True), ("outside", False)]
)
def test_another_unit_is_named_however_it_is_typed(typed: str, another: bool) -> None:
    assert is_of_another_unit(typed) is another
