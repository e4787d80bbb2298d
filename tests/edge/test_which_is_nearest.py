"""The menu of complaints: how to call a danger above it; what was said first, then STOPs."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from troubleshoot.dialogue.complaint import stops_by_itself
from troubleshoot.knowledge.load import load_shipped

SHIPPED = load_shipped()


@pytest.fixture
def person(tmp_path: Path) -> Person:
    person = Person(tmp_path, clock=Clock(tmp_path))
    person.types("RTU-7")
    return person


@pytest.mark.parametrize(
    "typed", ["ceiling shakes, no air", "it smells odd", "not cooling, clammy"]
)
def test_danger_is_named_above_the_menu(typed: str, person: Person) -> None:
    with person:
        said = person.types(typed)
        assert said.index("danger and what is wrong") < said.index("Which is nearest?")


@pytest.mark.parametrize("typed", ["it smells odd", "there is an alarm", "there is a smell"])
def test_calls_that_stop_the_job_stand_first(typed: str, person: Person) -> None:
    says = {c.says: stops_by_itself(SHIPPED, c.id) for c in SHIPPED.complaints.values()}
    with person:
        rows = person.types(typed).splitlines()
        stops = [stop for row in rows for said, stop in says.items() if row.endswith(said)]
        assert stops and stops == sorted(stops, reverse=True)


@pytest.mark.parametrize(
    "typed",
    [
        "my guy grabbed the disconnect and he's stuck to it, shaking",
        "the whole ceiling grille is glowing orange",
        "the co detector in the hallway keeps chirping four times and stopping",
    ],
)
def test_a_danger_in_a_callers_words_stops_at_once(typed: str, person: Person) -> None:
    with person:
        assert "DANGER - STOP" in person.types(typed)


def test_what_was_said_stands_before_a_stop_that_only_sounds_like_it(person: Person) -> None:
    """Two calls that stop the job stood before "It does not cool at all"."""
    with person:
        rows = person.types("not cooling, alarm light on the unit").splitlines()
        first = next(row for row in rows if row.strip().startswith("1 "))
        assert first.endswith(SHIPPED.complaints["no-cooling"].says)
