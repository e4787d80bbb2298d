"""`do WORDS` finds a test by what people call it; `done` at a step is asked about."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.cli.player import Player, play
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.visit.hearing.tests_by_words import find_tests

UNIT = {"heat": "gas", "circuits": 1, "line-volts-class": "208-to-240-volt"}


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("manifold pressure", ["gas-manifold-pressure"]),
        ("suction-pressure", ["suction-pressure"]),
        ("capacitance", ["capacitance-out-of-circuit", "capacitance-while-running"]),
        ("lockout", []), ("heater fuses", []), ("", []),
    ],
)  # fmt: skip
def test_words_of_its_name_are_enough_and_no_step_or_absent_part_is_meant(
    words: str, found: list[str], shipped: Knowledge
) -> None:
    unit = read_unit(shipped, UNIT)
    assert [test.id for test in find_tests(shipped, unit, words)] == found


def told(shipped: Knowledge, folder: Path, *says: str) -> str:
    player = Player(shipped, {}, says, ["q"])
    play(shipped, folder, player, {"complaint": "no-cooling", "unit": UNIT})
    return player.text


def test_where_several_fit_they_are_listed_by_number(shipped: Knowledge, tmp_path: Path) -> None:
    """Regression: `do capacitance` was refused."""
    text = told(shipped, tmp_path, "do capacitance", "do 1", "q")
    assert "Which of these?" in text and "Not now" not in text
    assert "> do 1" in text.partition("Which of these?")[2]


def test_done_at_a_step_that_protects_asks_what_was_done(
    shipped: Knowledge, tmp_path: Path
) -> None:
    text = told(shipped, tmp_path, "do wiring-burn-marks", "done", "safe", "q")
    assert 'Is the step done? Type "safe".' in text and "visit is closed" not in text
