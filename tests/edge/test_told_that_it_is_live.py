"""Who says with the hands inside that the power is back is told first to take them out.

Lock and proof: 29 CFR 1910.147(f)(3), NFPA 70E 120.5, from memory.
"""

from __future__ import annotations

import json
from pathlib import Path

from tests.edge.person import PAGE, Clock, Person
from tests.edge.visits import ALL, DEAD_WORK, HANDS_IN, begin, lead_to

LIVE = "Hands out: it counts as live."


def journalled(data: Path) -> list[dict[str, object]]:
    (journal,) = (data / "visits").glob("*.journal")
    return [json.loads(line)["event"] for line in journal.read_text("utf-8").splitlines()]


def test_hands_out_comes_first_and_the_reading_waits(data: Path, clock: Clock) -> None:
    """Regression: the test stayed open, took the next reading, and nothing was in the journal."""
    with begin(data, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, HANDS_IN)
        person.types("power is back on")
        assert person.last.index(LIVE) < person.last.index("Step: ")
        assert HANDS_IN not in person.last
        person.kills_it()
    (told,) = [event for event in journalled(data) if event["event"] == "state-gone"]
    assert told["words"] == "power is back on" and "lockout" in told["steps"]  # type: ignore[operator]
    with Person(data, clock=clock) as person:
        person.types("y", ALL)
        assert HANDS_IN not in person.said
        lead_to(person, HANDS_IN)
        assert "Step: Switch off, lock, tag and try" in person.said


def test_it_is_heard_between_pages(data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, HANDS_IN)
        person.types("q")
    with Person(data, clock=clock, columns=40, lines=20) as person:
        person.types("y", ALL)
        lead_to(person, HANDS_IN)
        person.reads = False
        person.types("?")
        assert person.last.endswith(PAGE), person.last
        person.types("my lock is off")
        assert LIVE in person.last
