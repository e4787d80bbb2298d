"""The instruments on record: accuracy as printed, the last proof, and what is no instrument."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from troubleshoot.outside.refusal import NotUsable
from troubleshoot.records.register.instruments import (
    ColumnNotTaken,
    instrument_lines,
    instrument_told,
    read_instrument_sheet,
    read_instruments,
    write_instrument,
)

Call = Callable[..., tuple[int, str, str]]
SHEET = (
    "name,kind,accuracy,proved,notes\n"
    "blue clamp,clamp ammeter,+/-2% + 5 counts,2026-03-02,\n"
    "probe,clamp-probe,,,in ice\n"
)
BAD = "x,meter,,,\ny,thermometer,very,,\nz,thermometer,1 psig,,\nw,thermometer,,12.3.26,\nPROBE,thermometer,,,\n"  # noqa: E501


@pytest.mark.parametrize(
    ("kind", "typed", "kept"),
    [
        ("voltmeter", "1 % + 3 counts", "1 % + 3 counts"),
        ("voltmeter", "+/-0.7%+2 digits", "0.7 % + 2 counts"),
        ("low-side-gauge", "1.5 psig", "1.5 psig"),
        ("thermometer", "0.1 % + 1.3 F", "0.1 % + 1.3 \u00b0F"),
        ("manometer", "2 %", "2 %"),
        ("manometer", "0.5 % + 0.002 in wc", "0.5 % + 0.002 in. w.c."),
        ("charging-scale", "0.5 % + 0.02 pounds", "0.5 % + 0.02 lb"),
    ],
)
def test_an_accuracy_is_taken_as_it_is_printed(kind: str, typed: str, kept: str) -> None:
    assert instrument_told("x", {"kind": kind, "accuracy": typed}).accuracy == kept
    assert instrument_told("x", {"kind": kind, "accuracy": kept}).accuracy == kept


@pytest.mark.parametrize("typed", ["very", "", "3", "1 % + 2 psig + 3", "1 psig"])
def test_what_is_no_accuracy_of_a_thermometer_is_refused_or_left_open(typed: str) -> None:
    if not typed:
        assert instrument_told("x", {"kind": "thermometer", "accuracy": typed}).accuracy == ""
        return
    with pytest.raises(ColumnNotTaken) as refused:
        instrument_told("x", {"kind": "thermometer", "accuracy": typed})
    assert refused.value.column == "accuracy"


def test_instruments_are_kept_and_read_back(tmp_path: Path) -> None:
    found = read_instrument_sheet(SHEET, "t.csv")
    for each in found.kept:
        write_instrument(tmp_path, each)
    (tmp_path / "broken.yaml").write_text("format: 1\nname: broken\nkind: hammer\n")
    read = read_instruments(tmp_path)
    assert read.kept == found.kept
    (problem,) = read.problems
    assert "broken.yaml: kind: no such kind of instrument" in problem
    clamp, probe = instrument_lines(read)
    assert clamp == "blue clamp: clamp-ammeter, +/-(2 % + 5 counts); last proved 2026-03-02"
    assert probe.startswith("probe: clamp-probe, +/-(0.1 % + 1.3 \u00b0F), as taken for its kind")
    assert probe.endswith("no proof on record; in ice")


def test_bad_rows_are_named_and_the_good_ones_kept_only_where_asked_for(
    command: Call, tmp_path: Path
) -> None:
    file = tmp_path / "i.csv"
    file.write_text(SHEET + BAD, "utf-8")
    code, out, err = command("units", "instruments", str(file))
    assert (code, out) == (3, "")
    for column in ("row 4, column kind", "row 5, column accuracy", "row 6, column accuracy",
                   "row 7, column proved", "row 8, column name"):  # fmt: skip
        assert column in err
    assert "No instrument is on record" in command("units", "instruments")[1]
    assert command("units", "instruments", str(file), "--good-rows")[:2] == (
        1, "Kept: 2 instruments.\n"
    )  # fmt: skip
    assert command("units", "instruments")[1].startswith("blue clamp: clamp-ammeter")


@pytest.mark.parametrize("heading", ["name,accuracy", "kind", "name,kind,colour"])
def test_a_heading_that_is_not_ours_is_refused(heading: str) -> None:
    with pytest.raises(NotUsable, match="no column"):
        read_instrument_sheet(f"{heading}\n", "t.csv")


def test_they_are_taken_up_with_the_rest(command: Call, tmp_path: Path) -> None:
    (tmp_path / "i.csv").write_text(SHEET, "utf-8")
    (tmp_path / "u.csv").write_text("name\nRTU-7\n", "utf-8")
    command("units", "instruments", str(tmp_path / "i.csv"))
    command("units", "import", str(tmp_path / "u.csv"))
    assert "blue clamp: clamp-ammeter" in command("units", "carry", "RTU-7")[1]
