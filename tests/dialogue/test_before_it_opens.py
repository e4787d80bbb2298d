"""What judges a live reading is asked while the panel is on; no bare hand goes in at 480 V."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from tests.cli.player import Player, play
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.safety.needs import OPEN_LIVE

UNIT: dict[str, Any] = {
    "heat": "gas",
    "refrigerant": "R-410A",
    "refrigerant-class": "a1",
    "circuits": 1,
    "condenser-fans": 1,
    "supply-phase": "three",
    "compressor-phase": "three",
    "duct-smoke-detector": "not-fitted",
    "variable-speed-drive": "not-fitted",
    "blower-motor": "three-phase",
}


def said_before(
    shipped: Knowledge, folder: Path, test: str, complaint: str, volts: str
) -> tuple[str, str]:
    """What is said before the panel comes off, and after it, up to the test."""
    player = Player(shipped, {}, says=[f"do {test}"])
    unit = {**UNIT, "line-volts-class": volts}
    start = {"complaint": complaint, "unit": unit, "profiles": ["electrical", "gas", "refrigerant"]}
    play(shipped, folder, player, start)
    step = "panels-off" if test == "gas-manifold-pressure" else "panels-off-energised"
    before, opened, after = player.text.partition(f"Step: {shipped.tests[step].name}")
    assert opened, player.text
    return before, after.partition(f"Test: {shipped.tests[test].name}")[0]


@pytest.mark.parametrize("volts", ["208-to-240-volt", "480-volt"])
@pytest.mark.parametrize(
    ("test", "complaint", "asks"),
    [
        ("compressor-amps", "weak-cooling", "compressor rated load amps"),
        ("gas-manifold-pressure", "no-heat", "Natural gas or propane"),
    ],
)
def test_what_judges_a_live_reading_is_asked_while_the_panel_is_on(
    test: str, complaint: str, asks: str, volts: str, shipped: Knowledge, tmp_path: Path
) -> None:
    """Regression: the rated amps and the fuel were asked with the unit running open."""
    before, after = said_before(shipped, tmp_path, test, complaint, volts)
    assert asks in before and asks not in after


def by_hand() -> list[Test]:
    return [
        test
        for test in load_shipped().tests.values()
        if test.work_state in OPEN_LIVE and "hand" in test.instrument.split(", ")
    ]


@pytest.mark.parametrize("test", by_hand(), ids=lambda test: test.id)
def test_no_bare_hand_goes_into_a_live_unit_of_480_volts(test: Test) -> None:
    """Regression: behind the amps the lines were to be felt, the panel off and the unit running."""
    assert "480-volt" not in test.exists_when["line-volts-class"]
