"""Which rounds are due, and in which order to go."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Any

import pytest

from tests.visit.kept.samples import write_journal
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.records.due_rounds import due_rounds, season_began
from troubleshoot.records.register.entry import Entry
from troubleshoot.records.register.files import Register
from troubleshoot.records.stands import Visited
from troubleshoot.visit.round.season import season_of

TODAY = date(2026, 11, 30)


@pytest.mark.parametrize(
    ("day", "began"),
    [
        ("2026-01-31", "2025-08-01"),
        ("2026-02-01", "2026-02-01"),
        ("2026-07-31", "2026-02-01"),
        ("2026-08-01", "2026-08-01"),
        ("2026-12-31", "2026-08-01"),
    ],
)
def test_a_season_begins_where_the_rounds_change(day: str, began: str) -> None:
    first = season_began(date.fromisoformat(day))
    assert first.isoformat() == began
    assert season_of(first.month) == season_of(date.fromisoformat(day).month)


def start(name: str, day: str, **more: object) -> dict[str, Any]:
    return {"event": "start", "name": name, "complaint": "routine-inspection", "routine": True,
            "profiles": ["technician"], "time": f"{day}T10:00:00+00:00", **more}  # fmt: skip


END = {"event": "end", "ending": "closed"}


def test_only_a_closed_round_of_this_season_counts(shipped: Knowledge, tmp_path: Path) -> None:
    call = {"complaint": "no-heat", "routine": False}
    for name, events in {
        "2026-10-01-1": [start("done", "2026-10-01"), END],
        "2026-05-01-1": [start("spring", "2026-05-01"), END],
        "2026-10-02-1": [start("open", "2026-10-02")],
        "2026-10-03-1": [start("call", "2026-10-03", **call), END],
    }.items():
        write_journal(tmp_path, name, events)
    names = ("done", "spring", "open", "call", "never")
    register = Register(tuple(map(Entry, names)), ())
    due = due_rounds(register, Visited(shipped, tmp_path), TODAY)
    assert {each.entry.name: each.last for each in due} == {
        "spring": "2026-05-01", "open": "", "call": "", "never": "",
    }  # fmt: skip


def test_roof_by_roof_what_matters_most_comes_first(shipped: Knowledge, tmp_path: Path) -> None:
    register = Register(
        (
            Entry("U-2", {"roof": "upper"}),
            Entry("U-10", {"roof": "upper", "matters": "critical"}),
            Entry("U-9", {"roof": "upper", "matters": "critical"}),
            Entry("U-1", {"roof": "upper", "matters": "little"}),
            Entry("L-1", {"roof": "lower", "matters": "little"}),
        ),
        (),
    )
    due = due_rounds(register, Visited(shipped, tmp_path), TODAY)
    assert [each.entry.name for each in due] == ["L-1", "U-9", "U-10", "U-2", "U-1"]
