"""A STOP met at the test for dead goes when the meter was proved after `dead`, and not before.

What a meter says counts once it has been proved right after it (NFPA 70E 120.5).
"""

from __future__ import annotations

from pathlib import Path

from tests.edge.person import Clock, Person
from tests.edge.visits import DEAD_WORK, HANDS_IN, begin, lead_to, task


def found_dead_after_all(data: Path, clock: Clock) -> Person:
    """A visit whose unit was live, was locked out once more, and now reads dead."""
    person = begin(data, clock)
    person.types(DEAD_WORK)
    lead_to(person, "Test for dead")
    assert "- STOP" in person.types("480 V")
    person.types("again", "1")
    lead_to(person, "Test for dead")
    person.types("dead")
    return person


def test_the_proof_of_the_meter_comes_next(data: Path, clock: Clock) -> None:
    """Regression: the STOP was gone at `dead`, and an ordinary test came next."""
    with found_dead_after_all(data, clock) as person:
        assert task(person).startswith("Step: Prove the meter")
        person.types("proved")
        assert "- STOP" not in person.last
        person.types("q")
    with Person(data, clock=clock) as person:
        person.types("n", "RTU-7")
        assert "- STOP" not in person.last


def test_who_leaves_before_it_leaves_the_stop(data: Path, clock: Clock) -> None:
    with found_dead_after_all(data, clock) as person:
        person.types("q")
    with Person(data, clock=clock) as person:
        person.types("n", "RTU-7")
        assert "- STOP" in person.last and "caller say" not in person.last


def test_a_proof_that_fails_lifts_nothing(data: Path, clock: Clock) -> None:
    with found_dead_after_all(data, clock) as person:
        assert "- STOP" in person.types("failed")
        person.types("q")


def test_the_last_test_for_dead_brings_no_stop_back(data: Path, clock: Clock) -> None:
    with found_dead_after_all(data, clock) as person:
        person.types("proved", DEAD_WORK)
        lead_to(person, HANDS_IN)
        assert person.said.count("DANGER - STOP") == 1


def test_dead_that_is_declared_invalid_brings_the_stop_back(data: Path, clock: Clock) -> None:
    """Found by the long walk: the test was asked once more as if nothing stood."""
    with found_dead_after_all(data, clock) as person:
        person.types("invalid the leads were on the wrong terminals")
        assert "- STOP" in person.last and not task(person)
        person.types("q")
