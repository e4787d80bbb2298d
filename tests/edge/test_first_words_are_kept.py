"""What is typed before it is known who asks is on the disk as soon as it is typed."""

from __future__ import annotations

from pathlib import Path

from tests.edge.person import Clock, Person
from tests.edge.started import started
from tests.edge.visits import DEAD_WORK, begin, careful, events_of, lead_to, to_a_task


def killed_at(person: Person, wanted: str, *typed: str) -> None:
    person.types(*typed)
    assert wanted in person.last
    person.kills_it()


def test_a_visit_killed_at_who_is_asking_keeps_its_unit_and_the_words(
    data: Path, tmp_path: Path
) -> None:
    """Regression: it went on without a name, so that no STOP of its unit met it."""
    killed_at(Person(data, clock=Clock(tmp_path)), "Who is asking", "RTU-7", "it blows cold", "1")
    assert "it blows cold" in started(data, "visits").stdout.decode()
    with Person(data, clock=Clock(tmp_path)) as person:
        said = " ".join(person.types("y").split())
        assert 'the caller\'s words were: "it blows cold"' in said and "caller say" in said
        person.types("it blows cold", "1", "3")
        to_a_task(person)
        person.types("q")
    assert "Visit 2026-11-26-1: RTU-7" in started(data, "report", "2026-11-26-1").stdout.decode()


def interrupted(person: Person) -> str:
    """The line goes, as by Ctrl-C; returns what is said to it."""
    return person.pastes("\x04")


def test_enter_takes_the_words_that_were_typed_before_it_broke_off(
    data: Path, tmp_path: Path
) -> None:
    """Regression: Enter made a routine round of it, and the caller's words were gone."""
    killed_at(Person(data, clock=Clock(tmp_path)), "Who is asking", "RTU-7", "it blows cold", "1")
    with Person(data, clock=Clock(tmp_path)) as person:
        assert "Enter for the words of before" in " ".join(person.types("y").split())
        person.types("", "1", "3")
        to_a_task(person)
        assert "visit is kept" in interrupted(person)
    last = [line for line in events_of(data).splitlines() if '"event": "start"' in line][-1]
    assert '"words": "it blows cold"' in last and '"routine": true' not in last


def test_notes_from_the_first_prompt_on_are_kept_though_nothing_else_was_typed(
    data: Path, tmp_path: Path
) -> None:
    """Regression: a note was refused before the first test, and Ctrl-C left nothing."""
    with Person(data, clock=Clock(tmp_path)) as person:
        assert "Noted." in person.types("NOTE the hatch sticks")
        assert "visit is kept" in interrupted(person)
    assert "the hatch sticks" in events_of(data)


def test_a_name_is_kept_though_it_broke_off_at_the_question_behind_it(
    data: Path, tmp_path: Path
) -> None:
    clock = Clock(tmp_path)
    with Person(data, clock=clock) as person:
        person.types("RTU-9", "gas-smell", "3", "q")
    with Person(data, clock=clock) as person:
        assert "one of them?" in person.types("n", "RTU-7")
        assert "visit is kept" in interrupted(person)
    with Person(data, clock=clock) as person:
        assert "RTU-7" in events_of(data, "2026-11-26-2")
        said = person.types("y")
        assert "one of them?" in said and "caller say" in person.types("n")


def test_a_danger_after_such_a_start_is_reported_by_a_technician(
    data: Path, tmp_path: Path
) -> None:
    killed_at(Person(data, clock=Clock(tmp_path)), "caller say", "RTU-7")
    with Person(data, clock=Clock(tmp_path)) as person:
        assert "caller say" in person.types("y")
        assert "DANGER - STOP" in person.types("danger: i smell gas")
    assert '"profiles": ["technician"]' in events_of(data) and "RTU-7" in events_of(data)


def test_what_an_open_visit_left_on_its_unit_is_said_before_another_begins(
    data: Path, tmp_path: Path
) -> None:
    """Regression: n was silent about the lock, the panels and the gas of the visit left open."""
    clock = Clock(tmp_path)
    with begin(data, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, "Test for dead")
        assert careful(person) == "dead"
        person.types("q")
    with Person(data, clock=clock) as person:
        said = " ".join(person.types("n").split())
        left = said.partition("Visit 2026-11-26-1, RTU-7, stays open. Left there: ")[2]
        assert "panels off" in left and "locked out" in left
        assert "A visit to a rooftop unit" in left


def test_nothing_is_said_where_nothing_was_left(data: Path, tmp_path: Path) -> None:
    clock = Clock(tmp_path)
    with begin(data, clock) as person:
        person.types("q")
    with Person(data, clock=clock) as person:
        assert "Left there" not in person.types("n")
