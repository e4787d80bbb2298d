"""What is said as the lock comes off, before anything was called for."""

from __future__ import annotations

from pathlib import Path

from tests.edge.person import Clock
from tests.edge.visits import DEAD_WORK, HANDS_IN, begin, lead_to

LOCK_OFF, WATCH = "Take your own lock off", "Call for the unit and watch it start"


def test_runs_is_asked_about_and_the_start_is_watched(tmp_path: Path, clock: Clock) -> None:
    """Regression: it was taken as starts at once, and the visit closed with no start watched."""
    with begin(tmp_path, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, HANDS_IN)
        person.types("clean")
        person.types("done")
        lead_to(person, LOCK_OFF)
        person.types("runs")
        assert "Taken as" not in person.last
        assert "starts at once" in person.last and WATCH not in person.last, person.last
        person.types("switched on")
        lead_to(person, WATCH)


def test_whoever_may_hang_a_lock_takes_it_off_again(tmp_path: Path, clock: Clock) -> None:
    """Regression: a technician locked out for the filters, and was told to hand the lock over.

    29 CFR 1910.147(e)(3): a lock is removed by the employee who applied it.
    """
    with begin(tmp_path, clock, who="") as person:
        person.types("do air-filters")
        lead_to(person, "Test: Filters")
        person.types("clean", "done")
        lead_to(person, LOCK_OFF)
        assert "nobody else's" in " ".join(person.last.split())
        person.types("switched on")
        assert "is beyond you" not in person.last
        lead_to(person, "Put the fire panel back")
        assert "The visit is closed" in person.types("in service")
