"""A reading that is not taken, of a test whose limit nobody has told, stops no job."""

from __future__ import annotations

from pathlib import Path

from tests.edge.person import Clock
from tests.edge.visits import begin, lead_to


def refused(data: Path, clock: Clock, *told: str) -> str:
    """What comes of a rise typed while the unit is locked out."""
    with begin(data, clock, words="no-heat") as person:
        person.types("unit heat gas", *told, "do air-filters")
        lead_to(person, "Test: Filters")
        return " ".join(person.types("temp rise 95").split())


def test_a_rise_is_asked_about_where_no_plate_was_told(data: Path, clock: Clock) -> None:
    """Regression: a STOP over the whole job, though nobody had told the rise of the plate."""
    said = refused(data, clock)
    assert "- STOP" not in said and "(y/n" in said


def test_over_the_plates_own_it_calls_up_its_danger(data: Path, clock: Clock) -> None:
    assert "- STOP" in refused(data, clock, "unit heat rise high 65")
