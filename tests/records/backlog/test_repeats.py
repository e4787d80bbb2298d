"""The same fault put right twice within a year is a repeat; once, or long ago, it is none."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from tests.records.history.test_collecting import START
from tests.visit.kept.samples import write_journal
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.records.backlog.repeats import repeats_of

FAULT, OTHER = "contactor-pole-burnt-away", "air-filters-loaded"
TODAY = date(2026, 11, 30)


def put_right(folder: Path, day: str, *faults: str, undone: bool = False) -> None:
    events = [{**START, "time": f"{day}T10:00:00+00:00"}]
    for fault in faults:
        events.append({"event": "repaired", "fault": fault, "time": f"{day}T11:00:00+00:00"})
    write_journal(folder, f"{day}-1", [*events, *([{"event": "undo"}] if undone else [])])


@pytest.mark.parametrize(
    ("days", "found"),
    [
        (("2026-02-01", "2026-11-01"), ("2026-02-01", "2026-11-01")),
        (("2025-11-30", "2026-11-30"), ("2025-11-30", "2026-11-30")),
        (("2025-11-29", "2026-11-30"), ()),
        (("2026-02-01",), ()),
        (("2024-01-01", "2024-06-01"), ()),
        (("2023-01-01", "2026-02-01", "2026-11-01"), ("2026-02-01", "2026-11-01")),
    ],
)
def test_twice_within_a_year_and_not_long_ago(
    shipped: Knowledge, tmp_path: Path, days: tuple[str, ...], found: tuple[str, ...]
) -> None:
    for day in days:
        put_right(tmp_path, day, FAULT)
    repeats = repeats_of(shipped, [*tmp_path.iterdir()], TODAY)
    assert [day.isoformat() for each in repeats for day in each.days] == list(found)


def test_another_fault_one_visit_twice_and_what_was_taken_back_are_none(
    shipped: Knowledge, tmp_path: Path
) -> None:
    put_right(tmp_path, "2026-02-01", FAULT, FAULT)
    put_right(tmp_path, "2026-03-01", OTHER)
    put_right(tmp_path, "2026-04-01", FAULT, undone=True)
    (tmp_path / "2026-05-01-1.journal").write_bytes(b'"repaired" and no journal')
    assert repeats_of(shipped, [*tmp_path.iterdir()], TODAY) == ()
