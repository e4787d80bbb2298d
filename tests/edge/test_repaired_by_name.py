"""A repair that somebody tells of before its cause is named is told, proved and closed as any."""

from __future__ import annotations

from pathlib import Path

from tests.edge.person import Clock, Person
from tests.edge.visits import DEAD_WORK, begin, careful, events_of, lead_to, task, to_a_task

STEP = "Stop the unit by its controls"
REPAIRED = '"event": "repaired"'
STILL = "Is the complaint still there?"


def proofs_read(person: Person) -> None:
    """Every proof that is asked for, as not read, and the steps that lead there."""
    for _ in range(40):
        if STILL in person.last:
            return
        person.types("" if "What did you read?" in person.last else careful(person))
    raise AssertionError(person.said[-3000:])


def test_words_of_several_causes_are_asked_about_and_proved(tmp_path: Path, clock: Clock) -> None:
    """Regression: the first of them was recorded without a word, and nothing was proved."""
    with begin(tmp_path, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, STEP)
        assert "Which of these?" in person.types("repaired condenser fan motor")
        assert REPAIRED not in events_of(tmp_path)
        said = person.types("1")
        assert "Repaired: " in said
        while "What did you read?" not in person.last:  # what judges it stands on the plate
            person.types("")
        proofs_read(person)
        person.types("y")
        assert events_of(tmp_path).count(REPAIRED) == 2
        to_a_task(person)  # facts of the unit that it wants come first
        assert task(person)


def test_none_of_them_leaves_the_visit_as_it_was(tmp_path: Path, clock: Clock) -> None:
    with begin(tmp_path, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, STEP)
        person.types("repaired condenser fan motor")
        person.types("none")
        assert REPAIRED not in events_of(tmp_path)
        assert STEP in task(person)


def test_what_is_taken_back_at_its_first_proof_is_no_repair(tmp_path: Path, clock: Clock) -> None:
    with begin(tmp_path, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, STEP)
        person.types("repaired 1")
        assert "no repair is kept" in person.types("u")
        assert events_of(tmp_path).count(REPAIRED) == 1
        assert '"event": "undo"' in events_of(tmp_path)
