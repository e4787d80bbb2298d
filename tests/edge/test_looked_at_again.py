"""A look whose STOP is for one step is taken again once it is said what was put right."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import begin, events_of, lead_to, task

DEVICES = "Is every safety device in place"
DONE = "What it came from was repaired or replaced"


@pytest.fixture
def data(tmp_path: Path) -> Path:
    return tmp_path / "data"


def panel_missing(data: Path, tmp_path: Path) -> Person:
    person = begin(data, Clock(tmp_path))
    person.types("do walk-round")
    lead_to(person, "Test: Walk round")
    assert "STOP THIS STEP" in person.types("panel missing")
    return person


def test_what_was_done_is_said_before_the_look_and_stands_in_the_report(
    data: Path, tmp_path: Path
) -> None:
    """Regression: `do walk` and "clean" took a missing panel away with nothing done."""
    with panel_missing(data, tmp_path) as person:
        assert "What was done to make it safe?" in person.types("do walk-round")
        assert "Give the number of what was done" in " ".join(person.types("fixed it").split())
        assert DEVICES in " ".join(person.types(DONE).split())
        person.types("y")
        lead_to(person, "Test: Walk round")
        assert "STOP THIS STEP" not in person.types("clean")
    assert f"made safe here, cover missing: {DONE}; asked: {DEVICES}" in events_of(data)


@pytest.mark.parametrize("typed", [("u",), (DONE, "n"), (DONE, "u")])
def test_where_nothing_was_done_the_look_is_not_taken(
    typed: tuple[str, ...], data: Path, tmp_path: Path
) -> None:
    with panel_missing(data, tmp_path) as person:
        before = events_of(data).count('"chosen": true')
        person.types("do walk-round", *typed)
        assert "Walk round" not in task(person)
        assert events_of(data).count('"chosen": true') == before
