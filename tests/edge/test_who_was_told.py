"""Handing a STOP over: short words for who was told, the time with its day, and whom it is for."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

import pytest

from tests.edge.person import Clock, Person

AFTERNOON = datetime.fromisoformat("2026-11-26T15:20:00+00:00")


@pytest.fixture
def person(tmp_path: Path) -> Person:
    clock = Clock(tmp_path)
    clock.set(AFTERNOON)
    person = Person(tmp_path / "data", clock=clock)
    person.types("RTU-7", "danger gas", "over")
    assert "Who was told" in person.last, person.said
    return person


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


@pytest.mark.parametrize("typed", ["called 911 at 2:40 pm", "911 at 2:40 pm", "ambulance called"])
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
