"""Tables for spreadsheets: nothing written runs as a formula, and what was written is read back."""

from __future__ import annotations

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.table import read_table, write_table

RUNS = ("=", "+", "-", "@", "\t", "\r", "|", "%", "\uff1d", "\uff0b", "\uff0d", "\uff20")
"""What a spreadsheet takes for a formula (OWASP, "CSV Injection")."""
CELLS = st.text(st.characters(codec="utf-8", categories=("L", "N", "P", "S")), max_size=12)


@given(st.lists(st.sampled_from(["", "=1+1", "'", "'=x", " @a", "-0.6 in wc"]) | CELLS, min_size=1))
def test_what_is_written_is_read_back_and_runs_nowhere(cells: list[str]) -> None:
    heading = [f"h{number}" for number in range(len(cells))]
    rows = [dict(zip(heading, cells, strict=True)), {"h0": "so that no row is empty"}]
    text = write_table(heading, rows)
    for row in csv.reader(io.StringIO(text)):
        assert not any(cell.lstrip(" ").startswith(RUNS) for cell in row)
    read = read_table(text, "t.csv").rows
    if any(cells):
        assert list(read[0].cells.values()) == [cell.strip() for cell in cells]


def test_a_spreadsheets_own_file_is_read() -> None:
    """A byte order mark is the reader's affair; lines end as Windows ends them, commas are held."""
    table = read_table('name,serves\r\nRTU-1,"hall, west"\r\n,\r\nRTU-2,\r\n', "t.csv")
    assert [row.line for row in table.rows] == [2, 4]
    assert table.rows[0].cells == {"name": "RTU-1", "serves": "hall, west"}


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("", "it has no heading"),
        (",,\n", "it has no heading"),
        ("name,name\n", 'the column "name" stands in it twice'),
        ("name,,\n", "a column has no name"),
        ('name\n"RTU', "row 2 is no CSV"),
        (",".join(f"c{n}" for n in range(401)), "it has over 400 columns"),
    ],
)
def test_what_is_no_table_is_refused(text: str, what: str) -> None:
    with pytest.raises(NotUsable, match=f"^t.csv: {what}"):
        read_table(text, "t.csv")


def test_a_bad_row_is_marked_and_hides_no_other() -> None:
    rows = read_table("name,site\nA,b,c\nB\x1b,x\nC,d\n", "t.csv").rows
    assert rows[0].problem == "3 cells under 2 headings"
    assert rows[1].problem.startswith("column name: the control character U+001B")
    assert rows[2].cells == {"name": "C", "site": "d"}
