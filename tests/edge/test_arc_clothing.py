"""At 480 V, or where nobody knows, nothing is opened before the clothing for an arc is on."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import (
    CAREFUL,
    DEAD_WORK,
    HANDS_IN,
    begin,
    careful,
    events_of,
    lead_to,
    task,
)

LIVE_WORK = "do contactor-coil-volts at contactor 1"
COIL = "Test: Coil volts while called"
DRESS = "Step: Arc-rated clothing"
VOLTS = {"480 V": "480 volt", "nobody knows": "", "208 V": "208 to 240 volt"}


def tasks_to(person: Person, wanted: str, volts: str) -> list[str]:
    """Every step on the way to a test, done with care on a unit of these volts."""
    tasks = []
    for _ in range(80):
        now = task(person)
        if wanted in now:
            return tasks
        assert person.running, person.said[-3000:]
        if now:
            tasks.append(now)
        person.types(VOLTS[volts] if "Which line voltage" in person.last else careful(person))
    raise AssertionError(person.said[-3000:])


@pytest.mark.parametrize("volts", VOLTS)
@pytest.mark.parametrize(
    ("aim", "wanted", "opening"),
    [
        (LIVE_WORK, COIL, "Step: Open the panel with the power on"),
        (DEAD_WORK, HANDS_IN, "Step: Take the panels off"),
    ],
)
def test_the_clothing_is_on_before_a_cover_comes_off(
    aim: str, wanted: str, opening: str, volts: str, tmp_path: Path, clock: Clock
) -> None:
    with begin(tmp_path, clock) as person:
        person.types(aim)
        tasks = [each.partition(" (")[0] for each in tasks_to(person, wanted, volts)]
    dressed = [n for n, each in enumerate(tasks) if each.startswith(DRESS)]
    opened = next(n for n, each in enumerate(tasks) if each.startswith(opening))
    assert len(dressed) == (volts != "208 V")
    assert all(n < opened for n in dressed)
    if dressed and aim == DEAD_WORK:
        assert tasks[dressed[0] - 1].startswith("Step: Switch off, lock, tag and try")


def test_its_word_is_typed_and_enter_confirms_nothing(tmp_path: Path, clock: Clock) -> None:
    with begin(tmp_path, clock) as person:
        person.types(LIVE_WORK)
        lead_to(person, DRESS.removeprefix("Step: "))
        for typed in ("", "ok", "y", "dre"):
            person.types(typed)
            assert "arc-clothing-on" not in events_of(tmp_path), typed
        person.types("suited up")
        assert '"step": "arc-clothing-on"' in events_of(tmp_path)


@pytest.mark.parametrize("typed", ["missing", "no rated gloves", "no face shield"])
def test_what_is_missing_stops_until_it_is_on(typed: str, tmp_path: Path, clock: Clock) -> None:
    with begin(tmp_path, clock) as person:
        person.types(LIVE_WORK)
        lead_to(person, DRESS.removeprefix("Step: "))
        person.types(typed)
        assert "DANGER - STOP" in person.last and "Dress by the arc-flash label" in person.last
        person.types("again", "1")
        lead_to(person, DRESS.removeprefix("Step: "))
        person.types(CAREFUL["Arc-rated clothing"])
        assert "STOP" not in person.last and task(person)


def test_a_long_silence_takes_it_off_again(tmp_path: Path, clock: Clock) -> None:
    with begin(tmp_path, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, "Take the panels off")
        clock.pass_minutes(45)
        person.types("off")
        assert "arc-rated clothing on" in " ".join(person.last.split())
        person.types(DEAD_WORK)
        lead_to(person, "Take the panels off")
        assert person.said.count(DRESS) == 2


def test_power_put_back_behind_an_open_panel_has_the_caution_of_the_arc(
    tmp_path: Path, clock: Clock
) -> None:
    """Regression: after dead work the lock came off with the panel off, and no word of an arc.

    NFPA 70E 130.7 has whoever may meet an arc dressed for it (from memory); a switch closed onto a
    fault behind an open panel is one.
    """
    with begin(tmp_path, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, HANDS_IN)
        person.types("clean")
        person.types(LIVE_WORK)
        tasks_to(person, "Take your own lock off", "480 V")
        said = " ".join(person.last.split())
        assert "gear over 240 up to 600 V asks for category 2" in said, "and whole: it is new again"
