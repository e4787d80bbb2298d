"""Numbers gathered from kept visits: which count, and what is said of a damaged one."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from tests.visit.kept.samples import write_journal
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.records.history.collecting import History, history_of

ON_RECORD = {"refrigerant": "R-410A", "metering": "txv"}
START = {"event": "start", "name": "RTU-7", "complaint": "routine-inspection", "routine": True,
         "profiles": ["technician"], "time": "2025-05-12T10:00:00+02:00"}  # fmt: skip


def read(test: str, text: str, **more: object) -> dict[str, Any]:
    return {"event": "answer", "test": test, "at": None, "text": text, **more}


def gathered(knowledge: Knowledge, folder: Path) -> History:
    return history_of(knowledge, [*folder.iterdir()], ON_RECORD)


def test_what_the_visit_was_not_told_is_filled_in_from_the_register(
    shipped: Knowledge, tmp_path: Path
) -> None:
    readings = (read("suction-pressure", "128 psig"), read("suction-line-temperature", "54 F"))
    write_journal(tmp_path, "2025-05-12-1", [START, *readings])
    series = {each.quantity: each for each in gathered(shipped, tmp_path).series}
    (number,) = series["superheat"].reads
    assert 8 < number.value < 12 and number.visit == "2025-05-12-1"
    assert number.day.isoformat() == "2025-05-12"


def test_a_reading_that_counts_for_nothing_is_no_history(
    shipped: Knowledge, tmp_path: Path
) -> None:
    bad = read("external-static", "0.9 in wc", valid=False)
    write_journal(tmp_path, "2025-05-12-1", [START, bad])
    assert gathered(shipped, tmp_path).series == ()


def test_a_visit_that_cannot_be_read_is_named_and_hides_no_other(
    shipped: Knowledge, tmp_path: Path
) -> None:
    reading = read("external-static", "0.5 in wc")
    write_journal(tmp_path, "2025-05-12-1", [START, reading])
    damaged = write_journal(tmp_path, "2025-06-12-1", [START, reading])
    damaged.write_bytes(damaged.read_bytes().replace(b"0.5", b"0.7"))
    write_journal(tmp_path, "spring", [{**START, "time": ""}, reading])
    found = gathered(shipped, tmp_path)
    (series,) = found.series
    assert [number.visit for number in series.reads] == ["2025-05-12-1"]
    said = " ".join(found.problems)
    assert "2025-06-12-1" in said and "spring.journal: nothing tells on which day" in said


def test_readings_stand_in_the_order_of_their_days(shipped: Knowledge, tmp_path: Path) -> None:
    for name, day, text in (
        ("a", "2026-05-01", "0.7 in wc"), ("b", "2024-05-01", "0.5 in wc"),
        ("c", "2025-05-01", "0.6 in wc"),
    ):  # fmt: skip
        start = {**START, "time": f"{day}T09:00:00+00:00"}
        write_journal(tmp_path, name, [start, read("external-static", text)])
    (series,) = gathered(shipped, tmp_path).series
    assert [number.value for number in series.reads] == [0.5, 0.6, 0.7]


def test_a_repair_begins_a_new_line(shipped: Knowledge, tmp_path: Path) -> None:
    fault = next(
        f.id for f in shipped.faults.values()
        if any(g.test == "flame-current" for item in f.evidence for g in item.findings)
    )  # fmt: skip
    repaired = {"event": "repaired", "fault": fault}
    after_it = (repaired, read("flame-current", "4.2 uA"))
    for year in (2023, 2024, 2025):
        after = after_it if year == 2024 else ()
        start = {**START, "time": f"{year}-10-01T09:00:00+00:00"}
        events = [start, read("flame-current", "2.0 uA"), read("external-static", "0.5 in wc")]
        write_journal(tmp_path, f"{year}-10-01-1", [*events, *after])
    series = {each.quantity: each for each in gathered(shipped, tmp_path).series}
    assert [number.value for number in series["flame-current"].comparable] == [4.2, 2.0]
    assert len(series["flame-current"].reads) == 3
    assert len(series["external-static"].comparable) == 3
