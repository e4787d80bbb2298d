"""The commands of the register, as a person types them."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.visit.kept.samples import stopped_visit, write_journal

Call = Callable[..., tuple[int, str, str]]
Typed = Callable[..., None]
SHEET = "name,site,roof,serves,matters,refrigerant,heat,metering,blower-drive\n"


@pytest.fixture
def sheet(tmp_path: Path) -> Callable[..., str]:
    def write(*rows: str) -> str:
        path = tmp_path / "units.csv"
        path.write_text(SHEET + "".join(f"{row}\n" for row in rows), "utf-8")
        return str(path)

    return write


def test_units_are_imported_listed_shown_and_exported(
    command: Call, sheet: Callable[..., str], tmp_path: Path
) -> None:
    file = sheet(
        "RTU-10,college,lower roof,library,usual,R-22,gas,txv,belt",
        "RTU-9,college,upper roof,=1+1,critical,R-410A,gas,txv,belt",
    )
    assert command("units", "import", file) == (
        0, "Kept: 2 new units, 0 that were there before.\n", ""
    )  # fmt: skip
    code, out, _ = command("units")
    assert code == 0
    assert out.splitlines()[0].startswith("RTU-9: college; upper roof; =1+1; critical; no visit")
    assert "2 units; 0 under a STOP" in out
    code, out, _ = command("units", "show", "rtu 9")
    assert code == 0 and "refrigerant: R-410A" in out and "serves: =1+1" in out
    code, out, _ = command("units", "show", "rtu 9", "--json")
    assert json.loads(out)["on_record"]["heat"] == "gas"
    there = tmp_path / "out.csv"
    assert command("units", "export", str(there))[:2] == (0, f"2 units in {there}\n")
    assert "'=1+1" in there.read_text("utf-8")
    assert command("units", "export", str(there))[0] == 2
    code, out, _ = command("units", "import", str(there))
    assert out == "Kept: 0 new units, 2 that were there before.\n"


def test_of_a_bad_sheet_nothing_is_kept_unless_the_good_rows_are_asked_for(
    command: Call, sheet: Callable[..., str]
) -> None:
    file = sheet("RTU-1,a,b,c,usual,R-22,gas,txv,belt", "RTU-2,a,b,c,usual,R-99,gas,txv,belt")
    code, out, err = command("units", "import", file)
    assert (code, out) == (3, "")
    assert err.startswith('row 3, column refrigerant: "R-99" is no answer here; one of R-22')
    assert "--good-rows" in err
    assert "No unit is in the register yet" in command("units", "list")[1]
    code, out, err = command("units", "import", file, "--good-rows")
    assert code == 1 and "Kept: 1 new unit" in out and "row 3, column refrigerant" in err
    assert command("units", "list")[1].startswith("RTU-1: ")


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (("show", "RTU-3"), 2, "the register has no unit RTU-3; see: troubleshoot units list"),
        (("import", "nowhere.csv"), 2, "nowhere.csv: it cannot be opened"),
        (("export", "/nowhere/x.csv"), 2, "/nowhere/x.csv: cannot be written"),
        (("add", "?!"), 2, "a unit's name has letters or digits"),
    ],
)
def test_what_cannot_be_done_is_said_in_a_sentence(
    command: Call, words: tuple[str, ...], code: int, said: str
) -> None:
    found, out, err = command("units", *words)
    assert (found, out) == (code, "")
    assert said in err and "Traceback" not in err


def test_a_unit_is_added_from_its_data_plate_and_nothing_is_lost(
    command: Call, typed: Typed
) -> None:
    typed(
        "RTU-5", "North clinic", "roof 2", "u", "upper roof", "?", "", "1", "", "",
        "R-410A, 208/3/60, gas, two circuits, foo", "txv", *[""] * 4, "99", "2",
        "note shaky ladder", "q",
    )  # fmt: skip
    code, out, _ = command("units", "add")
    assert code == 0
    assert "Taken back: roof: roof 2." in out
    assert 'Not understood, and not kept: "foo".' in out
    assert "99 is not a number of them a unit has" in out
    assert 'Kept: RTU-5. See: troubleshoot units show "RTU-5"' in out
    left_open = [""] * 4  # where it stands, and the line of the data plate
    typed(*left_open, "next", "u", "fin and tube", "next", "208", "u", "230", "done")
    code, again, _ = command("units", "add", "rtu 5")
    assert "RTU-5 is in the register: what is open is asked." in again
    assert "How is refrigerant metered" not in again
    assert "Taken: condenser coil: fin and tube." in again
    shown = command("units", "show", "rtu-5")[1]
    for line in ("roof: upper roof", "matters: critical", "metering: TXV", "condenser fans: 2",
                 "condenser coil: fin and tube", "nameplate volts: 230"):  # fmt: skip
        assert line in shown


def test_a_note_that_cannot_be_kept_is_told(command: Call, typed: Typed) -> None:
    typed("RTU-5", f"note {'a' * 1500}", f"note {'b' * 1500}", "q")
    said = command("units", "add")[1]
    assert said.count("Noted.") == 1 and "more than 2000 letters" in said


def test_whoever_leaves_before_anything_is_told_leaves_nothing(command: Call, typed: Typed) -> None:
    typed("RTU-5", "q")
    assert "Nothing was told, and nothing is kept." in command("units", "add")[1]
    assert "No unit is in the register yet" in command("units")[1]


@pytest.mark.parametrize("words", ["danger smell of gas", "note strong smell of gas here"])
def test_a_danger_told_while_a_unit_is_added_stops_its_unit(
    command: Call, typed: Typed, words: str
) -> None:
    typed("RTU-5", "North clinic", words, "q")
    code, out, _ = command("units", "add")
    assert code == 4 and "STOP" in out
    code, out, _ = command("units")
    assert "STOP over RTU-5" in out
    assert "1 unit; 1 under a STOP" in out
    assert command("units", "show", "RTU-5")[1].startswith("STOP over RTU-5")


def test_a_standing_stop_is_shown_of_a_unit_that_is_not_in_the_register(
    command: Call, tmp_path: Path
) -> None:
    write_journal(tmp_path / "data" / "visits", "2026-11-25-1", stopped_visit())
    code, out, err = command("units", "list")
    assert code == 0 and "No unit is in the register yet" in out and out.startswith("STOP over ")
    assert json.loads(command("units", "list", "--json")[1])["standing"]
    assert command("inspect", "--due")[1].startswith("STOP over ")
    name = next(e["name"] for e in stopped_visit() if e["event"] == "start")
    code, out, err = command("units", "show", name)
    assert code == 2 and out.startswith(f"STOP over {name}") and "the register has no unit" in err


def test_a_visit_asks_afresh_what_safety_hangs_on_and_nothing_else_on_record(
    command: Call, sheet: Callable[..., str], typed: Typed
) -> None:
    command("units", "import", sheet("RTU-9,college,upper,library,usual,R-22,gas,txv,belt"))
    typed("RTU-9", "spring check", *[""] * 16, "q")
    _, out, _ = command()
    assert "RTU-9 is in the register: college, upper; serves library; matters: usual." in out
    assert "On record, and not asked: blower drive." in out
    assert "Looked at afresh, since safety hangs on it: refrigerant, heat, metering." in out
    assert "driven directly or by a belt" not in out and "How is refrigerant metered" in out
    assert "Is the refrigerant A1 or" in out
    report = command("report", command("visits")[1].split()[0])[1]
    assert "## Unit, from the register" in report and "- blower drive: belt" in report


def test_what_is_seen_to_be_another_than_on_record_is_told(
    command: Call, sheet: Callable[..., str], typed: Typed
) -> None:
    command("units", "import", sheet("RTU-9,college,upper,library,usual,R-22,gas,txv,belt"))
    typed("RTU-9", "no heat", "3 4 5 6 7 8", "electric", "q")
    _, out, _ = command()
    assert "On record it is another (heat: gas)" in out


def test_a_damaged_entry_is_told_and_nothing_of_it_is_used(
    command: Call, typed: Typed, tmp_path: Path
) -> None:
    folder = tmp_path / "data" / "units"
    folder.mkdir(parents=True)
    (folder / "rtu9.yaml").write_text("format: 1\nname: RTU-9\nheat: coal\n")
    typed("RTU-9", "q")
    out = command()[1]
    assert "rtu9.yaml:heat:" in "".join(out.split())
    assert "Nothing of the register is used" in out
    assert "rtu9.yaml:heat:" in "".join(command("units")[1].split())


def test_a_path_or_a_digit_is_no_units_name(command: Call, sheet: Callable[..., str]) -> None:
    """Regression: ../../etc/x was a unit of the register."""
    for name in ("../../etc/x", "12"):
        code, _, err = command("units", "import", sheet(f"{name},,,,,,,,"))
        assert code != 0 and "is no unit's name" in err
