"""`troubleshoot assess --all`: the causes of every row of a table of logged readings."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager, nullcontext
from pathlib import Path
from typing import TYPE_CHECKING

import click

from troubleshoot.cli.door import put_data, tell, told
from troubleshoot.cli.failures import CHECKS_FOUND, USAGE, Failure
from troubleshoot.cli.practice.files import unwritable
from troubleshoot.cli.rule_base import rules_in_force
from troubleshoot.cli.side_by_side import judged_rows
from troubleshoot.cli.unit_tables import register_in
from troubleshoot.outside.lines import Lines
from troubleshoot.outside.refusal import NotUsable, in_a_line
from troubleshoot.visit.kept.foreign import foreign_in
from troubleshoot.visit.kept.stopped import standing_visits, stops_unit
from troubleshoot.visit.kept.unit_names import in_plain

if TYPE_CHECKING:
    from click._termui_impl import ProgressBar

    from troubleshoot.outside.table import Row
    from troubleshoot.records.logged.judging import Judged
    from troubleshoot.records.logged.results import Tally

    Bar = ProgressBar[int]


def show_logged_columns() -> None:
    """Every column that a table of logged readings may have, and what may stand in it."""
    from troubleshoot.cli.screens.units import show_columns
    from troubleshoot.records.logged.heading import logged_columns

    show_columns(logged_columns(rules_in_force()))


def assess_table(folder: Path, file: str, to: str | None, as_json: bool, workers: int) -> int:
    """Judge every row; the exit code. Raises Failure.

    STOPs that stand over units come first, on standard error, and again with each row of theirs.
    """
    from troubleshoot.outside.table import begin_table
    from troubleshoot.records.logged.heading import heading_of
    from troubleshoot.records.logged.results import Tally

    knowledge, register = rules_in_force(), register_in(folder)
    standing = _standing(folder)
    for line in register.problems:
        tell(line, err=True)
    units = {in_plain(entry.name): entry for entry in register.entries}
    where, tally, broken = in_a_line(file), Tally(), list[NotUsable]()
    try:
        with Lines(file) as lines:
            columns, rows = begin_table(lines, where)
            parts = (knowledge, heading_of(knowledge, columns, where), units, standing)
            is_seen = to is not None or not sys.stdout.isatty()
            with _bar(lines.size, is_seen) as bar, _stream(to) as put:
                coming = _until_broken(rows, broken)
                found = judged_rows(_told_of(coming, lines, bar), workers, parts)
                _write(put, _counted(found, tally), as_json)
    except NotUsable as error:
        broken.append(error)
    for line in tally.lines():
        tell(line, err=True)
    if broken:
        raise Failure(map(str, broken), USAGE)
    return CHECKS_FOUND if tally.not_taken else 0


def _standing(folder: Path) -> dict[str, tuple[str, ...]]:
    """Tell every STOP that stands over a unit; what is told with the rows of each unit."""
    found: dict[str, tuple[str, ...]] = {}
    visits = folder / "visits"
    for each in filter(stops_unit, standing_visits(rules_in_force(), visits)):
        for line in each.lines:
            tell(line, err=True)
        unit = in_plain(each.unit)
        found[unit] = (*found.get(unit, ()), each.lines[0])
    for line in foreign_in(visits):
        tell(line, err=True)
    return found


def _until_broken(rows: Iterator[Row], broken: list[NotUsable]) -> Iterator[Row]:
    """The rows up to where the table is none any more: those before it are judged all the same."""
    try:
        yield from rows
    except NotUsable as error:
        broken.append(error)


def _bar(size: int, is_seen: bool) -> AbstractContextManager[Bar | None]:
    """A progress bar over so many bytes, on a terminal that shows nothing else meanwhile."""
    if not is_seen or not sys.stderr.isatty():
        return nullcontext()
    return click.progressbar(length=size, label=told("Rows"), file=sys.stderr)


def _told_of(rows: Iterator[Row], lines: Lines, bar: Bar | None) -> Iterator[Row]:
    """The rows as they are; the bar is told how far the file has been read."""
    seen = 0
    for row in rows:
        yield row
        if bar is not None:
            bar.update(lines.read - seen)
            seen = lines.read


def _counted(found: Iterator[Judged], tally: Tally) -> Iterator[Judged]:
    for judged in found:
        tally.take(judged)
        yield judged


@contextmanager
def _stream(to: str | None) -> Iterator[Callable[[str], object]]:
    """What writes a piece of the results: to standard output, or to a file that is new."""
    if to is None:
        yield put_data
        return
    try:
        with Path(to).open("x", encoding="utf-8", newline="") as stream:
            yield stream.write
    except FileExistsError:
        raise Failure([f"{in_a_line(to)} is there already; name another file"], USAGE) from None
    except OSError as error:
        raise unwritable(in_a_line(to), error) from None


def _write(put: Callable[[str], object], found: Iterator[Judged], as_json: bool) -> None:
    from troubleshoot.outside.table import table_lines
    from troubleshoot.records.logged.results import (
        RESULT_COLUMNS,
        cells_of_result,
        json_of_result,
    )

    if as_json:
        for judged in found:
            put(f"{json_of_result(judged)}\n")
    else:
        for line in table_lines(RESULT_COLUMNS, map(cells_of_result, found)):
            put(line)
