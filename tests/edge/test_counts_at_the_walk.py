"""How many circuits and fans there are, told on the roof before anything was read."""

from __future__ import annotations

from pathlib import Path

from tests.edge.person import Clock
from tests.edge.visits import WALK_ROUND, begin, lead_to
from troubleshoot.dialogue.unit_told import COUNTS


def test_two_circuits_are_taken_while_only_steps_were_done(data: Path, clock: Clock) -> None:
    """Regression: "cannot be changed once something was read" after the look at the roof."""
    with begin(data, clock) as person:
        person.types("do air-filters")
        lead_to(person, WALK_ROUND)
        said = " ".join(person.types("480/3/60, two circuits, two cond fans").split())
        assert COUNTS not in said
        assert "circuits: two" in " ".join(person.types("unit").split())


def test_they_stay_as_they_are_once_something_was_read(data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        person.types("unit circuits 1", "do air-filters")
        lead_to(person, "Test: Filters")
        person.types("clean")
        assert COUNTS in " ".join(person.types("unit circuits 2").split())
