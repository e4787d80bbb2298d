"""The last numbers of a unit beside the blank for the next, and the units whose round is due."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path

import pytest

from troubleshoot.cli import clock

Call = Callable[..., tuple[int, str, str]]
UNITS = "name,roof,matters,refrigerant,heat\nRTU-7,upper roof,critical,R-410A,gas\n"
READ = (
    "unit,date,external-static,room-carbon-monoxide\n"
    "RTU-7,2023-05-01,0.40 in wc,1 ppm\nRTU-7,2024-05-01,0.45 in wc,2 ppm\n"
    "RTU-7,2025-05-01,0.50 in wc,3 ppm\nRTU-7,2025-10-01,0.55 in wc,4 ppm\n"
)


@pytest.fixture
def kept(command: Call, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Call:
    (tmp_path / "units.csv").write_text(UNITS, "utf-8")
    (tmp_path / "read.csv").write_text(READ, "utf-8")
    monkeypatch.setattr(clock, "now", lambda: datetime(2026, 11, 30, 9, tzinfo=UTC))
    assert command("units", "import", str(tmp_path / "units.csv"))[0] == 0
    assert command("units", "readings", str(tmp_path / "read.csv"))[1] == "Kept: 4 visits.\n"
    return command


def test_the_sheet_has_the_last_three_under_each_blank(kept: Call) -> None:
    said = kept("inspect", "rtu 7", "--sheet", "--season", "spring")[1]
    blank = said.index("External static pressure")
    before = " ".join(said[blank:].split("\n", 1)[1].split())
    assert before.startswith(
        "Before: 0.55 in. w.c. in 2025-10, 0.5 in. w.c. in 2025-05, 0.45 in. w.c. in 2024-05 "
    )
    assert "Before" not in kept("inspect", "--sheet", "--season", "spring")[1]
    assert "Before" not in kept("inspect", "RTU-8", "--sheet", "--season", "spring")[1]


def test_the_round_has_them_at_the_test(kept: Call, typed: Callable[..., None]) -> None:
    typed("RTU-7", "PM", "fall", "3 4 5 6 7 8", *[""] * 6, *["s"] * 24, "q")
    said = " ".join(kept()[1].split())
    assert "Before: 4 ppm in 2025-10, 3 ppm in 2025-05, 2 ppm in 2024-05" in said
    assert "Before: External static is 20 % up (External static pressure)" in said
    assert said.count("Before: ") == 2


def test_what_drifts_is_told_where_the_numbers_of_before_are_looked_at(
    kept: Call, typed: Callable[..., None], tmp_path: Path
) -> None:
    rows = ("2024-10-01,4.0 uA", "2025-10-01,3.4 uA", "2026-10-01,2.7 uA")
    text = "\n".join(("unit,date,flame-current", *(f"RTU-7,{row}" for row in rows)))
    (tmp_path / "more.csv").write_text(text, "utf-8")
    kept("units", "readings", str(tmp_path / "more.csv"))
    typed("RTU-7", "PM", "fall", "3 4 5 6 7 8", *[""] * 16, "q")
    said = " ".join(kept()[1].split())
    assert "; Flame current is 30 % down (Flame current)" in said


def test_a_unit_is_due_until_its_round_of_the_season_is_closed(kept: Call) -> None:
    code, out, _ = kept("inspect", "--due")
    assert code == 0
    assert out == (
        "RTU-7: upper roof; critical; last round 2025-10-01\n"
        "1 of 1 unit due for the fall round, since 2026-08-01.\n"
    )


@pytest.mark.parametrize("words", [("RTU-7", "--due"), ("--due", "--sheet")])
def test_due_lists_units_and_takes_none(kept: Call, words: tuple[str, ...]) -> None:
    code, _, err = kept("inspect", *words)
    assert code == 2 and "--due lists units" in err
