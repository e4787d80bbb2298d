"""A repair that is told while the record has the unit running: the lock, and the door behind it."""

from __future__ import annotations

from pathlib import Path

from tests.edge.person import Clock
from tests.edge.visits import begin, careful, lead_to, task
from troubleshoot.safety.before_repair import LOCK_IS_OFF

SHUT = "Shut every door"


def test_the_lock_is_missed_and_the_door_is_asked_for(data: Path, clock: Clock) -> None:
    """Regression: neither stood in the list of what is not on record, nor on the way out."""
    with begin(data, clock, words="no-cooling") as person:
        person.types("do air-filters")
        lead_to(person, "Test: Filters")
        person.types("plugged", "do air-temperature-split")
        for _ in range(30):
            if "Call for the unit" in task(person):
                break
            person.types(careful(person) or "s")
        person.types("runs", "repaired filters-loaded")
        said = " ".join(person.said.split())
        assert f"Not on record before this repair: {LOCK_IS_OFF}" in said
        asked = []
        for _ in range(30):
            if not person.running:
                break
            if now := task(person):
                asked.append(now)
            person.types("n" if "complaint still there" in person.last else careful(person))
        assert any(SHUT in each or "Put the panels" in each for each in asked), asked
