"""Refrigerant as one table: a row a weighing, written for a spreadsheet and taken over from one."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import date
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.numbers import whole_number
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.table import Row, read_table, write_table
from troubleshoot.reasoning.unit.equipment import read_unit, suggest
from troubleshoot.reasoning.unit.places import Layout
from troubleshoot.records.past_visits import DATE, UNIT
from troubleshoot.records.refrigerant.moved import Moved
from troubleshoot.records.register.files import Register
from troubleshoot.records.register.sheet import BadCell
from troubleshoot.visit.hearing.weighed import NotWeighed, circuits_of, weighing_of
from troubleshoot.visit.weighing import ADDED, RECOVERED, Weighing

CIRCUIT, WAY, WEIGHT, CYLINDER = "circuit", "way", "weight", "cylinder"
BEFORE, AFTER, TARE, VISIT, POUNDS = "before", "after", "tare", "visit", "pounds"
COLUMNS: Final = (UNIT, DATE, CIRCUIT, WAY, WEIGHT, CYLINDER, BEFORE, AFTER, TARE)
WRITTEN: Final = (*COLUMNS, POUNDS, VISIT)
"""What is written besides tells of a visit; such a row is not taken over again."""
_WAYS: Final = (ADDED, RECOVERED)

Told = tuple[str, date, Weighing]
"""A unit by its name in the register, a day, and what was weighed."""


@frozen
class TakenOver:
    """The weighings of a table's good rows, and what is wrong with the others.

    `of_visits`: rows that a visit's own journal tells; they are left out.
    """

    told: tuple[Told, ...]
    bad: tuple[BadCell, ...]
    of_visits: int = 0


class _NotTaken(ValueError):
    """A row cannot be taken: in which column, and why."""

    def __init__(self, column: str, problem: str) -> None:
        super().__init__(problem)
        self.column = column


def as_refrigerant_sheet(moved: Iterable[tuple[str, Moved]]) -> str:
    """Weighings as CSV, each with its unit; no cell of it runs as a formula."""
    return write_table(WRITTEN, (_cells(unit, each) for unit, each in moved))


def _cells(unit: str, each: Moved) -> Mapping[str, str]:
    weighing = each.weighing
    return {
        UNIT: unit,
        DATE: each.day.isoformat(),
        CIRCUIT: weighing.circuit,
        WAY: weighing.way,
        WEIGHT: weighing.weight,
        CYLINDER: weighing.cylinder,
        BEFORE: weighing.before,
        AFTER: weighing.after,
        TARE: weighing.tare,
        POUNDS: "" if each.pounds is None else f"{each.pounds:.3f}",
        VISIT: each.visit,
    }


def read_refrigerant_sheet(
    knowledge: Knowledge,
    text: str,
    where: str,
    register: Register,
    known: Iterable[Told],
    today: date,
) -> TakenOver:
    """The weighings that a table tells of units of the register.

    `known`: those on record, which are not taken twice; `today`: no day lies behind it. Raises
    NotUsable where the table has no heading of ours.
    """
    table = read_table(text, where)
    for needed in (UNIT, DATE, WAY):
        if needed not in table.heading:
            raise NotUsable(where, f"it has no column {needed}", f"of {', '.join(COLUMNS)}")
    for column in table.heading:
        if column not in WRITTEN:
            raise NotUsable(where, f'no column is called "{column}"', suggest(column, WRITTEN))
    told, bad, of_visits = [], [], 0
    seen = set(known)
    for row in table.rows:
        if not row.problem and row.cells.get(VISIT):
            of_visits += 1
            continue
        try:
            each = _told(knowledge, row, register)
            if each[1] > today:
                raise _NotTaken(DATE, f"{each[1]} is still to come")
            if each in seen:
                raise _NotTaken("", "it is on record already")
        except _NotTaken as error:
            bad.append(BadCell(row.line, error.column, str(error)))
        else:
            seen.add(each)
            told.append(each)
    return TakenOver(tuple(told), tuple(bad), of_visits)


def _told(knowledge: Knowledge, row: Row, register: Register) -> Told:
    """Raises _NotTaken."""
    if row.problem:
        raise _NotTaken("", row.problem)
    entry = register.entry(row.cells[UNIT])
    if entry is None:
        raise _NotTaken(UNIT, f'the register has no unit "{row.cells[UNIT]}"')
    try:
        day = date.fromisoformat(row.cells.get(DATE, ""))
    except ValueError:
        said = row.cells.get(DATE, "")
        raise _NotTaken(DATE, f'"{said}" is no day; write it as 2026-05-12') from None
    way = row.cells.get(WAY, "").lower()
    if way not in _WAYS:
        raise _NotTaken(WAY, f'"{way}" is no answer here; one of {", ".join(_WAYS)}')
    layout = circuits_of(read_unit(knowledge, entry.unit))
    return entry.name, day, _weighing(knowledge, layout, way, row.cells)


def _weighing(
    knowledge: Knowledge, layout: Layout | None, way: str, cells: Mapping[str, str]
) -> Weighing:
    """What a row weighs. Raises _NotTaken."""
    circuit = cells.get(CIRCUIT, "")
    named = f"circuit {circuit}" if whole_number(circuit) else circuit
    try:
        return weighing_of(knowledge, layout, way, {**cells, CIRCUIT: named})
    except NotWeighed as error:
        raise _NotTaken(error.part, str(error)) from None
