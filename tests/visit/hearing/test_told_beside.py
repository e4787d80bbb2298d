"""Oxygen told in the line of the carbon monoxide judges it; limits as of the test's own source."""

from __future__ import annotations

import pytest

from tests.cli.lines import book_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import Started
from troubleshoot.visit.hearing.proof_read import NOT_RIGHT, why_unproved

UNIT = {"heat": "gas", "fuel": "natural-gas"}
FLUE = "Flue under the unit's limit"


def why(knowledge: Knowledge, typed: str) -> str:
    book = book_of(knowledge, [Started(complaint="no-heat", unit=UNIT)])
    proofs = knowledge.faults["gas-valve-failed"].proof
    proof = next(each for each in proofs if each.text == FLUE)
    return why_unproved(knowledge, book.state.unit, proof, typed)


@pytest.mark.parametrize(
    "typed",
    ["28 ppm air-free at 8 % O2", "20 ppm, 8 % oxygen", "28 ppm, O2 8 %", "o2 of 7.5 %, co 20 ppm"],
)
def test_oxygen_in_the_same_line_judges_it(typed: str, shipped: Knowledge) -> None:
    """Regression: it was not judged "for want of flue oxygen", or told to be bad."""
    assert why(shipped, typed) == ""


@pytest.mark.parametrize("typed", ["28 ppm at 12 % O2", "150 ppm at 8 % O2"])
def test_neither_hides_that_the_other_is_bad(typed: str, shipped: Knowledge) -> None:
    assert why(shipped, typed) == NOT_RIGHT


@pytest.mark.parametrize("typed", ["28 ppm", "8 % O2"])
def test_one_of_the_two_is_not_enough(typed: str, shipped: Knowledge) -> None:
    assert why(shipped, typed) not in ("", NOT_RIGHT)
