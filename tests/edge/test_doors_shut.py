"""Every door and panel that was opened for a look is shut before the lock comes off.

29 CFR 1910.147(e)(1), from memory: before power comes back the machine is seen to be whole.
"""

from __future__ import annotations

from pathlib import Path

from tests.edge.person import Clock, Person
from tests.edge.test_unit_off_is_stopped import at, tasks_to
from tests.edge.visits import begin, careful, task

DOORS = "Shut every door and panel opened for a look"
PANELS = "Put the panels and guards on"
LOCK_OFF = "Take your own lock off"
CALL = "Call for the unit"
FACTS = "208/3/60, electric heat, R-410A, TXV, one circuit, one fan"


def visit(data: Path, clock: Clock) -> Person:
    person = begin(data, clock, words="weak-airflow")
    person.types(FACTS)
    return person


def test_the_filter_door_is_shut_before_the_lock_comes_off(tmp_path: Path, clock: Clock) -> None:
    """Regression: behind the lock alone the filters were read, and no step asked for their door."""
    with visit(tmp_path, clock) as person:
        person.types("do air-filters")
        tasks_to(person, "Test: Filters")
        person.types("do return-air-temperature")
        done = tasks_to(person, LOCK_OFF)
        assert at(done, DOORS) < at(done, LOCK_OFF)


def test_a_door_that_does_not_shut_keeps_the_lock_on(tmp_path: Path, clock: Clock) -> None:
    with visit(tmp_path, clock) as person:
        person.types("do air-filters")
        tasks_to(person, "Test: Filters")
        person.types("do return-air-temperature")
        tasks_to(person, DOORS)
        for word in ("", "cannot", "cannot"):
            person.types(word)
            assert LOCK_OFF not in task(person)


def test_the_others_are_shut_before_something_is_read_behind_one(
    tmp_path: Path, clock: Clock
) -> None:
    """Regression: blower and burner panels were on before a call by a text alone."""
    with visit(tmp_path, clock) as person:
        person.types("do wiring-burn-marks")
        tasks_to(person, "Test: Smell and color", 60)
        person.types("clean")
        person.types("do line-volts-running")
        done = [task(person)]
        for _ in range(40):
            if CALL in done[-1]:
                break
            person.types(careful(person))
            done.append(task(person))
        assert at(done, DOORS) < at(done, LOCK_OFF) < at(done, CALL)
        assert not any(PANELS in each for each in done)
