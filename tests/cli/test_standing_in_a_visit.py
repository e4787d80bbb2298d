"""What stands in a visit: what it forbids is not taken, and the unit is left as it asks."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from tests.cli.player import Player, play
from troubleshoot.knowledge.model import Knowledge

UNIT: dict[str, Any] = {
    "refrigerant": "R-410A", "metering": "txv", "circuits": 2, "supply-phase": "three",
    "compressor-phase": "three", "line-volts-class": "208-to-240-volt", "refrigerant-class": "a1",
    "duct-smoke-detector": "not-fitted", "blower-motor": "three-phase",
    "variable-speed-drive": "not-fitted",
}  # fmt: skip


def flat(text: str) -> str:
    return " ".join(text.split())


def test_a_chosen_test_that_the_danger_forbids_is_refused_and_its_twin_is_not(
    shipped: Knowledge, tmp_path: Path
) -> None:
    start = {"complaint": "no-cooling", "unit": UNIT}
    commands = ("do compressor-amps at compressor 1", "tests", "do compressor-amps at compressor 2")
    then = {"safety-string-walk": ["; ".join(commands)]}
    player = Player(shipped, {"safety-string-walk": "low pressure open"},
                    ["do safety-string-walk at circuit 1"], then=then)  # fmt: skip
    play(shipped, tmp_path, player, start)
    text = flat(player.text)
    assert "WARNING, circuit 1 - STOP THIS STEP" in text
    refused = text.index("Not now: low-pressure switch open stands in the way.")
    listed = text[text.index("> tests", refused) : text.index("do N takes one of them", refused)]
    for test in shipped.tests.values():
        if test.work_state in ("running", "running-open"):
            assert f"{test.name}, {test.per} 1:" not in listed
    assert "Not now" not in text[refused + 10 :]
    assert "Test: Compressor amps" in text[refused:] and "compressor 2" in text[refused:]


def test_a_unit_that_must_not_run_is_left_locked_out(shipped: Knowledge, tmp_path: Path) -> None:
    """Regression: closing a visit always took the lock off and started the unit."""
    start = {"routine": True, "complaint": "routine-inspection", "unit": UNIT}
    then = {"wiring-burn-marks": ["done"]}
    player = Player(shipped, {"wiring-burn-marks": "scorched"}, ["do wiring-burn-marks"], then=then)
    code, _ = play(shipped, tmp_path, player, start)
    text = flat(player.text)
    assert code == 0
    assert "The unit stays off and locked: scorched or hot wiring stands in the way." in text
    end = text[text.index("DANGER - STOP THIS STEP") :]
    assert "Step: Put the panels and guards on" in end
    assert "Take your own lock off" not in end and "Call for the unit" not in end
    assert "Write on the tag: Do not start. Scorched or hot wiring" in end
    assert "Hand over to: licensed electrician" in end


@pytest.mark.parametrize(
    ("complaint", "test", "shows", "end"),
    [
        ("no-heat", "ignition-trials", "delayed light", "The heat stays off, its gas cock shut"),
        ("no-cooling", "breaker-and-disconnect", "warm lug", "The unit stays off and locked"),
    ],
)
def test_a_danger_found_with_the_unit_running_leaves_it_off_and_tagged(
    complaint: str, test: str, shows: str, end: str, shipped: Knowledge, tmp_path: Path
) -> None:
    """Regression: the unit was left running, and "back as it was"."""
    start = {"complaint": complaint, "unit": {**UNIT, "heat": "gas"}}
    player = Player(shipped, {test: shows}, [f"do {test}"], then={test: ["done"]})
    code, _ = play(shipped, tmp_path, player, start)
    text = flat(player.text)
    assert code == 0 and "back as it was" not in text
    first, last = text.index(end), text.rindex(end)
    assert first < last < text.index("The visit is closed.")
    assert "Write on the tag: Do not start" in text[first:] and "Hand over to:" in text[first:]
    if "heat" in end:
        assert "Step: Shut the gas cock" in text[first:]
    else:
        assert "Step: Switch off, lock, tag and try" in text
        assert "Step: Take your own lock off" not in text[first:]


def test_the_tests_of_a_dead_unit_begin_with_the_looks_of_the_call(
    shipped: Knowledge, tmp_path: Path
) -> None:
    """Regression: they had neither volts nor breaker, and a call for heat at the board."""
    start = {"complaint": "dead-unit", "unit": {**UNIT, "heat": "gas"}}
    player = Player(shipped, {}, ["tests"])
    play(shipped, tmp_path, player, start)
    text = flat(player.text)
    listed = text[text.index("> tests") : text.index("do N takes one of them")]
    for look in ("line-volts-idle", "breaker-and-disconnect", "transformer-secondary-volts"):
        assert shipped.tests[look].name in listed
    assert shipped.tests["heating-call"].name not in listed
