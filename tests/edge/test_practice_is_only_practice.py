"""A real danger told of in a practice ends the practice."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person


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
def test_it_stops_and_says_so_in_one_sentence(typed: list[str], tmp_path: Path) -> None:
    clock = Clock(tmp_path)
    with Person(tmp_path / "data", "practise", "elm-parade", clock=clock) as person:
        person.types(*typed)
        assert not person.running
        assert "a real danger comes first" in " ".join(person.last.split())
        assert person.exit_code == 0
