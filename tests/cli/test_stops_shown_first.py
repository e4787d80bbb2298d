"""Where nothing is asked, every STOP that stands over a unit is shown before anything else."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest

Call = Callable[..., tuple[int, str, str]]
HEAD = "STOP over RTU-7, visit "


@pytest.fixture
def stopped(command: Call, typed: Callable[..., None]) -> None:
    """A visit to RTU-7 that a gas smell stopped, handed over."""
    typed("RTU-7", "gas-smell", *[""] * 12, "over", "the gas utility by telephone, just now")
    assert command()[0] == 0


@pytest.mark.usefixtures("stopped")
@pytest.mark.parametrize(
    "words",
    [
        ("diagnose", "--no-input"),
        ("diagnose", "RTU-9", "--no-input"),
        ("inspect", "--sheet"),
        ("inspect", "rtu 7", "--sheet", "--season", "fall"),
        ("visits",),
    ],
)
def test_it_comes_first(words: tuple[str, ...], command: Call) -> None:
    """Regression: a script and a sheet passed it in silence."""
    code, out, _ = command(*words)
    assert code == 0 and out.startswith(HEAD) and "gas odor" in out.splitlines()[0]


@pytest.mark.usefixtures("stopped")
@pytest.mark.parametrize(("unit", "same"), [("", False), ("RTU-9", False), ("RTU-70", False)])
def test_a_script_of_another_unit_has_it_first_in_its_object(
    unit: str, same: bool, command: Call
) -> None:
    code, out, _ = command(*filter(None, ("diagnose", unit, "--json")))
    account = json.loads(out)
    (row,) = account["standing"]
    assert code == 0 and next(iter(account)) == "standing"
    assert (row["id"], row["scope"], row["unit"]) == ("gas-odour", "whole-job", "RTU-7")
    assert row["same_unit"] is same and row["handed_over"] and row["readable"]


@pytest.mark.usefixtures("stopped")
@pytest.mark.parametrize("unit", ["RTU-7", "rtu 7", "Rtu_07", "rtu#7."])
def test_a_script_of_the_same_unit_is_refused_however_it_is_typed(unit: str, command: Call) -> None:
    code, out, err = command("diagnose", unit, "--json")
    assert code == 2 and err.count("\n") == 1 and f"a STOP stands over {unit}: gas odor" in err
    told = json.loads(out)
    assert told["error"][0]["key"] == "unit" and told["standing"][0]["same_unit"] is True


@pytest.mark.usefixtures("stopped")
@pytest.mark.parametrize(
    "unit", ["RTU seven", "RTU VII", "rooftop seven", "seventh RTU", "RTU-7/8", "RTU-7-1"]
)
def test_a_script_whose_unit_may_be_the_stopped_one_is_told_where_to_look(
    unit: str, command: Call
) -> None:
    """Regression: with its number said otherwise a script went past the STOP."""
    code, out, err = command("diagnose", unit, "--no-input")
    assert (code, out, err.count("\n")) == (2, "", 1)
    assert f"a STOP stands over RTU-7, which may be {unit}: gas odor" in err
    assert "see: troubleshoot report 2" in err


@pytest.mark.usefixtures("stopped")
def test_an_assessment_tells_it_first(command: Call, case_file: Callable[..., str]) -> None:
    """Regression: assess of a file said no word of a STOP that diagnose told of first."""
    file = case_file({"complaint": "no-heat"})
    code, out, _ = command("assess", file)
    assert code == 0 and out.startswith(HEAD) and "Not settled" in out
    account = json.loads(command("assess", file, "--json")[1])
    assert next(iter(account)) == "standing" and account["standing"][0]["unit"] == "RTU-7"


@pytest.mark.usefixtures("stopped")
def test_a_table_of_units_tells_it_of_its_own_first(command: Call, tmp_path: Path) -> None:
    """Regression: its unit was taken in without a word."""
    table = tmp_path / "units.csv"
    table.write_text("name,heat\nRTU 7,none\nRTU-9,gas\n", "utf-8")
    code, out, _ = command("units", "import", str(table))
    assert code == 0 and out.startswith(HEAD) and "Kept: 2 new units" in out
    table.write_text("name,heat\nRTU-9,gas\n", "utf-8")
    assert command("units", "import", str(table))[1].startswith("Kept:")


def test_a_list_says_one_thing_of_a_visit_that_cannot_be_read(
    command: Call, typed: Callable[..., None], tmp_path: Path
) -> None:
    """Regression: where a record is cut off it cannot be read above, and was open below."""
    typed("RTU-8", "no-cooling", "3", "q")
    command()
    (journal,) = (tmp_path / "data" / "visits").glob("*.journal")
    with journal.open("ab") as file:
        file.write(b"cut off")
    out = command("visits")[1]
    assert "cannot be read" in out and f"{journal.stem}  damaged" in out
    assert f"{journal.stem}  open" not in out and "An open one" not in out
