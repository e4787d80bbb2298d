"""`do TEST` where there are several places is a question of its own.

Regression: "Say where" was none, and the number typed at it was kept as the outcome of the test
that stood open before.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import begin, events_of, task

WHERE = "do capacitance-out-of-circuit"


@pytest.fixture
def person(tmp_path: Path) -> Person:
    return begin(tmp_path, Clock(tmp_path))


def test_a_number_at_the_question_is_the_place_and_no_answer(
    person: Person, tmp_path: Path
) -> None:
    before = events_of(tmp_path).count('"event": "answer"')
    with person:
        assert "Where?" in person.types(WHERE)
        person.types("2")
    kept = events_of(tmp_path)
    assert kept.count('"event": "answer"') == before
    assert '"chosen": true' in kept and "capacitor condenser fan 1" in kept


def test_what_is_no_place_is_asked_again_and_enter_takes_none(
    person: Person, tmp_path: Path
) -> None:
    with person:
        person.types(WHERE)
        assert "Its number" in person.types("9")
        assert "None is taken" in person.types("")
        assert "Where?" in person.types(WHERE)
        assert "STOP" in person.types("i smell gas")
    assert '"chosen": true' not in events_of(tmp_path)


@pytest.mark.parametrize("typed", ["u", "undo", "none of these", "none", "n", ""])
def test_u_and_none_of_these_go_back_to_what_was_asked(
    typed: str, person: Person, tmp_path: Path
) -> None:
    """Regression: u was refused at "Which of these?"."""
    with person:
        before = task(person)
        assert "Which of these?" in person.types("do capacitor")
        assert "None is taken" in person.types(typed)
        assert task(person) == before
    assert '"event": "undo"' not in events_of(tmp_path)


def test_words_of_one_of_them_are_enough(person: Person, tmp_path: Path) -> None:
    with person:
        assert "Which of these?" in person.types("do capacitance")
        assert "Its number" in person.types("capacitance")
        person.types("leads lifted, compressor 1")
    assert '"test": "capacitance-out-of-circuit"' in events_of(tmp_path)
    assert '"at": "capacitor compressor 1"' in events_of(tmp_path)
