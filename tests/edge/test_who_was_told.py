"""Handing a STOP over: short words for who was told, the time with its day, and whom it is for."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

import pytest

from tests.edge.person import Clock, Person

TWO, AFTERNOON = (datetime.fromisoformat(f"2026-11-26T{at}:00+00:00") for at in ("14:00", "15:20"))


@pytest.fixture
def person(tmp_path: Path) -> Person:
    """Somebody who called a danger at two, and hands it over at twenty past three."""
    clock = Clock(tmp_path)
    clock.set(TWO)
    person = Person(tmp_path / "data", clock=clock)
    person.types("RTU-7", "danger gas")
    clock.set(AFTERNOON)
    person.types("over")
    assert "Who was told" in person.last, person.said
    return person


@pytest.mark.parametrize(
    "typed", ["technician, just now", "left a note for the supervisor, just now"]
)
def test_oneself_and_whoever_did_not_answer_were_not_told(typed: str, person: Person) -> None:
    """Regression: the next question was when, or whom else to tell, and then it was closed."""
    with person:
        person.types(typed)
        assert "It is for" not in person.last and "closed" not in person.last
        assert "Who was told" in person.last


@pytest.mark.parametrize(
    "typed", ["told gas co just now", "gas co just now", "the gas co, 2:10 pm", "gas company 3:10"]
)
def test_the_gas_company_may_be_called_as_people_call_it(typed: str, person: Person) -> None:
    """Regression: all of these were refused but the last."""
    with person:
        person.types(typed)
        assert "The visit is closed as stopped." in person.last, person.last
        assert " today." in person.last


def test_a_bare_hour_is_the_last_that_has_been_and_is_said_with_its_day(person: Person) -> None:
    with person:
        assert "Taken as: 3:10 pm today." in person.types("gas utility, 3:10")


def test_the_boss_alone_does_not_close_a_stop_that_is_for_the_gas_utility(
    person: Person, tmp_path: Path
) -> None:
    with person:
        said = " ".join(person.types("boss 3:10").split())
        assert "It is for: gas utility" in said and "Tell them too" in said
        assert "closed" not in said
        said = " ".join(person.types("").split())
        assert "Tell them before you leave" in said and "closed as stopped" in said
    kept = (tmp_path / "data" / "visits" / "2026-11-26-1.journal").read_text("utf-8")
    assert "not told yet: gas utility" in kept


def test_both_who_were_told_are_kept(person: Person, tmp_path: Path) -> None:
    with person:
        person.types("boss 3:10", "gas co 3:15")
        assert "closed as stopped" in person.last
    kept = (tmp_path / "data" / "visits" / "2026-11-26-1.journal").read_text("utf-8")
    assert "boss 3:10; gas co 3:15" in kept


@pytest.mark.parametrize(
    "typed", ["called 911 at 2:40 pm", "911 at 2:40 pm", "ambulance called just now"]
)
def test_help_that_was_called_is_the_answer_and_no_new_danger(typed: str, person: Person) -> None:
    """Regression: it was another STOP, and so was every word after it."""
    with person:
        said = " ".join(person.types(typed).split())
        assert "- STOP" not in said and "What is wrong?" not in said
        assert "closed as stopped" in said or "It is for" in said


def test_911_is_the_fire_service_and_medical_help(person: Person) -> None:
    with person:
        said = person.types("911 at 2:40 pm")
        assert "Tell them too" not in said and "closed as stopped" in said


@pytest.mark.parametrize("typed", ["called 911, mate is on the floor", "need an ambulance",
                                   "mayday", "call 911"])  # fmt: skip
def test_a_danger_beside_the_help_is_still_heard(typed: str, person: Person) -> None:
    with person:
        assert "STOP" in person.types(typed)


@pytest.mark.parametrize(
    "typed", ["the gas company", "called the gas co", "gas utility by phone", "911"]
)
def test_without_a_time_it_is_asked_for_the_time_alone(
    typed: str, person: Person, tmp_path: Path
) -> None:
    """Regression: somebody told at no time was somebody told."""
    with person:
        assert "When were they told?" in person.types(typed)
        assert "Give the time" in " ".join(person.types("no idea").split())
        said = " ".join(person.types("1510").split())
        assert "closed as stopped" in said
    kept = (tmp_path / "data" / "visits" / "2026-11-26-1.journal").read_text("utf-8")
    assert f"{typed}, 1510" in kept


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("the gas company, tomorrow", "still to come"),
        ("gas company tomorrow 8:00", "still to come"),
        ("I will tell the gas company", "still to come"),
        ("the gas company in ten minutes", "still to come"),
        ("gas company 15:21", "still to come"),
        ("gas company 13:44", "before the STOP of 2026-11-26 14:00"),
        ("gas company, yesterday 15:00", "before the STOP"),
    ],
)
def test_who_will_be_told_or_was_told_of_no_stop_is_nobody_told(
    typed: str, why: str, person: Person
) -> None:
    """Regression: "the supervisor, tomorrow" closed the visit."""
    with person:
        said = " ".join(person.types(typed).split())
        assert why in said and "closed" not in said and "Who was told" in said


def test_help_that_was_called_before_anything_was_typed_was_told(person: Person) -> None:
    with person:
        assert "closed as stopped" in person.types("gas company and 911, 13:50")


def test_u_takes_back_what_led_to_the_question_and_no_danger(person: Person) -> None:
    with person:
        person.types("the gas company")
        assert "When were they told?" in person.last
        assert "Who was told, and when?" in person.types("u")
        assert "over, or q." in person.types("u")
        assert "Undo never reaches past a STOP. over, or q." in person.types("u")
        person.types("over", "boss 3:10")
        assert "It is for: gas utility" in person.last
        assert "Who was told, and when?" in person.types("u")
        assert "closed as stopped" in person.types("gas company, just now")
