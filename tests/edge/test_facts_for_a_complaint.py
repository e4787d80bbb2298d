"""What the unit is, typed where the caller's words are asked for, is kept and is no complaint."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import ALL, events_of, lead_to


@pytest.fixture
def person(tmp_path: Path) -> Person:
    person = Person(tmp_path, clock=Clock(tmp_path))
    person.types("RTU-7")
    return person


@pytest.mark.parametrize(
    ("typed", "kept"),
    [
        ("480/3/60 gas", "line volts class: 480 volt; supply phase: three; heat: gas"),
        ("gas 480 volt", "heat: gas; line volts class: 480 volt"),
        ("R-410A", "refrigerant: R-410A"), ("three phase", "supply phase: three"),
        ("txv", "metering: TXV"), ("208/1", "supply phase: single"),
    ],
)  # fmt: skip
def test_facts_are_kept_and_the_complaint_is_still_asked(
    typed: str, kept: str, person: Person, tmp_path: Path
) -> None:
    """Regression: "480/3/60 gas" was heard as a smell of gas."""
    with person:
        said = " ".join(person.types(typed).split())
        assert f"{kept}." in said and "What the caller says is still asked." in said
        assert "Which is nearest" not in said
        assert '"event": "fact"' in events_of(tmp_path) and '"call"' not in events_of(tmp_path)
        assert "Taken as: It does not cool" in person.types("not cooling")


@pytest.mark.parametrize("typed", ["gas", "no heat", "480 no heat", "gas heat", "gas smell 480"])
def test_what_may_be_a_complaint_is_one(typed: str, person: Person, tmp_path: Path) -> None:
    with person:
        person.types(typed)
    assert '"event": "fact"' not in events_of(tmp_path)


def test_they_hold_for_the_visit_and_are_not_asked_again(person: Person) -> None:
    """Nor what follows from them: a compressor at 480 V is three-phase."""
    with person:
        person.types("480/3/60 gas", "not cooling", ALL)
        person.types("do compressor-amps")
        lead_to(person, "Test: Compressor amps")
        for part in ("supply", "compressor"):
            assert f"Single-phase or three-phase {part}" not in person.said


def test_u_takes_them_back_before_the_name(person: Person, tmp_path: Path) -> None:
    with person:
        person.types("480/3/60 gas")
        assert "Taken back: line volts class: 480 volt." in person.types("u")
        assert '"event": "undo"' in events_of(tmp_path)
        assert "Which unit?" in person.types("u")


def test_they_outlive_a_visit_that_broke_off_before_it_was_begun(
    person: Person, tmp_path: Path
) -> None:
    with person:
        person.types("480/3/60 gas", "q")
    with Person(tmp_path, clock=Clock(tmp_path)) as again:
        again.types("", "not cooling")
        assert "Single-phase or three-phase supply" not in again.types("")
