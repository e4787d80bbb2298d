"""At the first questions too, `u` goes back to the one before, or says why it cannot."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import events_of, to_a_task

NOTHING_YET = "Nothing has been answered yet"
UNIT, CALL, WHO, FACTS = "Which unit?", "caller say?", "Who is asking?", "What heat does it have?"


@pytest.fixture
def person(tmp_path: Path) -> Person:
    return Person(tmp_path / "data", clock=Clock(tmp_path))


def started(data: Path) -> str:
    return next(line for line in reversed(events_of(data).splitlines()) if '"start"' in line)


@pytest.mark.parametrize("word", ["u", "undo", "U"])
def test_every_first_question_can_be_gone_back_from(
    word: str, person: Person, tmp_path: Path
) -> None:
    """Regression: u was the name of a unit, and the words of a caller."""
    with person:
        assert NOTHING_YET in person.types(word)
        assert CALL in person.types("RTU-7")
        assert UNIT in person.types(word)
        assert CALL in person.types("RTU-8")
        assert "Which is nearest?" in person.types("no cool, clammy")
        assert CALL in person.types(word)
        assert WHO in person.types("no-cooling")
        assert CALL in person.types(word)
        assert WHO in person.types("no-heat")
        assert "A few facts from the nameplate" in person.types("8")
        assert WHO in person.types(word)
        person.types("3 4")
        person.types("q")
    last = started(tmp_path / "data")
    assert '"no-heat"' in last and '"RTU-8"' in last and '"electrical", "technician"' in last


def test_facts_are_taken_back_one_answer_at_a_time(person: Person, tmp_path: Path) -> None:
    with person:
        person.types("RTU-7", "no-heat")
        first = person.types("3")
        assert FACTS in first
        said = person.types("480/3/60")
        assert "Taken: line volts class: 480 volt; supply phase: three." in said
        assert "Taken back: line volts class: 480 volt" in person.types("u")
        said = person.types("r22")
        assert "Taken: refrigerant: R-22." in said and f"Still asked: {FACTS}" in said
        person.types("u")
        assert WHO in person.types("u")
        person.types("q")
    assert events_of(tmp_path / "data").count('"event": "undo"') == 2


def test_a_call_that_is_a_stop_is_not_taken_back(person: Person) -> None:
    with person:
        person.types("RTU-7")
        assert WHO in person.types("gas-smell")
        assert "is not taken back" in " ".join(person.types("u").split())
        person.types("3")
        to_a_task(person)
        assert "- STOP\n" in person.last


def test_a_unit_named_at_the_start_stays_named(tmp_path: Path) -> None:
    with Person(tmp_path / "data", "diagnose", "RTU-7", clock=Clock(tmp_path)) as person:
        assert CALL in person.last
        assert "named when this was started" in person.types("u")


def test_the_question_whether_to_go_on_can_be_gone_back_to(tmp_path: Path) -> None:
    clock = Clock(tmp_path)
    with Person(tmp_path / "data", clock=clock) as person:
        person.types("RTU-7", "no-cooling", "3", "q")
    with Person(tmp_path / "data", clock=clock) as person:
        assert NOTHING_YET in person.types("u")
        assert UNIT in person.types("n")
        assert "Go on with it?" in person.types("u")
        assert WHO in person.types("")
        assert NOTHING_YET in person.types("u")


def test_a_name_taken_back_for_that_of_a_stopped_unit_meets_its_stop(tmp_path: Path) -> None:
    clock = Clock(tmp_path)
    with Person(tmp_path / "data", clock=clock) as person:
        person.types("RTU-9", "gas-smell", "3", "q")
    with Person(tmp_path / "data", clock=clock) as person:
        assert "Is this one of them?" in person.types("n", "RTU-7")
        assert CALL in person.types("n")
        person.types("u")
        said = person.types("RTU-9")
        assert "STOP" in said and "Going on with visit 2026-11-26-1" in said
