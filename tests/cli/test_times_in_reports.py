"""Each reading of a report says when it was taken, by the clock of the place."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from troubleshoot.cli import clock
from troubleshoot.cli.journal_shelf import JournalShelf
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import Answered, Started, StepDone

Call = Callable[..., tuple[int, str, str]]

CAN = "capacitor condenser fan 1"
START = datetime.fromisoformat("2026-11-26T23:41:30-05:00")


@pytest.fixture
def visit(shipped: Knowledge, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> str:
    """A visit over midnight: a step, a reading, and the same reading again."""
    unit = {"condenser-fans": "1", "capacitor-rated": "7.5 uF"}
    events = (
        Started("RTU-7", "no-cooling", unit=unit),
        StepDone("roof-conditions", ("safe",)),
        Answered("capacitance-out-of-circuit", (CAN,), text="7.4 uF"),
        Answered("capacitance-out-of-circuit", (CAN,), text="5 uF"),
    )
    with JournalShelf(shipped, tmp_path / "data" / "visits") as shelf:
        monkeypatch.setattr(clock, "now", lambda: START)
        book = shelf.new()
        for number, event in enumerate(events):
            now = START + timedelta(minutes=7 * number)
            monkeypatch.setattr(clock, "now", lambda now=now: now)
            book.add(event)
        return book.visit_id


def rows(report: str) -> list[str]:
    return [line for line in report.splitlines() if line.startswith("| ")]


def test_the_table_has_the_hour_of_each_and_a_new_day_once(visit: str, command: Call) -> None:
    _, report, _ = command("report", visit)
    head, _, roof, first, second = rows(report)
    assert head == "| when | what | where | reading | outcome | counts |"
    assert roof.startswith("| 2026-11-26 23:48 | Roof")
    assert first.startswith("| 23:55 | Capacitance") and "7.4 uF | normal" in first
    assert second.startswith("| 2026-11-27 00:02 | Capacitance") and "5 uF | very low" in second


def test_the_account_has_the_moment_of_each(visit: str, command: Call) -> None:
    _, plain, _ = command("report", visit, "--json")
    account: Mapping[str, Any] = json.loads(plain)
    assert [row["time"] for row in account["asked"]] == [
        "2026-11-26T23:48:30-05:00", "2026-11-26T23:55:30-05:00", "2026-11-27T00:02:30-05:00",
    ]  # fmt: skip


def test_the_same_visit_gives_the_same_report_on_any_day(
    visit: str, command: Call, monkeypatch: pytest.MonkeyPatch
) -> None:
    first = command("report", visit)
    monkeypatch.setattr(clock, "now", lambda: START + timedelta(days=400))
    assert command("report", visit) == first


def test_a_file_has_no_times(command: Call, case_file: Callable[[dict[str, Any]], str]) -> None:
    readings = [{"test": "air-filters", "outcome": "clean"}]
    case = case_file({"complaint": "no-cooling", "readings": readings})
    for words in (("assess", case), ("diagnose", "--answers", case)):
        _, plain, _ = command(*words, "--json")
        assert {row["time"] for row in json.loads(plain)["asked"]} == {None}
    _, report, _ = command("diagnose", "--answers", case)
    assert "| what | where |" in report
