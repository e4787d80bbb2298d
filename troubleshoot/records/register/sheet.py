"""The register as one table, for a spreadsheet: a row a unit."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.table import Row, Table, read_table, write_table
from troubleshoot.reasoning.unit.equipment import InputRefused, suggest
from troubleshoot.records.register.columns import AT, NAME, columns_of
from troubleshoot.records.register.entry import Entry, cells_of, named, told
from troubleshoot.records.register.files import Register
from troubleshoot.visit.kept.no_name import is_no_name
from troubleshoot.visit.kept.unit_names import in_plain


@frozen
class BadCell:
    """What of a row cannot be taken: the row as a spreadsheet counts it, its column, and why.

    `column` is empty where it is the row itself.
    """

    row: int
    column: str
    problem: str

    def __str__(self) -> str:
        column = f", column {self.column}" if self.column else ""
        return f"row {self.row}{column}: {self.problem}"


@frozen
class Imported:
    """What a table tells: the units of its good rows, and what is wrong with the others.

    `new`: how many of the units the register does not have yet.
    """

    entries: tuple[Entry, ...]
    bad: tuple[BadCell, ...]
    new: int


def as_sheet(knowledge: Knowledge, entries: Sequence[Entry]) -> str:
    """These units as CSV, with every column of which one of them says something."""
    rows = [cells_of(entry) for entry in entries]
    said = {column for cells in rows for column in cells}
    order = [column.key for column in columns_of(knowledge)]
    known = {key: number for number, key in enumerate(order)}

    def by_plate(column: str) -> tuple[int, str]:
        key, _, place = column.partition(AT)
        return known[key], place

    return write_table([NAME, *sorted(said - {NAME}, key=by_plate)], rows)


def read_sheet(knowledge: Knowledge, text: str, where: str, register: Register) -> Imported:
    """The units that a table tells, each with what the register has of it already.

    An empty cell leaves what is on record. Raises NotUsable where the table has no heading of ours.
    """
    table = read_table(text, where)
    _check_heading(knowledge, table, where)
    entries: list[Entry] = []
    bad: list[BadCell] = []
    new = 0
    seen: dict[str, int] = {}
    for row in table.rows:
        wrong = list(_wrong_name(row, seen))
        if not wrong:
            name = row.cells[NAME]
            seen[in_plain(name)] = row.line
            known = register.entry(name)
            try:
                entries.append(told(knowledge, known or Entry(name), row.cells))
                new += known is None
            except InputRefused as error:
                wrong = [
                    BadCell(row.line, r.key, f"{r.problem}; {r.instead}") for r in error.refusals
                ]
        bad += wrong
    return Imported(tuple(entries), tuple(bad), new)


def _check_heading(knowledge: Knowledge, table: Table, where: str) -> None:
    """Raises NotUsable with the first column that is none of ours."""
    known = [column.key for column in columns_of(knowledge)]
    if NAME not in table.heading:
        raise NotUsable(where, "it has no column name", "give each unit's name under it")
    for column in table.heading:
        if column.partition(AT)[0] not in known:
            raise NotUsable(where, f'no column is called "{column}"', suggest(column, known))


def _wrong_name(row: Row, seen: Mapping[str, int]) -> Iterator[BadCell]:
    """What is wrong with a row before its cells are looked at."""
    if row.problem:
        yield BadCell(row.line, "", row.problem)
        return
    try:
        name = named(row.cells.get(NAME, ""), NAME)
    except NotUsable as error:
        yield BadCell(row.line, NAME, f"{error.what}; {error.instead}")
        return
    if is_no_name(name):
        yield BadCell(row.line, NAME, f'"{name}" is no unit\'s name; give what it is called')
    elif (before := seen.get(in_plain(name))) is not None:
        yield BadCell(row.line, NAME, f'"{name}" is the unit of row {before} already')


def rows_bad(bad: Iterable[BadCell]) -> int:
    """How many rows are not taken."""
    return len({cell.row for cell in bad})
