"""A proof is a proof only while it is fresh, was meant, and was not taken back."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import (
    ALL,
    CAREFUL,
    DEAD_WORK,
    HANDS_IN,
    begin,
    careful,
    events_of,
    lead_to,
    task,
)


def hands_in(data: Path, clock: Clock) -> Person:
    """A visit that has just shown a test with the hands inside."""
    person = begin(data, clock)
    person.types(DEAD_WORK)
    lead_to(person, HANDS_IN)
    return person


def goes_on(data: Path, clock: Clock) -> Person:
    """The same visit, started again."""
    person = Person(data, clock=clock)
    assert "is open" in person.last, person.said
    assert "Who is asking" in person.types("y")
    person.types(ALL)
    return person


def next_to_dead_work(person: Person) -> str:
    """The step or test that is asked for on the way to work with the hands inside."""
    person.types(DEAD_WORK)
    return task(person)


@pytest.mark.parametrize("minutes", [31 + 5, 14 * 60, -1])
def test_a_silence_at_the_open_prompt_voids_what_others_could_have_changed(
    minutes: float, data: Path, clock: Clock
) -> None:
    with hands_in(data, clock) as person:
        clock.pass_minutes(minutes)
        person.types("clean")
        assert "long silence" in person.last
        assert next_to_dead_work(person).startswith("Step: Roof")
        assert "typed after a long silence: clean" in events_of(data)
        lead_to(person, HANDS_IN)
        assert person.said.count("Step: Switch off, lock, tag and try") == 2


def test_work_that_takes_its_minutes_is_no_silence(data: Path, clock: Clock) -> None:
    with hands_in(data, clock) as person:
        clock.pass_minutes(20)
        person.types("clean")
        assert "long silence" not in person.last


def test_a_skip_is_no_work_that_explains_a_silence(data: Path, clock: Clock) -> None:
    """A walk found it: skipped after 34 minutes at a four-minute look, the next came at once."""
    with begin(data, clock) as person:
        person.types("do walk-round")
        lead_to(person, "Test: Walk round")
        clock.pass_minutes(32)  # more than half an hour, less than that and the look itself
        assert "Walk round" in task(person)
        person.types("s")
        assert '"event": "resumed"' in events_of(data)


def test_restarts_renew_nothing(data: Path, clock: Clock) -> None:
    with hands_in(data, clock):
        pass
    for _ in range(3):
        clock.pass_minutes(14)
        with goes_on(data, clock) as person:
            shown = next_to_dead_work(person)
    assert shown.startswith("Step: Roof"), shown


def test_a_restart_within_the_half_hour_keeps_the_work_but_a_clock_set_back_does_not(
    data: Path, clock: Clock
) -> None:
    with hands_in(data, clock):
        pass
    clock.pass_minutes(5)
    with goes_on(data, clock) as person:
        assert next_to_dead_work(person).startswith(HANDS_IN)
    clock.pass_minutes(-90)
    with goes_on(data, clock) as person:
        assert next_to_dead_work(person).startswith("Step: Roof")


def test_a_copied_or_touched_or_listed_folder_is_as_old_as_its_events(
    data: Path, clock: Clock, tmp_path: Path
) -> None:
    with hands_in(data, clock):
        pass
    clock.pass_minutes(7 * 24 * 60)
    shutil.copytree(data, tmp_path / "copy")
    for path in (data, tmp_path / "copy"):
        with Person(path, "visits", clock=clock) as person:
            assert "open" in person.said
        for file in (path / "visits").iterdir():
            file.touch()
        with goes_on(path, clock) as person:
            assert next_to_dead_work(person).startswith("Step: Roof")


def test_the_roof_is_looked_at_again_after_an_hour(data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, "Put the fire panel on test")
        shown = []
        for _ in range(3):
            clock.pass_minutes(25)
            person.types("not agreed")
            shown.append(next_to_dead_work(person).partition(" (")[0])
        assert shown == ["Step: Put the fire panel on test"] * 2 + ["Step: Roof, go or no go"]


def test_a_protecting_step_wants_its_word(data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        person.types(DEAD_WORK)
        for step in ("Tell the people", "Roof", "Prove the meter", "Switch off", "Test for dead"):
            lead_to(person, step)
            before = events_of(data).count('"event": "step"')
            for typed in ("", "ok", "y", ",", "d", "lo", "pr"):
                person.types(typed)
                assert not task(person), (step, typed, person.last)
            assert events_of(data).count('"event": "step"') == before
            person.types(next(word for name, word in CAREFUL.items() if name.startswith(step)))


def test_a_paste_confirms_nothing_that_was_not_on_the_screen(data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        person.types(DEAD_WORK)
        person.pastes("told\nsafe\n\n\n\nproved\nstopped\nlocked\noff\ndead\n")
        person.types("?")
        text = events_of(data)
        assert text.count('"event": "step"') == 1, text


def test_lines_of_a_paste_that_are_not_read_are_told_and_notes_are_kept(
    data: Path, clock: Clock
) -> None:
    """Regression: three notes pasted at once were one note, and nothing was said of the rest."""
    with begin(data, clock) as person:
        person.types(DEAD_WORK)
        person.pastes("note one\nnote two\n\nsafe\nnote three\ntold\n")
        for _ in range(4):
            person.types("?")
        said = " ".join(person.said.split())
        assert "2 lines typed ahead of the question were not read: type them again." in said
        text = events_of(data)
        assert [text.count(f'"text": "{note}"') for note in ("one", "two", "three")] == [1, 1, 1]
        assert '"event": "step"' not in text
        person.pastes("?\ndead\n")
        person.types("?")
        assert "1 line typed ahead of the question was not read: type it again." in person.said


@pytest.mark.parametrize("step", ["Take the panels off", "Discharge and meter"])
def test_a_proof_declared_invalid_is_a_failed_one(step: str, data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, step)
        last = person.said.rpartition("Step: ")[0].rpartition("Step: ")[2].partition(" (")[0]
        person.types("invalid the leads were on the wrong terminals")
        assert "Kept as failed" in person.last
        lead_to(person, HANDS_IN)
        again = person.said.partition("Kept as failed")[2]
        assert f"Step: {last}" in again, again[-2000:]


def test_it_is_told_how_a_number_that_confirms_no_step_was_taken(data: Path, clock: Clock) -> None:
    """Regression: after 310 V before discharging the same step was asked again without a word."""
    with begin(data, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, "Discharge and meter")
        assert "310 V is taken as: charged at first." in person.types("310 V")
        assert "is taken as" not in person.types("0.2 V")


def test_the_second_test_for_dead_declared_invalid_keeps_the_hands_out(
    data: Path, clock: Clock
) -> None:
    with begin(data, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, "Test for dead at the point of work, once more")
        person.types("dead", "invalid the leads were on the wrong terminals")
        for typed in ("proved", ""):
            person.types(typed)
            assert not task(person).startswith("Test:")


def test_the_number_on_the_meter_decides_where_a_step_reads_one(data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, "Discharge and meter")
        assert "- STOP\n" not in person.types("140 V")  # what it held before it was bled
        assert "- STOP" in person.types("140 V")


def test_a_drives_wait_is_waited_for_or_metered(data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, "Wait for the drive")
        assert "min of the wait are still to come" in " ".join(person.types("discharged").split())
        clock.pass_minutes(3)
        assert "still to come" in " ".join(person.types("discharged").split())
        clock.pass_minutes(3)
        person.types("discharged")
        assert "still to come" not in " ".join(person.last.split())


def test_enter_is_a_technician_without_licence_and_is_asked_at_every_start(
    data: Path, clock: Clock
) -> None:
    with begin(data, clock, who="") as person:
        assert "beyond you" in " ".join(person.types(DEAD_WORK).split())
    with Person(data, clock=clock) as person:
        person.types("y", ALL)
        person.types(DEAD_WORK)
        assert "beyond you" not in person.last
    with Person(data, clock=clock) as person:
        person.types("y", "")
        lead = [person.types("s") for _ in range(3)]
        assert not any("Step: Prove the meter" in screen for screen in lead)


def test_an_unknown_supply_counts_as_480_volts_and_is_asked_before_it_matters(
    data: Path, clock: Clock
) -> None:
    with begin(data, clock) as person:
        person.types("do line-volts-idle")
        while "Which line voltage" not in person.last:
            assert "second person" not in task(person) and "Open the panel" not in task(person)
            person.types(careful(person))
        person.types("2")
        lead_to(person, "Open the panel with the power on")
        assert "A second person in sight" not in person.said
