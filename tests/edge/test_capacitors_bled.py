"""Bleeding a capacitor, at a terminal: what it held before is ordinary, what stays is not."""

from __future__ import annotations

from pathlib import Path

from tests.edge.person import Clock, Person
from tests.edge.visits import DEAD_WORK, begin, lead_to, task

BLEED = "Step: Discharge and meter"


def at_the_capacitor(folder: Path) -> Person:
    person = begin(folder, Clock(folder))
    person.types(DEAD_WORK)
    lead_to(person, BLEED)
    return person


def test_the_volts_before_bleeding_are_ordinary_and_what_stays_stops(tmp_path: Path) -> None:
    """Regression: the first 200 V across a sound capacitor stopped the visit."""
    with at_the_capacitor(tmp_path) as person:
        first = task(person)
        assert "- STOP\n" not in person.types("200 V") and task(person) == first
        assert "holds a charge" not in person.last
        assert task(person) == first and task_after(person, "0.4 V") != first
    with at_the_capacitor(again(tmp_path)) as person:
        person.types("200 V")
        assert " - STOP" in person.types("180 V")


def again(folder: Path) -> Path:
    """A folder of its own for a second visit."""
    (folder / "again").mkdir()
    return folder / "again"


def task_after(person: Person, typed: str) -> str:
    person.types(typed)
    return task(person)


def test_a_hissing_or_swollen_capacitor_is_backed_off_from(tmp_path: Path) -> None:
    with at_the_capacitor(tmp_path) as person:
        said = " ".join(person.types("swollen").split())
        assert " - STOP" in said and "Back off" in said
