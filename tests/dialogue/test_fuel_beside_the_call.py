"""The fuel that a caller names beside the call is a fact of the unit, and stops no job."""

from __future__ import annotations

import pytest

from tests.cli.lines import Lines, book_of, held
from troubleshoot.dialogue.complaint import ask_complaint
from troubleshoot.dialogue.hearing import hear
from troubleshoot.dialogue.talk import DangerCalled
from troubleshoot.knowledge.model import Knowledge


@pytest.mark.parametrize(
    "said",
    [
        "not cooling enough, gas, natural gas",
        "weak heat, natural gas, gas",
        "weak air from the vents, gas, natural gas",
        "runs a while, then quits, gas, natural gas",
        "it quits after ten minutes, gas, natural gas",
        "not cooling enough, gas",
    ],
)
def test_a_callers_line_with_the_fuel_stops_nothing(said: str, shipped: Knowledge) -> None:
    """Regression: it stopped the whole job, and undo never reaches past a STOP."""
    hear(shipped, said)


@pytest.mark.parametrize(
    "said",
    [
        "gas",
        "gas, i smell it",
        "run, gas, natural gas",
        "everybody runs, gas, natural gas",
        "runs a while, gas, natural gas, hissing",
        "not cooling enough, hissing, gas",
        "then, gas, natural gas",
    ],
)
def test_what_may_be_in_the_air_stops_it(said: str, shipped: Knowledge) -> None:
    with pytest.raises(DangerCalled):
        hear(shipped, said)


def test_the_fuel_and_the_heat_are_kept(shipped: Knowledge) -> None:
    book, terminal = book_of(shipped, []), Lines("not cooling enough, gas, natural gas")
    assert held(shipped, terminal, lambda voice: ask_complaint(book, voice))[1] == "weak-cooling"
    assert book.state.unit.facts["heat"] == "gas"
    assert book.state.unit.facts["fuel"] == "natural-gas"
