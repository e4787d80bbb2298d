"""A disk that takes nothing more hides no danger: what stops or warns is said, then what failed."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import begin, lead_to

CANNOT = "cannot be kept"
NOT_ON_RECORD = "not on record"


@pytest.fixture(autouse=True)
def _nothing_else_is_written(monkeypatch: pytest.MonkeyPatch) -> None:
    """Python itself would leave half of what it compiles for the tests that come after."""
    monkeypatch.setenv("PYTHONDONTWRITEBYTECODE", "1")


def fill_the_disk(person: Person, data: Path, room: int = 0) -> None:
    """From now on the journal takes no more than `room` bytes beyond what it holds."""
    (journal,) = (data / "visits").glob("*.journal")
    most = journal.stat().st_size + room
    person.fills_the_disk(most)


def said_before_it_failed(person: Person, *typed: str) -> str:
    """All that is said of what is typed before the sentence that it cannot be kept."""
    person.types(*typed)
    assert not person.running and person.exit_code == 6, person.said
    before, _, after = " ".join(person.last.split()).partition(CANNOT)
    assert after, person.last
    return before


@pytest.mark.parametrize("call", ["i smell gas", "my partner got shocked and is down"])
def test_a_dangerous_call_is_a_stop_though_it_cannot_be_kept(
    data: Path, clock: Clock, call: str
) -> None:
    with Person(data, clock=clock) as person:
        person.types("RTU-3")
        fill_the_disk(person, data)
        said = said_before_it_failed(person, call)
        assert "- STOP" in said and "Hand over to:" in said and NOT_ON_RECORD in said


def test_a_call_of_which_only_the_words_can_be_kept_is_a_stop(data: Path, clock: Clock) -> None:
    with Person(data, clock=clock) as person:
        person.types("RTU-3")
        fill_the_disk(person, data, 150)
        said = said_before_it_failed(person, "i smell gas")
        assert "- STOP" in said and "Hand over to:" in said


@pytest.mark.parametrize(
    ("step", "typed"),
    [("Roof, go or no go", "lightning"), ("Walk round the unit", "gas odour")],
)
def test_a_danger_found_is_a_stop_though_it_cannot_be_kept(
    data: Path, clock: Clock, step: str, typed: str
) -> None:
    with begin(data, clock, unit="RTU-3") as person:
        person.types("do wiring-burn-marks")
        lead_to(person, step)
        fill_the_disk(person, data)
        said = said_before_it_failed(person, typed)
        assert "- STOP" in said and "Hand over to:" in said and NOT_ON_RECORD in said


@pytest.mark.parametrize(
    ("step", "typed"),
    [
        ("Prove the meter", "failed"),
        ("Test for dead", "208 V"),
        ("Discharge and meter", "swollen or hissing"),
    ],
)
def test_a_step_that_failed_warns_though_it_cannot_be_kept(
    data: Path, clock: Clock, step: str, typed: str
) -> None:
    with begin(data, clock, unit="RTU-3") as person:
        person.types("do wiring-burn-marks")
        lead_to(person, step)
        fill_the_disk(person, data)
        said = said_before_it_failed(person, typed)
        assert "STOP" in said and NOT_ON_RECORD in said


def test_a_danger_told_before_there_is_a_visit_is_a_stop_though_none_can_be_begun(
    data: Path, clock: Clock
) -> None:
    with Person(data, clock=clock) as person:
        person.fills_the_disk(0)
        said = said_before_it_failed(person, "my partner got shocked and is down")
        assert "- STOP" in said and "Hand over to:" in said and NOT_ON_RECORD in said


def test_a_note_that_tells_a_danger_is_a_stop_though_it_cannot_be_kept(
    data: Path, clock: Clock
) -> None:
    with begin(data, clock, unit="RTU-3") as person:
        fill_the_disk(person, data)
        said = said_before_it_failed(person, "note i smell gas")
        assert "- STOP" in said and NOT_ON_RECORD in said and "Noted." not in said


def test_a_stop_that_is_on_record_is_told_again_and_nothing_is_said_to_be_done(
    data: Path, clock: Clock
) -> None:
    with Person(data, clock=clock) as person:
        person.types("RTU-3", "i smell gas", "3", "", "over")
        fill_the_disk(person, data)
        said = said_before_it_failed(person, "the gas utility, by phone, just now")
        assert "- STOP" in said and NOT_ON_RECORD not in said and "is closed" not in said
    with Person(data, "visits", clock=clock) as person:
        assert "STOP over RTU-3" in person.said


def test_a_sound_answer_that_cannot_be_kept_brings_up_no_danger(data: Path, clock: Clock) -> None:
    with begin(data, clock, unit="RTU-3") as person:
        fill_the_disk(person, data)
        said = said_before_it_failed(person, "1")
        assert "STOP" not in said and "record" not in said
