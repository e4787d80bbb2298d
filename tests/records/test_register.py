"""The register of units: files, the table, and what is no answer in a column."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.reasoning.unit.equipment import InputRefused
from troubleshoot.records.register.columns import columns_of
from troubleshoot.records.register.entry import Entry, cells_of, told
from troubleshoot.records.register.files import (
    Register,
    path_of,
    read_entry,
    read_register,
    write_entry,
)
from troubleshoot.records.register.flat import NotRead, NotWritten
from troubleshoot.records.register.sheet import as_sheet, read_sheet

EMPTY = Register((), ())
CELLS: Mapping[str, str] = {
    "site": "=SUM(A1)",
    "matters": "Critical",
    "refrigerant": "410a",
    "circuits": "2",
    "condenser-fans": "2",
    "compressor-rla at compressor 1": "8.9 A",
    "compressor-rla at compressor 2": "9.1 A",
    "pressure-switch-set-point": "-0.65 in wc",
    "nameplate-volts": "208/230",
    "filters": "2 x 20X25X2; 16x20x1",
    "belts": "a38",
    "capacitor-cans": "2 of 45/5 uF, 10",
    "can-tolerance": "+/-6%",
    "can-volts": "440 VAC",
    "fuse-class": "class RK-5",
}


@pytest.fixture
def unit(shipped: Knowledge) -> Entry:
    return told(shipped, Entry("RTU-7"), CELLS)


def test_what_is_told_is_kept_as_the_trade_writes_it(unit: Entry) -> None:
    assert unit.own == {
        "site": "=SUM(A1)",
        "matters": "critical",
        "filters": "2 of 20x25x2, 1 of 16x20x1",
        "belts": "1 of A38",
        "capacitor-cans": "2 of 45/5 uF, 1 of 10 uF",
        "can-tolerance": "6 %",
        "can-volts": "440 V",
        "fuse-class": "RK5",
    }
    assert unit.unit["refrigerant"] == "R-410A"
    assert unit.unit["compressor-rla"] == {"compressor 1": "8.9 A", "compressor 2": "9.1 A"}


@pytest.mark.parametrize(
    ("column", "words"),
    [
        ("matters", "a lot"),
        ("refrigerant", "R-999"),
        ("circuits", "9"),
        ("compressor-rla at compressor 2", "12"),
        ("compressor-rla at the roof", "12"),
        ("compressor-rla", "twelve"),
        ("filters", "two"),
        ("belts", "20x25x2"),
        ("capacitor-cans", "45/5/2"),
        ("can-tolerance", "60 %"),
        ("can-volts", "hot"),
        ("fuse-class", "Z"),
        ("site at circuit 1", "x"),
        ("refrigerent", "R-22"),
        ("model", "m" * 81),
    ],
)
def test_what_is_no_answer_is_refused_by_its_column(
    shipped: Knowledge, column: str, words: str
) -> None:
    with pytest.raises(InputRefused) as refused:
        told(shipped, Entry("RTU-7"), {column: words})
    assert {each.key for each in refused.value.refusals} == {column}


def test_a_unit_is_found_however_its_name_is_typed(
    shipped: Knowledge, unit: Entry, tmp_path: Path
) -> None:
    write_entry(tmp_path / "units", unit)
    assert read_entry(shipped, tmp_path / "units", "rtu 07") == unit
    assert read_entry(shipped, tmp_path / "units", "RTU-8") is None
    assert read_entry(shipped, tmp_path / "units", "../x") is None
    assert [path.name for path in (tmp_path / "units").iterdir()] == ["rtu7.yaml"]


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("format: 2\nname: RTU-7\n", "its format is 2, and this version reads 1"),
        ("format: 1\n", "a unit's name has letters or digits"),
        ("format: 1\nname: RTU-8\n", 'it is of "RTU-8"; call the file rtu8.yaml'),
        ("format: 1\nname: RTU-7\nrefrigerant: R-999\n", "refrigerant: "),
        ("format: 1\nname: [\n", "rtu7.yaml"),
        ("\x00", "rtu7.yaml"),
    ],
)
def test_a_file_that_cannot_be_read_is_named_and_hides_no_other(
    shipped: Knowledge, tmp_path: Path, text: str, why: str
) -> None:
    write_entry(tmp_path, Entry("RTU-10"))
    write_entry(tmp_path, Entry("RTU-9"))
    path_of(tmp_path, "RTU-7").write_text(text)
    register = read_register(shipped, tmp_path)
    assert [entry.name for entry in register.entries] == ["RTU-9", "RTU-10"]
    (problem,) = register.problems
    assert why in problem
    with pytest.raises(NotRead):
        read_entry(shipped, tmp_path, "RTU-7")


def test_a_unit_that_cannot_be_kept_leaves_the_old_one_whole(
    shipped: Knowledge, unit: Entry, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write_entry(tmp_path, unit)
    monkeypatch.setattr("os.fsync", _full)
    with pytest.raises(NotWritten, match="No space left"):
        write_entry(tmp_path, Entry("RTU-7"))
    assert read_entry(shipped, tmp_path, "RTU-7") == unit
    assert len([*tmp_path.iterdir()]) == 1


def _full(_: int) -> None:
    raise OSError(28, "No space left on device")


def test_a_table_of_the_register_is_read_back(shipped: Knowledge, unit: Entry) -> None:
    text = as_sheet(shipped, (unit, Entry("RTU-8", {"site": "north"})))
    assert "'=SUM(A1)" in text and "'-0.65 in wc" in text
    found = read_sheet(shipped, text, "t.csv", EMPTY)
    assert found.bad == () and found.new == 2
    assert [cells_of(each) for each in found.entries] == [
        cells_of(unit), {"name": "RTU-8", "site": "north"}
    ]  # fmt: skip


def test_bad_rows_are_named_with_row_and_column_and_the_good_ones_are_told(
    shipped: Knowledge,
) -> None:
    text = (
        "name,site,refrigerant,compressor-rla at compressor 2\n"
        "RTU-1,north,R-22,\n"
        "RTU-2,north,R-999,9 A\n"
        ",north,,\n"
        "rtu 01,south,,\n"
        "RTU-3,a,b,c,d\n"
    )
    found = read_sheet(shipped, text, "t.csv", EMPTY)
    assert [entry.name for entry in found.entries] == ["RTU-1"]
    assert [str(cell).split(":")[0] for cell in found.bad] == [
        "row 3, column refrigerant",
        "row 3, column compressor-rla at compressor 2",
        "row 4, column name",
        "row 5, column name",
        "row 6",
    ]


def test_an_empty_cell_leaves_what_is_on_record(shipped: Knowledge, unit: Entry) -> None:
    text = "name,site,matters\nrtu 7,south,\n"
    found = read_sheet(shipped, text, "t.csv", Register((unit,), ()))
    assert found.new == 0
    assert found.entries[0].own == {**unit.own, "site": "south"}
    assert found.entries[0].name == "RTU-7"


@pytest.mark.parametrize(
    ("heading", "why"),
    [("site", "it has no column name"), ("name,refrigerent", "did you mean refrigerant")],
)
def test_a_heading_that_is_not_ours_is_refused(shipped: Knowledge, heading: str, why: str) -> None:
    with pytest.raises(NotUsable, match=why):
        read_sheet(shipped, f"{heading}\nx\n", "t.csv", EMPTY)


def test_every_fact_and_value_that_visits_know_has_its_column(shipped: Knowledge) -> None:
    keys = [column.key for column in columns_of(shipped)]
    assert len(keys) == len({*keys})
    assert {*shipped.facts, *shipped.plate_values} < {*keys}
