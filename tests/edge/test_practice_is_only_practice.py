"""A real danger told of in a practice ends the practice."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.hearing.dangers import named


@pytest.mark.parametrize(
    "typed",
    [
        ["danger gas"],
        ["my mate collapsed"],
        ["call", "mate is on the floor"],
        ["step i see smoke"],
        ["mayday"],
        ["find he is not breathing"],
    ],
)
def test_it_stops_with_what_to_do_and_says_that_it_is_practice(
    typed: list[str], tmp_path: Path
) -> None:
    clock = Clock(tmp_path)
    with Person(tmp_path / "data", "practise", "elm-parade", clock=clock) as person:
        person.types(*typed)
        assert not person.running
        said = " ".join(person.said.split())
        assert "a real danger comes first" in said and "practice only" in said
        assert "DANGER - STOP" in said or "WARNING - STOP" in said
        assert person.exit_code == 0


def test_the_orders_are_those_of_the_danger_itself(tmp_path: Path, shipped: Knowledge) -> None:
    """Regression: it only named the program to type, two prompts away from what to do."""
    (hazard, *_) = named(shipped, "gas")
    with Person(tmp_path / "data", "practise", "elm-parade", clock=Clock(tmp_path)) as person:
        person.types("danger gas")
        assert hazard.what_to_do in " ".join(person.said.split())
