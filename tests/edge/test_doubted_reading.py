"""A reading that hardly any unit shows is asked about once, and then counts as it stands."""

from __future__ import annotations

from pathlib import Path

from tests.edge.person import Clock, Person
from tests.edge.visits import begin, events_of, lead_to, task


def at_the_head(data: Path, clock: Clock) -> Person:
    """A visit at its head pressure, with no refrigerant known."""
    person = begin(data, clock)
    person.types("do head-pressure")
    lead_to(person, "Test: Head pressure")
    return person


def test_a_slip_is_not_kept_and_what_is_meant_stops(tmp_path: Path) -> None:
    """Regression: 690 psig of head, typed with no refrigerant known, was taken without a word."""
    data, clock = tmp_path / "data", Clock(tmp_path)
    with at_the_head(data, clock) as person:
        said = person.types("690 psig")
        assert "690 psig is odd" in said and "Is it meant? (y/n)" in said
        assert "y or n." in person.types("hm")
        assert "Not kept" in person.types("n")
        assert '"text": "690' not in events_of(data)
        person.types("690")
        said = person.types("y")
        assert "690 +/-8.1 psig: high" in said and "DANGER - STOP" in said
        assert '"text": "690"' in events_of(data)


def test_a_long_silence_at_the_question_is_a_silence(tmp_path: Path) -> None:
    """What others could have changed while it stood open is not renewed by its answer."""
    data, clock = tmp_path / "data", Clock(tmp_path)
    with at_the_head(data, clock) as person:
        person.types("690 psig")
        clock.pass_minutes(90)
        said = person.types("y")
        assert "long silence" in " ".join(said.split())
        assert '"text": "690 psig"' not in events_of(data)


def test_what_is_asked_once_more_is_asked_by_the_clock(tmp_path: Path) -> None:
    """A walk found it: after the y or n the test was shown again on a roof of half an hour ago."""
    data, clock = tmp_path / "data", Clock(tmp_path)
    with at_the_head(data, clock) as person:
        person.types("690 psig")
        clock.pass_minutes(90)
        person.types("n")
        assert "Test: Head pressure" not in person.last and task(person)


def test_a_list_that_stood_open_for_long_is_a_silence(tmp_path: Path) -> None:
    data, clock = tmp_path / "data", Clock(tmp_path)
    with at_the_head(data, clock) as person:
        person.types("do capacitor")
        assert "Which of these?" in person.last
        clock.pass_minutes(90)
        person.types("n")
        assert "Test: Head pressure" not in person.last and task(person)


def test_one_question_in_between_asked_twice_hides_no_silence(tmp_path: Path) -> None:
    """A walk found it: the step behind it was shown on a roof of an hour ago, the last n being
    six seconds old."""
    data, clock = tmp_path / "data", Clock(tmp_path)
    with begin(data, clock) as person:
        person.types("do air-filters")
        lead_to(person, "Step: Switch off, lock, tag and try")
        assert "in danger now?" in person.types("the fitter waves at us")
        clock.pass_minutes(90)
        assert "y or n." in person.types("1")
        said = person.types("n")
        assert "lock, tag and try" not in said and "Some minutes have passed" in said
        assert "long silence" in " ".join(person.types("locked").split())
        assert "lock, tag and try" not in task(person)
