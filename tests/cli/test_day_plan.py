"""`inspect --plan`: the day's rounds on a roof, STOPs before them, and what to take up."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.visit.kept.samples import stopped_visit, write_journal

Call = Callable[..., tuple[int, str, str]]
UNITS = """\
name,site,roof,serves,refrigerant,heat,filters
RTU-1,clinic,lower roof,ward,R-410A,gas,2 of 20x25x2
RTU-2,clinic,lower roof,hall,R-410A,gas,3 of 20x25x2
"Quarry Street clinic, unit 2",clinic,lower roof,lab,R-410A,gas,
"""


@pytest.fixture
def roof(command: Call, tmp_path: Path) -> Call:
    (tmp_path / "units.csv").write_text(UNITS, "utf-8")
    assert command("units", "import", str(tmp_path / "units.csv"))[0] == 0
    write_journal(tmp_path / "data" / "visits", "2026-11-25-1", stopped_visit())
    return command


def test_no_unit_under_a_stop_is_in_the_plan(roof: Call) -> None:
    code, out, err = roof("inspect", "--plan", "lower roof")
    assert (code, err) == (0, "")
    said = " ".join(out.split())
    assert said.startswith("STOP over Quarry Street clinic, unit 2")
    assert "Not in the plan: Quarry Street clinic, unit 2." in said
    assert "2 of 3 due units" in said
    assert "To take up for RTU-1, RTU-2: Filters: 5 of 20x25x2" in said


@pytest.mark.parametrize("columns", ["40", "80"])
def test_it_fits_the_screen(roof: Call, monkeypatch: pytest.MonkeyPatch, columns: str) -> None:
    monkeypatch.setenv("COLUMNS", columns)
    out = roof("inspect", "--plan", "lower roof", "--hours", "8")[1]
    assert max(map(len, out.splitlines())) <= int(columns)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--plan", "annex"), "annex: it names no roof on which a unit is due; name one of: "),
        (("--hours", "8"), "--hours goes with --plan."),
        (("RTU-1", "--plan", "roof"), "--plan is of a roof"),
    ],
)
def test_what_cannot_be_planned_is_said(roof: Call, words: tuple[str, ...], said: str) -> None:
    code, out, err = roof("inspect", *words)
    assert (code, out) == (2, "") and said in err


def test_where_nothing_is_due_that_is_said(command: Call) -> None:
    assert command("inspect", "--plan", "roof") == (0, "No round of this season is due.\n", "")
