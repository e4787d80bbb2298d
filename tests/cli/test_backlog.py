"""`units backlog`: what waits on a fleet, on the screen, as a page, as a table, for scripts."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest

from tests.visit.kept.samples import stopped_visit, write_journal
from troubleshoot.cli import clock

Call = Callable[..., tuple[int, str, str]]
STOPPED = "Quarry Street clinic, unit 2"
FAULT = "contactor-pole-burnt-away"
UNITS = f"""\
name,site,roof,serves,matters,refrigerant,heat
RTU-1,college,lower roof,library,critical,R-410A,gas
RTU-2,college,lower roof,server room,little,R-410A,gas
RTU-3,college,upper roof,=gym,usual,R-410A,gas
RTU-4,college,upper roof,hall,usual,R-410A,gas
"{STOPPED}",clinic,roof,ward,usual,R-410A,gas
"""


def start(unit: str, day: str) -> dict[str, Any]:
    return {"event": "start", "name": unit, "complaint": "routine-inspection", "routine": True,
            "profiles": ["technician"], "time": f"{day}T10:00:00+00:00"}  # fmt: skip


def repaired(day: str) -> dict[str, Any]:
    return {"event": "repaired", "fault": FAULT, "time": f"{day}T10:00:00+00:00"}


END = {"event": "end", "ending": "closed"}


@pytest.fixture
def fleet(command: Call, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Call:
    """One under a STOP, one left open, one mended twice, one that drifts, a sound one."""
    monkeypatch.setattr(clock, "now", lambda: datetime(2026, 11, 30, tzinfo=UTC))
    (tmp_path / "units.csv").write_text(UNITS, "utf-8")
    assert command("units", "import", str(tmp_path / "units.csv"))[0] == 0
    visits = tmp_path / "data" / "visits"
    write_journal(visits, "2026-11-25-1", stopped_visit())
    write_journal(visits, "2026-11-20-1", [start("RTU-1", "2026-11-20")])
    for day in ("2026-03-02", "2026-10-02"):
        write_journal(visits, f"{day}-1", [start("RTU-2", day), repaired(day), END])
    for year, text in ((2024, "4.00 uA"), (2025, "3.40 uA"), (2026, "2.80 uA")):
        read = {"event": "answer", "test": "flame-current", "at": None, "text": text}
        write_journal(visits, f"{year}-10-03-1", [start("RTU-3", f"{year}-10-03"), read, END])
    return command


def test_a_stop_is_first_then_what_is_open_came_back_and_drifts(fleet: Call) -> None:
    code, out, err = fleet("units", "backlog")
    assert (code, err) == (0, "")
    order = [out.index(f"{name}: ") for name in (STOPPED, "RTU-1", "RTU-2", "RTU-3")]
    assert order == sorted(order)
    said = " ".join(out.split())
    for words in (
        f"STOP over {STOPPED}", "Visit 2026-11-20-1 is open.", "Drifts: Flame current",
        "put right on 2026-03-02 and 2026-10-02.", "the end of its sound band",
        "Nothing waits on these: RTU-4.",
        "5 units; 1 under a STOP, 3 with something open, 1 with a fault that came back",
    ):  # fmt: skip
        assert words in said, words


@pytest.mark.parametrize("columns", ["40", "80"])
def test_it_fits_the_screen(fleet: Call, monkeypatch: pytest.MonkeyPatch, columns: str) -> None:
    monkeypatch.setenv("COLUMNS", columns)
    out = fleet("units", "backlog")[1]
    assert max(map(len, out.splitlines())) <= int(columns)


def test_it_is_written_as_a_page_and_as_a_table(fleet: Call, tmp_path: Path) -> None:
    page, table = tmp_path / "b.html", tmp_path / "b.csv"
    code, out, _ = fleet("units", "backlog", "--html", str(page), "--csv", str(table))
    assert code == 0 and out.count("Written: ") == 2
    html = page.read_text("utf-8")
    assert f'<p class="not-to-be-missed">STOP over {STOPPED}' in html
    assert html.index("STOP over") < html.index("<h2>")
    rows = list(csv.DictReader(io.StringIO(table.read_text("utf-8"))))
    assert [row["unit"] for row in rows] == [STOPPED, "RTU-1", "RTU-2", "RTU-3", "RTU-4"]
    assert rows[3]["serves"] == "'=gym" and rows[3]["reaches-limit"] > "2026-10"
    assert rows[4]["round-due"] == "yes" and not rows[4]["stops"]
    assert fleet("units", "backlog", "--csv", str(table))[0] == 2


def test_scripts_have_it_as_json(fleet: Call) -> None:
    found = json.loads(fleet("units", "backlog", "--json")[1])
    units = {each["name"]: each for each in found["units"]}
    assert units[STOPPED]["standing"] and not units["RTU-4"]["standing"]
    assert units["RTU-2"]["came_back"] == [{"fault": FAULT, "days": ["2026-03-02", "2026-10-02"]}]
    assert units["RTU-3"]["worst"]["test"] == "flame-current"
    assert units["RTU-3"]["worst"]["due"] > "2026-10"


@pytest.mark.parametrize(("site", "told"), [("college", 1), ("clinic", 2)])
def test_the_site_of_all_is_told_once_on_the_page(
    command: Call, tmp_path: Path, site: str, told: int
) -> None:
    """Regression: on a phone each of 45 units repeated the site that the first line had told."""
    rows = f"name,site,roof,heat\nRTU-1,college,lower roof,gas\nRTU-2,{site},upper roof,gas\n"
    (tmp_path / "units.csv").write_text(rows, "utf-8")
    assert command("units", "import", str(tmp_path / "units.csv"))[0] == 0
    page = tmp_path / "b.html"
    assert command("units", "backlog", "--html", str(page))[0] == 0
    html = page.read_text("utf-8")
    assert html.count("college") + html.count("clinic") == told
