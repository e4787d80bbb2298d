"""`assess --all`: a table of logged readings, in any order and by any number of processes."""

from __future__ import annotations

import csv
import io
import json
import random
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.visit.kept.samples import stopped_visit, write_journal

Call = Callable[..., tuple[int, str, str]]
FACTS = "R-410A,gas,txv"
HEADING = "unit,refrigerant,heat,metering,suction-pressure,flame-current"


@pytest.fixture
def log(tmp_path: Path) -> Callable[..., str]:
    def write(*rows: str, heading: str = HEADING) -> str:
        path = tmp_path / "log.csv"
        path.write_text("".join(f"{line}\n" for line in (heading, *rows)), "utf-8")
        return str(path)

    return write


def without_row_numbers(out: str) -> list[tuple[str, ...]]:
    return sorted(tuple(row[1:]) for row in csv.reader(io.StringIO(out)))


def test_results_hang_on_neither_order_nor_workers(command: Call, log: Callable[..., str]) -> None:
    rows = [f"RTU-{n},{FACTS},{90 + 4 * n} psig,{1 + n / 4} uA" for n in range(17)]
    found = [command("assess", "--all", log(*rows), "--workers", str(n))[1] for n in (1, 2, 3)]
    assert found[0] == found[1] == found[2]
    numbers = [row[0] for row in csv.reader(io.StringIO(found[0]))]
    assert numbers == ["row", *map(str, range(2, 19))]
    random.Random(1).shuffle(rows)
    shuffled = command("assess", "--all", log(*rows), "--workers", "2")[1]
    assert without_row_numbers(shuffled) == without_row_numbers(found[0])


def test_bad_rows_are_told_and_the_others_done(
    command: Call, log: Callable[..., str], tmp_path: Path
) -> None:
    file = log(f"RTU-1,{FACTS},128 psig,", "RTU-2,,,,128 psig,", f"RTU-3,{FACTS},lots,")
    to = tmp_path / "out.csv"
    code, out, err = command("assess", "--all", file, "--to", str(to))
    assert (code, out) == (1, "")
    assert err.startswith("3 rows, ") and "2 not-taken" in err
    assert "row 3, column unit: " in err and "row 4, column suction-pressure: " in err
    rows = list(csv.DictReader(io.StringIO(to.read_text("utf-8"))))
    assert [row["not-taken"][:5] for row in rows] == ["", "row 3", "row 4"]
    assert command("assess", "--all", file, "--to", str(to))[0] == 2


def test_stops_that_stand_come_before_everything(
    command: Call, log: Callable[..., str], tmp_path: Path
) -> None:
    write_journal(tmp_path / "data" / "visits", "2026-11-25-1", stopped_visit())
    name = next(e["name"] for e in stopped_visit() if e["event"] == "start")
    file = log(f'"{name}",{FACTS},128 psig,', f"RTU-77,{FACTS},128 psig,")
    code, out, err = command("assess", "--all", file, "--json")
    assert code == 0 and err.startswith(f"STOP over {name}")
    first, second = (json.loads(line) for line in out.splitlines())
    assert first["standing_stops"] and not second["standing_stops"]
    assert [*first][:4] == ["row", "unit", "standing_stops", "stops"]


def test_a_table_that_breaks_off_is_judged_up_to_there(
    command: Call, log: Callable[..., str]
) -> None:
    code, out, err = command("assess", "--all", log(f"RTU-1,{FACTS},128 psig,", '"RTU-2'))
    assert code == 2 and len(out.splitlines()) == 2
    assert "row 3 is no CSV" in err and "Traceback" not in err


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--all",), "Name a FILE."),
        (("--workers", "2", "x.yaml"), "--to and --workers go with --all."),
        (("--all", "nowhere.csv"), "nowhere.csv: it cannot be opened"),
    ],
)
def test_what_cannot_be_done_is_said(command: Call, words: tuple[str, ...], said: str) -> None:
    code, out, err = command("assess", *words)
    assert (code, out) == (2, "") and said in err


def test_the_columns_are_told(command: Call) -> None:
    out = command("assess", "--columns")[1]
    for word in ("unit: ", "complaint: ", "compressor-rla: ", "suction-pressure: ", "contactor 1"):
        assert word in out
