"""The instruments that are taken up: what each is, its accuracy, when it was last proved."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from datetime import date
from pathlib import Path
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.outside.refusal import NotUsable, in_a_line
from troubleshoot.outside.table import Row, read_table
from troubleshoot.outside.text import MOST_TYPED
from troubleshoot.quantities.instruments import COMMON_PRACTICE, INSTRUMENTS, Instrument
from troubleshoot.quantities.typed_text import Unclear
from troubleshoot.quantities.typed_units import read_unit
from troubleshoot.quantities.units import unit as unit_of
from troubleshoot.reasoning.unit.equipment import suggest
from troubleshoot.records.register.columns import NAME, NOTES, NotTaken
from troubleshoot.records.register.entry import named
from troubleshoot.records.register.files import name_and_cells, path_of, paths_in
from troubleshoot.records.register.flat import NotRead, write_flat
from troubleshoot.records.register.sheet import BadCell
from troubleshoot.visit.kept.names import natural
from troubleshoot.visit.kept.unit_names import in_plain

KIND, ACCURACY, PROVED, DUE = "kind", "accuracy", "proved", "due"
COLUMNS: Final = (NAME, KIND, ACCURACY, PROVED, DUE, NOTES)
AS_PRINTED: Final = "as printed, with its unit: 1 % + 3 counts, or 0.1 % + 1.3 F"

_ACCURACY: Final = re.compile(
    r"(?:\+/?-|±)?\s*(?:(?P<percent>\d+(?:\.\d+)?)\s*%)?"
    r"(?:\s*\+?\s*(?P<counts>\d+)\s*(?:counts?|digits?))?"
    r"(?:\s*\+?\s*(?P<fixed>\d+(?:\.\d+)?)\s*(?P<unit>[^\d\s+].*))?"
)


@frozen
class OnHand:
    """One instrument. `accuracy`: as kept; empty where that of its kind is taken.

    `proved`: the day of its last proof; `due`: the day until which that holds, where it is told.
    """

    name: str
    kind: str
    accuracy: str = ""
    proved: str = ""
    due: str = ""
    notes: str = ""


@frozen
class Instruments:
    """All instruments of a folder by name, and a sentence for each file that cannot be read."""

    kept: tuple[OnHand, ...]
    problems: tuple[str, ...] = ()


@frozen
class TakenIn:
    """The instruments of a table's good rows, and what is wrong with the others."""

    kept: tuple[OnHand, ...]
    bad: tuple[BadCell, ...]


def instrument_told(name: str, cells: Mapping[str, str]) -> OnHand:
    """An instrument by its cells. Raises ColumnNotTaken."""
    kind = "-".join(cells.get(KIND, "").lower().split())
    if kind not in INSTRUMENTS:
        raise ColumnNotTaken(KIND, "no such kind of instrument", suggest(kind, INSTRUMENTS))
    accuracy, notes = (cells.get(each, "") for each in (ACCURACY, NOTES))
    proved, due = (_day(each, cells.get(each, "")) for each in (PROVED, DUE))
    if len(notes) > MOST_TYPED:
        raise ColumnNotTaken(NOTES, f"more than {MOST_TYPED} letters", "say it in fewer")
    kept = _accuracy(INSTRUMENTS[kind], accuracy) if accuracy else ""
    return OnHand(name, kind, kept, proved, due, notes)


class ColumnNotTaken(NotTaken):
    """What stands in a column of an instrument cannot be taken."""

    def __init__(self, column: str, problem: str, instead: str) -> None:
        super().__init__(problem, instead)
        self.column = column


def _accuracy(kind: Instrument, typed: str) -> str:
    """An accuracy as it is kept. Raises ColumnNotTaken."""
    found = _ACCURACY.fullmatch(typed.strip())
    if found is None or not any(found.group("percent", "counts", "fixed")):
        raise ColumnNotTaken(ACCURACY, f'"{typed}" is no accuracy', AS_PRINTED)
    if found["unit"] and not _is_its_unit(kind, found["unit"].strip()):
        said, spoken = found["unit"].strip(), unit_of(kind.unit).spoken
        raise ColumnNotTaken(ACCURACY, f'"{said}" is not its unit', f"in {spoken}")
    return accuracy_words(
        kind, float(found["percent"] or 0), float(found["counts"] or 0), float(found["fixed"] or 0)
    )


def _is_its_unit(kind: Instrument, typed: str) -> bool:
    """Whether an instrument of this kind is read in a unit, however people spell that."""
    try:
        return read_unit(typed, unit_of(kind.unit)) in (None, kind.unit)
    except Unclear:
        return False


