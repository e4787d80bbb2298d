"""Going on with an open visit: what counts as yes, the STOP that stands, and dangers told there."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import begin


def left_open(data: Path, clock: Clock, unit: str) -> None:
    with begin(data, clock, unit=unit) as person:
        person.types("q")


def visits(data: Path) -> list[str]:
    return sorted(path.stem for path in (data / "visits").glob("*.journal"))


def test_what_is_neither_yes_nor_no_is_asked_again(data: Path, clock: Clock) -> None:
    """Regression: the name of another unit was taken for yes."""
    left_open(data, clock, "RTU-7")
    with Person(data, clock=clock) as person:
        assert "is open" in person.last
        said = person.types("RTU5")
        assert "Who is asking" not in said and "Go on with it?" in said
        assert "Who is asking" in person.types("y")


def test_a_units_name_means_the_open_visit_of_that_unit(data: Path, clock: Clock) -> None:
    left_open(data, clock, "RTU-7")
    left_open(data, clock, "RTU-8")
    with Person(data, clock=clock) as person:
        assert "2026-11-26-2 is open" in person.last
        assert "Who is asking" in person.types("rtu 7")
        person.types("", "note seen by name")
    assert "seen by name" in (data / "visits" / "2026-11-26-1.journal").read_text("utf-8")


def test_the_stop_that_stands_is_shown_before_it_is_asked_who_is_there(
    data: Path, clock: Clock
) -> None:
    with begin(data, clock) as person:
        person.types("danger gas", "q")
    with Person(data, clock=clock) as person:
        said = person.types("y")
        assert "- STOP" in said and said.index("- STOP") < said.index("Who is asking")


def test_a_danger_told_there_belongs_to_the_open_visit(data: Path, clock: Clock) -> None:
    """Regression: it opened a second visit, of no unit."""
    left_open(data, clock, "RTU-7")
    for words in ("danger gas", "i smell gas"):
        with Person(data, clock=clock) as person:
            assert "- STOP" in person.types(words)
        assert visits(data) == ["2026-11-26-1"]


@pytest.mark.parametrize("typed", ["boss 3:10", "y", "the one over the kitchen that hums"])
def test_what_is_hardly_a_name_is_asked_back_once(typed: str, data: Path, clock: Clock) -> None:
    with Person(data, clock=clock) as person:
        said = " ".join(person.types(typed).split())
        assert "hardly a unit's name" in said and "caller say" not in said
        assert "caller say" in person.types("RTU-7")
    with Person(data, "diagnose", clock=clock) as person:
        person.types("n")
        assert "caller say" in person.types("RTU 3")


def test_a_name_at_the_hand_over_is_asked_back_too(data: Path, clock: Clock) -> None:
    with Person(data, clock=clock) as person:
        person.types("", "danger gas", "over")
        assert "Which unit is it" in person.last
        assert "hardly a unit's name" in " ".join(person.types("boss 3:10").split())
        assert "Who was told" in person.types("RTU-7")
