"""One look that stops for two reasons: neither is passed by answering to the other."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import ALL, begin, lead_to

RESULT = (
    ALL,
    "electrician",
    "2",
    "y",
    "0 ppm",
    "y",
)
"""Who goes on, who made it safe, what was done and the reading: all but when."""


@pytest.fixture
def data(tmp_path: Path) -> Path:
    """A visit that stopped at a look which found gas odour and water, and was handed over."""
    folder = tmp_path / "data"
    clock = Clock(tmp_path)
    with begin(folder, clock) as person:
        person.types("do walk-round")
        lead_to(person, "Test: Walk round")
        person.types("gas odour, water in electrics")
        assert "- STOP" in person.last
        person.types("over", "the gas utility and a licensed electrician, just now")
        assert "closed as stopped" in person.said
    return folder


def test_a_reading_of_before_it_lifts_neither(data: Path, clock: Clock) -> None:
    """Of the STOP that was not told of nobody had kept the time, and any reading would do."""
    clock.pass_minutes(60)
    with Person(data, "reopen", "2026-11-26-1", clock=clock) as person:
        person.types(*RESULT, "2026-11-26 00:00")
        assert "Reopened" not in person.said