def accuracy_words(kind: Instrument, percent: float, counts: float, fixed: float) -> str:
    """An accuracy as it is printed on an instrument: of the reading, counts, and what is fixed."""
    parts = (
        f"{percent:g} %" if percent else "",
        f"{counts:g} counts" if counts else "",
        f"{fixed:g} {unit_of(kind.unit).spoken}" if fixed else "",
    )
    return " + ".join(filter(None, parts))


def accuracy_of(kept: OnHand) -> str:
    """What is known of an instrument's accuracy, or what is taken for one of its kind."""
    if kept.accuracy:
        return f"+/-({kept.accuracy})"
    kind = INSTRUMENTS[kept.kind]
    taken = accuracy_words(kind, kind.percent, kind.counts, kind.fixed)
    source = "" if kind.source == COMMON_PRACTICE else f", {kind.source}"
    return f"+/-({taken}), as taken for its kind{source}"


def accuracy_in_numbers(kept: OnHand) -> tuple[float, float, float]:
    """Percent of the reading, counts, and what is fixed in its kind's unit; as it was taken."""
    found = _ACCURACY.fullmatch(kept.accuracy)
    assert found is not None, "accuracies are kept as they are written here"
    percent, counts, fixed = (float(found[each] or 0) for each in ("percent", "counts", "fixed"))
    return percent, counts, fixed


def _day(column: str, typed: str) -> str:
    if not typed:
        return ""
    try:
        return date.fromisoformat(typed).isoformat()
    except ValueError:
        raise ColumnNotTaken(column, f'"{typed}" is no day', "write it as 2026-05-12") from None


def read_instruments(folder: Path) -> Instruments:
    """Every instrument of a folder; one bad file hides no other."""
    kept, problems = [], []
    for path in paths_in(folder):
        try:
            kept.append(instrument_told(*name_and_cells(path)))
        except NotRead as error:
            problems.append(str(error))
        except ColumnNotTaken as error:
            problems.append(f"{in_a_line(str(path))}: {error.column}: {error}")
    kept.sort(key=lambda each: natural(each.name))
    return Instruments(tuple(kept), tuple(problems))


def write_instrument(folder: Path, kept: OnHand) -> None:
    """Keep an instrument. Raises NotWritten."""
    cells = dict(
        zip(
            COLUMNS,
            (kept.name, kept.kind, kept.accuracy, kept.proved, kept.due, kept.notes),
            strict=True,
        )
    )
    write_flat(path_of(folder, kept.name), {key: said for key, said in cells.items() if said})


def read_instrument_sheet(text: str, where: str) -> TakenIn:
    """The instruments that a table tells. Raises NotUsable where it has no heading of ours."""
    table = read_table(text, where)
    for needed in (NAME, KIND):
        if needed not in table.heading:
            raise NotUsable(where, f"it has no column {needed}", f"of {', '.join(COLUMNS)}")
    for column in table.heading:
        if column not in COLUMNS:
            raise NotUsable(where, f'no column is called "{column}"', suggest(column, COLUMNS))
    kept, bad, seen = [], [], set[str]()
    for row in table.rows:
        try:
            each = _of_row(row, seen)
        except ColumnNotTaken as error:
            bad.append(BadCell(row.line, error.column, str(error)))
        else:
            seen.add(in_plain(each.name))
            kept.append(each)
    return TakenIn(tuple(kept), tuple(bad))


def _of_row(row: Row, seen: set[str]) -> OnHand:
    """Raises ColumnNotTaken."""
    if row.problem:
        raise ColumnNotTaken("", row.problem, "put that right")
    try:
        name = named(row.cells.get(NAME, ""), NAME)
    except NotUsable as error:
        raise ColumnNotTaken(NAME, error.what, "type its name") from None
    if in_plain(name) in seen:
        raise ColumnNotTaken(NAME, f'"{name}" stands there twice', "name each once")
    return instrument_told(name, row.cells)


def instrument_lines(instruments: Instruments) -> Iterator[str]:
    """What is on record of each instrument, a sentence each."""
    for each in instruments.kept:
        proved = f"last proved {each.proved}" if each.proved else "no proof on record"
        due = f", holds until {each.due}" if each.due else ""
        notes = f"; {each.notes}" if each.notes else ""
        yield f"{each.name}: {each.kind}, {accuracy_of(each)}; {proved}{due}{notes}"
