"""A light that failed, then done: stopped, swept, and its heat left off at the control."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from tests.cli.player import Player, play
from troubleshoot.dialogue.closing import CONTROL_BACK, HEAT_LEFT_OFF
from troubleshoot.knowledge.model import Knowledge

UNIT: dict[str, Any] = {
    "heat": "gas",
    "fuel": "natural-gas",
    "refrigerant": "R-410A",
    "refrigerant-class": "a1",
    "line-volts-class": "208-to-240-volt",
    "duct-smoke-detector": "not-fitted",
}


@pytest.fixture
def closing(shipped: Knowledge, tmp_path: Path) -> str:
    """All that is said from the light that failed to the end of the visit, in one line."""
    shows: dict[str, str | list[str]] = {"ignition-trials": "locks out"}
    player = Player(
        shipped,
        shows,
        says=["do ignition-trials"],
        settled=["done"] * 3,
        then={"ignition-trials": ["done"]},
    )
    start = {"name": "RTU-15", "complaint": "no-heat", "unit": UNIT, "profiles": ["gas"]}
    play(shipped, tmp_path, player, start)
    return " ".join(player.text.partition("> locks out")[2].split())


def test_the_unit_is_swept_and_not_called(closing: str, shipped: Knowledge) -> None:
    """Regression: it was called with no sweep, for heat, against a cock that stays shut."""
    first = ("stop-by-controls", "gas-cock-shut", "purge-wait", "combustible-gas-sweep")
    names = [shipped.tests[step].name for step in first]
    places = [closing.index(f"Step: {name}") for name in names]
    assert places == sorted(places)
    assert f"Step: {shipped.tests['restart-and-watch'].name}" not in closing


def test_the_tag_and_the_last_words_say_that_the_heat_stays_off(closing: str) -> None:
    assert "Do not start the heat of RTU-15. It fails to light" in closing
    assert HEAT_LEFT_OFF in closing and CONTROL_BACK not in closing
    assert "back as it was" not in closing
