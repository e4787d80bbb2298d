"""A capacitor that swelled, at a terminal: its can is seen to be another, or the unit stays off."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import DEAD_WORK, begin, careful, lead_to, task

BLEED = "Step: Discharge and meter"
LOOK = "Test: Capacitor from outside"
SWOLLEN = ("swollen", "cap is bulged up top")
STAYS_OFF = "The unit stays off and locked: capacitor may burst"


def bled_after_half_an_hour(folder: Path, said: str) -> Person:
    """It swelled, was left alone, locked out and bled, and the STOP has gone."""
    clock = Clock(folder)
    person = begin(folder, clock)
    person.types(DEAD_WORK)
    lead_to(person, BLEED)
    assert " - STOP" in person.types(said)
    clock.pass_minutes(31)
    person.types("again", "1")
    for _ in range(40):
        now = task(person)
        if "Test: " in now or (BLEED in now and "compressor 1" not in now):
            return person
        person.types(lifting(person))
    raise AssertionError(person.said[-2000:])


def lifting(person: Person) -> str:
    """What is typed on the way to what lifts the STOP."""
    if "(y/n)" in person.last[-40:]:
        return "y"
    return "quiet" if "Half an hour since" in task(person) else careful(person)


@pytest.mark.parametrize("said", SWOLLEN)
def test_a_can_that_nobody_saw_replaced_keeps_the_unit_off(said: str, tmp_path: Path) -> None:
    """Regression: 0 V lifted the STOP, and the unit was switched on with the swollen can in it."""
    with bled_after_half_an_hour(tmp_path, said) as person:
        person.types("done")
        lead_to(person, LOOK)
        while person.running and "The visit is closed" not in person.last:
            person.types("s" if LOOK in task(person) else careful(person))
        assert STAYS_OFF in " ".join(person.said.split())
        assert "Take your own lock off" not in person.said


@pytest.mark.parametrize("said", SWOLLEN)
def test_a_new_can_seen_sound_lets_the_power_back(said: str, tmp_path: Path) -> None:
    with bled_after_half_an_hour(tmp_path, said) as person:
        person.types("done")
        lead_to(person, LOOK)
        for _ in range(40):
            if "Take your own lock off" in task(person):
                break
            person.types("normal" if LOOK in task(person) else careful(person))
        assert "Take your own lock off" in task(person), person.said[-2000:]
        assert STAYS_OFF not in " ".join(person.said.split())


def test_another_stop_in_between_does_not_begin_the_half_hour_anew(tmp_path: Path) -> None:
    """Regression: a false call of the ladder was lifted, and the can had to wait from then on."""
    clock = Clock(tmp_path)
    with begin(tmp_path, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, BLEED)
        person.types("swollen")
        clock.pass_minutes(20)
        assert "STOP" in person.types("danger the ladder is gone")
        clock.pass_minutes(11)
        person.types("again", "3", "safe", "put right")
        assert "30 minutes have to pass" not in person.types("again")
        assert "What was done to make it safe?" in person.last
