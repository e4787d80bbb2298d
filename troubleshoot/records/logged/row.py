"""One row of logged readings as a case, as a file of readings would tell it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.table import Row
from troubleshoot.reasoning.readings.answers import Case
from troubleshoot.reasoning.unit.equipment import InputRefused, Refusal
from troubleshoot.records.logged.heading import CALL, SEVERAL, UNIT, Heading
from troubleshoot.records.register.columns import AT
from troubleshoot.records.register.entry import Entry
from troubleshoot.records.register.sheet import BadCell
from troubleshoot.visit.cases.file import ROUTINE, read_case

_READING: Final = "readings["


class RowRefused(ValueError):
    """A row is not understood: its bad cells.

    `data`: what it tells all the same, for a danger in it is told however it is written.
    """

    def __init__(self, bad: tuple[BadCell, ...], data: Mapping[str, object]) -> None:
        super().__init__("; ".join(map(str, bad)))
        self.bad = bad
        self.data = data


def case_of(knowledge: Knowledge, heading: Heading, row: Row, entry: Entry | None) -> Case:
    """The case of one row: what is on record of its unit, and above it what the row itself tells.

    Raises RowRefused with every cell that is not understood.
    """
    told = [column for column in heading.readings if row.cells.get(column)]
    data = {
        "unit": _unit(heading, row, entry),
        "conditions": _told(row, heading.conditions),
        "complaint": row.cells.get(CALL) or ROUTINE,
        "readings": [_reading(knowledge, column, row.cells[column]) for column in told],
    }
    wrong = tuple(_wrong(row, heading, entry))
    if wrong:
        raise RowRefused(wrong, data)
    try:
        return read_case(knowledge, data)
    except InputRefused as error:
        cells = (_cell(row, told, refusal) for refusal in error.refusals)
        raise RowRefused(tuple(cells), data) from None


def _told(row: Row, columns: tuple[str, ...]) -> dict[str, str]:
    """The cells of these columns in which something stands."""
    return {column: cell for column in columns if (cell := row.cells.get(column, ""))}


def _unit(heading: Heading, row: Row, entry: Entry | None) -> dict[str, object]:
    known: dict[str, object] = {} if entry is None else dict(entry.unit)
    for column, cell in _told(row, heading.of_unit).items():
        key, _, place = column.partition(AT)
        before = known.get(key)
        others = before if isinstance(before, Mapping) else {}
        known[key] = {**others, place: cell} if place else cell
    return known


def _reading(knowledge: Knowledge, column: str, cell: str) -> dict[str, object]:
    name, _, place = column.partition(AT)
    answer: object = cell
    if knowledge.tests[name].choose == "several" and SEVERAL in cell:
        answer = [each.strip() for each in cell.split(SEVERAL)]
    return {"test": name, "answer": answer, **({"at": place} if place else {})}


def _wrong(row: Row, heading: Heading, entry: Entry | None) -> Iterator[BadCell]:
    """What is wrong with a row before its readings are looked at."""
    if row.problem:
        yield BadCell(row.line, "", row.problem)
    elif not row.cells.get(UNIT):
        yield BadCell(row.line, UNIT, "it names no unit; a row is one unit at one moment")
    elif entry is None and not _told(row, heading.of_unit):
        name = row.cells[UNIT]
        said = f'the register has no unit "{name}", and the row tells no fact of it'
        yield BadCell(row.line, UNIT, f"{said}; see: troubleshoot units list")


def _cell(row: Row, told: list[str], refusal: Refusal) -> BadCell:
    """A refusal of readings[3].text, or of unit.compressor-rla.compressor 2, by its column."""
    problem = f"{refusal.problem}; {refusal.instead}"
    if refusal.key.startswith(_READING):
        number = refusal.key.removeprefix(_READING).partition("]")[0]
        return BadCell(row.line, told[int(number)], problem)
    head, _, rest = refusal.key.partition(".")
    key, _, place = rest.partition(".")
    return BadCell(row.line, f"{key}{AT}{place}" if place else key or head, problem)
