"""Tables as spreadsheets read and write them: CSV (RFC 4180) in UTF-8, a heading first.

A cell that a spreadsheet would run as a formula is written with an apostrophe before it, which is
taken off again when the table is read.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import MOST_TYPED, one_line

FORMULA: Final = tuple("=+-@|%\uff1d\uff0b\uff0d\uff20")
"""What a spreadsheet takes for the beginning of a formula (OWASP, CSV injection), the wide forms of
a keyboard too."""
_TRIMMED: Final = ("\t", "\r")
"""Behind these one may begin once a spreadsheet has trimmed the cell."""
MOST_COLUMNS: Final = 400
_QUOTE: Final = "'"


@frozen
class Row:
    """One row below the heading: the number of its line in the file, its cells by heading.

    `problem`: what is wrong with the row itself; its cells are then not to be used.
    """

    line: int
    cells: Mapping[str, str]
    problem: str = ""


@frozen
class Table:
    """A table's heading and rows, in the order of the file."""

    heading: tuple[str, ...]
    rows: tuple[Row, ...]


def read_table(text: str, where: str) -> Table:
    """The table in a text; empty rows are left out. Raises NotUsable where there is no heading."""
    heading, rows = begin_table(io.StringIO(text), where)
    return Table(heading, tuple(rows))


def begin_table(lines: Iterable[str], where: str) -> tuple[tuple[str, ...], Iterator[Row]]:
    """The heading of a table, and its rows as they are asked for: none is kept.

    Raises NotUsable where there is no heading, and at a row from which on there is no CSV.
    """
    reader = csv.reader(lines, strict=True)
    try:
        heading = tuple(_own(cell).strip() for cell in next(reader, ()))
    except csv.Error as error:
        raise NotUsable(where, f"its heading is no CSV ({error})", "save it as CSV") from None
    if not any(heading):
        raise NotUsable(where, "it has no heading", "name the columns in its first row")
    if len(heading) > MOST_COLUMNS:
        raise NotUsable(where, f"it has over {MOST_COLUMNS} columns", "leave some out")
    twice = next((name for name in heading if heading.count(name) > 1), None)
    if twice is not None:
        said = f'the column "{twice}" stands in it twice' if twice else "a column has no name"
        raise NotUsable(where, said, "name each column once")
    return heading, _rows(reader, heading, where)


def _rows(reader: Iterator[list[str]], heading: Sequence[str], where: str) -> Iterator[Row]:
    line = 1
    while True:
        line += 1
        try:
            cells = next(reader)
        except StopIteration:
            return
        except csv.Error as error:
            raise NotUsable(where, f"row {line} is no CSV ({error})", "save it as CSV") from None
        if any(cell.strip() for cell in cells):
            yield _row(line, cells, heading)


def _row(line: int, cells: Sequence[str], heading: Sequence[str]) -> Row:
    if len(cells) > len(heading):
        return Row(line, {}, f"{len(cells)} cells under {len(heading)} headings")
    held = {}
    for name, cell in zip(heading, cells, strict=False):
        try:
            held[name] = one_line(_own(cell), name, MOST_TYPED)
        except NotUsable as error:
            return Row(line, {}, f"column {name}: {error.what}")
    return Row(line, held)


def write_table(heading: Sequence[str], rows: Iterable[Mapping[str, str]]) -> str:
    """A table as CSV; a column of which a row says nothing is empty there."""
    return "".join(table_lines(heading, rows))


def table_lines(heading: Sequence[str], rows: Iterable[Mapping[str, str]]) -> Iterator[str]:
    """The same line by line, each with its end, as the rows come."""
    yield _line(heading)
    for row in rows:
        yield _line([row.get(name, "") for name in heading])


def _line(cells: Iterable[str]) -> str:
    stream = io.StringIO()
    csv.writer(stream).writerow(map(_safe, cells))
    return stream.getvalue()


def runs(cell: str) -> bool:
    """Whether a spreadsheet may run a cell as a formula."""
    return cell.lstrip(" ").startswith(_TRIMMED) or cell.lstrip().startswith(FORMULA)


def _safe(cell: str) -> str:
    """A cell that no spreadsheet runs; one that begins with an apostrophe keeps it."""
    return f"{_QUOTE}{cell}" if _is_guarded(cell) else cell


def _own(cell: str) -> str:
    """What was written in a cell, without the apostrophe that made it safe."""
    inside = cell.removeprefix(_QUOTE)
    return inside if inside != cell and _is_guarded(inside) else cell


def _is_guarded(cell: str) -> bool:
    return runs(cell) or cell.lstrip(" ").startswith(_QUOTE)
