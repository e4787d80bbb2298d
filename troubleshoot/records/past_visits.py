"""Numbers of earlier visits, taken over from a table: a row a visit, a column a reading.

What is taken over is history: it is kept as closed visits, and a row that holds a STOP is refused,
since a STOP is met on a visit and lifted by its finding alone.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import date
from pathlib import Path
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.table import Row, read_table
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.measuring import read_text
from troubleshoot.reasoning.unit.equipment import Unit, read_unit, suggest
from troubleshoot.reasoning.unit.places import Place, PlaceNotUnderstood, parse_place
from troubleshoot.records.register.columns import AT
from troubleshoot.records.register.entry import Entry
from troubleshoot.records.register.files import Register
from troubleshoot.records.register.sheet import BadCell
from troubleshoot.safety.stops.lifting import conclude_visit, standing_stop
from troubleshoot.visit.cases.file import ROUTINE
from troubleshoot.visit.events import Answered, Event, Noted, Started, VisitEnded, replay
from troubleshoot.visit.events.codec import record_of
from troubleshoot.visit.kept.journal import Journal
from troubleshoot.visit.kept.names import next_name

UNIT: Final = "unit"
DATE: Final = "date"
NOON: Final = "T12:00:00+00:00"
"""The hour of a visit of which only the day is known."""


@frozen
class PastVisit:
    """One visit as its row tells it, with the day that names it."""

    day: str
    events: tuple[Event, ...]


@frozen
class PastVisits:
    """The visits of a table's good rows, and what is wrong with the others."""

    visits: tuple[PastVisit, ...]
    bad: tuple[BadCell, ...]


class _NotTaken(ValueError):
    """A row cannot be taken: in which column, and why."""

    def __init__(self, column: str, problem: str) -> None:
        super().__init__(problem)
        self.column = column
        self.problem = problem


def read_past_visits(knowledge: Knowledge, text: str, where: str, register: Register) -> PastVisits:
    """The visits that a table tells of units of the register; an empty cell was not read.

    Raises NotUsable where the table has no heading of ours.
    """
    table = read_table(text, where)
    for needed in (UNIT, DATE):
        if needed not in table.heading:
            raise NotUsable(where, f"it has no column {needed}", "a row is a visit to a unit")
    tests = {name: _test(knowledge, name, where) for name in table.heading[:] if _is_test(name)}
    reasoner = Reasoner(knowledge)
    visits, bad = [], []
    for row in table.rows:
        try:
            visits.append(_visit(reasoner, row, tests, register, where))
        except _NotTaken as error:
            bad.append(BadCell(row.line, error.column, error.problem))
    return PastVisits(tuple(visits), tuple(bad))


def keep_past_visits(folder: Path, past: PastVisits, header: Mapping[str, object]) -> None:
    """Keep these as closed visits of their days. `header`: program and rules. Raises JournalError.

    Each is on the disk, whole, before the next.
    """
    for visit in past.visits:
        journal = Journal.create(
            folder, next_name(folder, visit.day), {**header, "date": visit.day}
        )
        with journal:
            journal.append(*map(record_of, visit.events))


def _is_test(name: str) -> bool:
    return name not in (UNIT, DATE)


def _test(knowledge: Knowledge, column: str, where: str) -> Test:
    """The test that a column is of. Raises NotUsable."""
    name = column.partition(AT)[0]
    numbers = {test.id: test for test in knowledge.tests.values() if test.reads}
    if name not in numbers:
        raise NotUsable(where, f'no reading is called "{column}"', suggest(name, numbers))
    return numbers[name]


def _visit(
    reasoner: Reasoner, row: Row, tests: Mapping[str, Test], register: Register, where: str
) -> PastVisit:
    """Raises _NotTaken."""
    if row.problem:
        raise _NotTaken("", row.problem)
    knowledge = reasoner.knowledge
    entry = register.entry(row.cells[UNIT])
    if entry is None:
        raise _NotTaken(UNIT, f'the register has no unit "{row.cells[UNIT]}"')
    day = _day(row.cells.get(DATE, ""))
    unit = read_unit(knowledge, entry.unit)
    answers = tuple(_answers(knowledge, unit, row, tests, f"{day}{NOON}"))
    events = (*_begun(entry, day, f"taken over from {where}, row {row.line}"), *answers)
    state = replay(knowledge, events)
    fired = standing_stop(knowledge, state, conclude_visit(reasoner, state))
    if fired is not None:
        raise _NotTaken(
            "", f"{fired.hazard.spoken} is a STOP, and no history: begin a visit with that reading"
        )
    return PastVisit(day, (*events, VisitEnded("closed", time=f"{day}{NOON}")))


def _begun(entry: Entry, day: str, note: str) -> tuple[Event, ...]:
    time = f"{day}{NOON}"
    begun = Started(entry.name, ROUTINE, routine=True, unit=entry.unit, time=time)
    return begun, Noted(note, time=time)


def _day(typed: str) -> str:
    try:
        return date.fromisoformat(typed).isoformat()
    except ValueError:
        raise _NotTaken(DATE, f'"{typed}" is no day; write it as 2026-05-12') from None


def _answers(
    knowledge: Knowledge, unit: Unit, row: Row, tests: Mapping[str, Test], time: str
) -> Iterator[Answered]:
    """Each reading of a row. Raises _NotTaken for the first that cannot be one."""
    for column, test in tests.items():
        text = row.cells.get(column, "")
        if not text:
            continue
        try:
            read_text(test, text, knowledge)
            at = _place(unit, test, column.partition(AT)[2])
        except NotUnderstood as error:
            raise _NotTaken(column, f"{error.why}; {error.instead}") from None
        except PlaceNotUnderstood as error:
            raise _NotTaken(column, str(error)) from None
        yield Answered(test.id, (str(at),) if at else None, text=text, time=time)


def _place(unit: Unit, test: Test, words: str) -> Place | None:
    """Where a reading was taken; None for the unit as a whole. Raises PlaceNotUnderstood."""
    places = unit.layout.places(test.per)
    if not words:
        if len(places) == 1:
            return places[0]
        names = " or ".join(map(str, places)) or "no such place here"
        raise PlaceNotUnderstood("it does not say where", f"of: {names}")
    (first, *_) = parse_place(words, test.per, unit.layout)
    return first
