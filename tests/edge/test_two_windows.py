"""Two windows on one unit: each knows of the other, and a STOP that is met in one meets both."""

from __future__ import annotations

from pathlib import Path

from tests.edge.person import Clock, Person
from tests.edge.visits import begin, events_of, task

ELSEWHERE = "is open in another window"


def test_a_second_visit_to_a_unit_is_told_of_the_first_and_meets_its_stop(
    data: Path, clock: Clock
) -> None:
    """Regression: nothing was said, and the second window asked its next tests."""
    with begin(data, clock, unit="RTU-3") as first, Person(data, clock=clock) as second:
        assert f"Visit 2026-11-26-1 to this unit {ELSEWHERE}" in " ".join(
            second.types("n", "rtu 03").split()
        )
        second.types("no-cooling", "3")
        while not task(second):
            second.types("")
        assert "- STOP" in first.types("danger gas smell")
        said = " ".join(second.types("1").split())
        assert "A STOP was met over this unit in another window, in visit 2026-11-26-1" in said
        assert "DANGER - STOP" in said and "gas" in said
        assert not task(second) and second.exit_code == 4
        first.types("q")
    assert '"answer"' in events_of(data, "2026-11-26-2")
    with Person(data, "diagnose", "RTU-3", clock=clock) as person:
        person.types("n")
        assert "DANGER - STOP" in person.said


def test_a_stop_over_another_unit_meanwhile_meets_nobody_here(data: Path, clock: Clock) -> None:
    with begin(data, clock, unit="RTU-3") as first, Person(data, clock=clock) as second:
        assert ELSEWHERE not in second.types("n", "RTU-4")
        second.types("no-cooling", "3")
        while not task(second):
            second.types("")
        first.types("danger gas smell")
        second.types("1")
        assert "in another window" not in second.last and second.running


def test_a_visit_that_nobody_has_open_is_not_elsewhere(data: Path, clock: Clock) -> None:
    with begin(data, clock, unit="RTU-3") as first:
        first.types("q")
    with Person(data, clock=clock) as second:
        assert ELSEWHERE not in second.types("n", "RTU-3")
