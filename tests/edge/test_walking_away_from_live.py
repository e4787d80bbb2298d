"""A cabinet open and live at 480 V is locked out before work goes on elsewhere, at a terminal."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock
from tests.edge.visits import begin, lead_to, task

VOLTS = "Test: Line volts at the unit"


@pytest.mark.parametrize(
    ("read", "elsewhere"),
    [("482/480/483", "do thermostat-settings"), ("482/480/483", "do space-temperature")],
)
def test_what_is_in_the_rooms_waits_for_the_lock(read: str, elsewhere: str, tmp_path: Path) -> None:
    """Regression: after a live reading the next test was at the thermostat, the panel open."""
    with begin(tmp_path, Clock(tmp_path)) as person:
        person.types("do line-volts-idle")
        lead_to(person, VOLTS)
        person.types(read)
        while "(y/n)" in person.last[-40:]:
            person.types("y")
        person.types(elsewhere)
        assert "Step: Switch off, lock, tag and try" in task(person) or "Stop the unit" in task(
            person
        ), person.last
        assert "Test: " not in task(person)


def test_no_volts_read_live_is_told_to_be_no_proof_of_dead(tmp_path: Path) -> None:
    """Regression: 0/0/0 on a unit that was switched on was ranked without a word."""
    with begin(tmp_path, Clock(tmp_path)) as person:
        person.types("do line-volts-idle")
        lead_to(person, VOLTS)
        said = " ".join(person.types("0/0/0").split())
        assert "proves nothing dead: it counts as live" in said
        assert "Prove the meter again now" in said
