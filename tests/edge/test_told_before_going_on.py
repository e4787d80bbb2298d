"""What is told as a visit is gone on with is asked about, and what has gone is not said to count.

29 CFR 1910.333(b) and NFPA 70E 120.5, from memory: who goes on makes sure of the lock and the test.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import ALL, DEAD_WORK, HANDS_IN, begin, lead_to


def at_a_restart(data: Path, clock: Clock) -> Person:
    with begin(data, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, HANDS_IN)
    clock.pass_minutes(1)
    return Person(data, clock=clock)


@pytest.mark.parametrize("before", [(), ("y",)])
def test_it_is_asked_about_before_a_visit_goes_on(
    before: tuple[str, ...], data: Path, clock: Clock
) -> None:
    """Regression: at y or n and at who is asking it was refused, and all was said to count."""
    with at_a_restart(data, clock) as person:
        person.types(*before, "leads are still off the capacitor")
        assert "does it all still stand" in " ".join(person.last.split())
        person.types("n", *(() if "danger" not in person.last else ("n",)))
        person.types(*(() if before else ("y",)), ALL)
        said = " ".join(person.last.split())
        assert "You were not away for long: what was done and proved still counts." not in said
        assert "Told as gone, and asked again" in said and "locked out" in said


def test_what_is_told_as_gone_is_not_said_to_count(data: Path, clock: Clock) -> None:
    """Regression: told at the first question, it was void, and the next screen said it counted."""
    with at_a_restart(data, clock) as person:
        person.types("never checked dead, I just assumed", "y", ALL)
        said = " ".join(person.last.split())
        assert "what was done and proved still counts" not in said
        assert "Told as gone, and asked again: " in said and "dead" in said
