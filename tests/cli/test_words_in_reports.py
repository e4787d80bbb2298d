"""What a person reported as a danger stands in the report, in their own words."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.visit.kept.samples import write_journal
from troubleshoot.dialogue.hearing import called_danger

Call = Callable[..., tuple[int, str, str]]
VISIT = "2026-11-25-1"


def reported(folder: Path, words: str) -> None:
    danger = {"event": "danger", "hazard": "fallen-or-hanging", "words": words, "at": None}
    start = {"event": "start", "complaint": "no-cooling", "profiles": []}
    ended = {"event": "end", "ending": "stopped", "told": "911, just now"}
    write_journal(folder / "visits", VISIT, [start, danger, ended])


def test_the_words_of_a_danger_stand_in_both_reports(command: Call, tmp_path: Path) -> None:
    """Regression: only the hazard's name stood there; the words were on the tag alone."""
    reported(tmp_path / "data", "ladder slipped and a *man* <b>hangs</b>")
    code, out, _ = command("report", VISIT)
    (line,) = (row for row in out.splitlines() if row.startswith("- STOP, "))
    assert code == 0
    assert r'reported: "ladder slipped and a \*man\* \<b\>hangs\</b\>"; handed over' in line
    code, out, _ = command("report", VISIT, "--json")
    (stop,) = json.loads(out)["stops"]
    assert stop["reported"] == "ladder slipped and a *man* <b>hangs</b>"


def test_a_stop_that_was_only_found_has_no_words(command: Call, tmp_path: Path) -> None:
    reported(tmp_path / "data", "")
    code, out, _ = command("report", VISIT, "--json")
    assert code == 0 and json.loads(out)["stops"][0]["reported"] is None
    assert "reported:" not in command("report", VISIT)[1]


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ("danger <b>gas</b>", "<b>gas</b>"), ("danger: #2 is on fire", "#2 is on fire"),
        ("DANGER!", ""), ("danger - gas", "gas"), ("danger... (smoke)", "(smoke)"),
        ("danger \u2014 gas", "gas"),
    ],
)  # fmt: skip
def test_no_letter_of_what_is_reported_is_eaten(typed: str, words: str) -> None:
    """Regression: "danger <b>gas</b>" was kept as "b>gas</b>"."""
    assert called_danger(typed) == words
