"""`troubleshoot units refrigerant`: what was added to circuits and recovered from them."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

import click

from troubleshoot import __version__
from troubleshoot.cli import clock
from troubleshoot.cli.door import tell
from troubleshoot.cli.failures import JOURNAL_FAILED, NOT_UNDERSTOOD, USAGE, Failure
from troubleshoot.cli.new_file import write_new_file
from troubleshoot.cli.rule_base import rules_in_force, takes_rules
from troubleshoot.cli.unit_tables import not_there, refuse, register_in, tell_bad
from troubleshoot.cli.visiting import data_folder
from troubleshoot.outside.files import read_text
from troubleshoot.outside.refusal import NotUsable, in_a_line

if TYPE_CHECKING:
    from troubleshoot.records.refrigerant.of_unit import OfUnit
    from troubleshoot.records.register.entry import Entry
    from troubleshoot.records.register.files import Register


@click.command("refrigerant", short_help="What was added to a unit, and recovered.")
@click.argument("unit", required=False, default="")
@click.argument("words", nargs=-1)
@click.option("--on", "day", metavar="DAY", help="The day of it (2026-05-12), if not today.")
@click.option("--strike", type=int, metavar="N", help="Strike entry N: it was wrong.")
@click.option("--import", "taken", metavar="FILE.csv", help="Take over earlier entries.")
@click.option("--good-rows", is_flag=True, help="Keep the good rows though others are bad.")
@click.option("--export", "file", metavar="FILE.csv", help="Write it for a spreadsheet.")
@click.option("--json", "as_json", is_flag=True, help="As JSON, for scripts.")
@takes_rules
@click.pass_context
def refrigerant(
    ctx: click.Context,
    unit: str,
    words: tuple[str, ...],
    day: str | None,
    strike: int | None,
    taken: str | None,
    good_rows: bool,
    file: str | None,
    as_json: bool,
) -> None:
    """What was added to a unit's circuits and recovered, by weight, with the leak rate.

    Behind UNIT, what was done outside a visit: added 1 lb 4 oz to circuit 2 from C-7, or
    recovered 9.2 lb into R-3; with before, after and tare the cylinder's weights. Without a UNIT:
    every unit of which something is on record. Columns of a file: unit, date, circuit, way,
    weight, cylinder, before, after, tare.
    """
    from troubleshoot.cli.screens.prompts import show_standing_visits
    from troubleshoot.cli.terminal import Terminal
    from troubleshoot.records.refrigerant.of_unit import refrigerant_of
    from troubleshoot.records.stands import Visited

    folder = data_folder((ctx.obj or {}).get("data"))
    register = register_in(folder)
    if taken is not None:
        import_refrigerant(folder, taken, good_rows, register)
        return
    entry, told = _entry(register, unit, words) if unit else (None, ())
    entries = register.entries if entry is None else (entry,)
    if told:
        _keep(folder, entries[0], " ".join(told), day)
        return
    if unit and strike is not None:
        _strike(folder, entries[0], strike)
        return
    knowledge = rules_in_force()
    visited = Visited(knowledge, folder / "visits")
    if unit and not as_json:
        show_standing_visits(Terminal(), visited.stops(entries[0].name))
    found = tuple(
        (each, refrigerant_of(knowledge, folder, each, visited.of(each.name))) for each in entries
    )
    if file is not None:
        _export(found, file)
    else:
        _show(found, bool(unit), as_json)


def _entry(register: Register, unit: str, words: Sequence[str]) -> tuple[Entry, Sequence[str]]:
    """The unit that is named, and what is told of it: a name may be of several words.

    Raises Failure where the register has no such unit.
    """
    for count in range(len(words) + 1):
        entry = register.entry(" ".join((unit, *words[:count])))
        if entry is not None:
            return entry, words[count:]
    raise Failure([*register.problems, not_there(register, unit)], USAGE)


def _keep(folder: Path, entry: Entry, words: str, day: str | None) -> None:
    """Keep what was done outside a visit. Raises Failure."""
    from troubleshoot.cli.screens.refrigerant import show_kept
    from troubleshoot.reasoning.unit.equipment import read_unit
    from troubleshoot.records.refrigerant.kept import FOLDER, keep_weighings
    from troubleshoot.records.refrigerant.of_unit import refrigerant_of
    from troubleshoot.records.stands import Visited
    from troubleshoot.visit.hearing.weighed import NotWeighed, circuits_of, weighing_told
    from troubleshoot.visit.kept.journal import JournalError

    knowledge = rules_in_force()
    try:
        circuits = circuits_of(read_unit(knowledge, entry.unit))
        weighing = weighing_told(knowledge, circuits, words)
        keep_weighings(folder / FOLDER, entry.name, __version__, [(_day(day), weighing)])
    except NotWeighed as error:
        raise Failure([f"not kept: {error}"], NOT_UNDERSTOOD) from None
    except JournalError as error:
        raise Failure([str(error)], JOURNAL_FAILED) from None
    journals = Visited(knowledge, folder / "visits").of(entry.name)
    show_kept(knowledge, refrigerant_of(knowledge, folder, entry, journals), weighing)


def _day(typed: str | None) -> date:
    """The day that was told, today where none was. Raises Failure."""
    today = clock.now().date()
    try:
        day = today if typed is None else date.fromisoformat(typed)
    except ValueError:
        raise Failure(
            [f"{in_a_line(typed or '')} is no day; write it as 2026-05-12"], USAGE
        ) from None
    if day > today:
        raise Failure([f"{day} is still to come"], USAGE)
    return day


def _strike(folder: Path, entry: Entry, number: int) -> None:
    """Strike an entry that was told outside a visit. Raises Failure."""
    from troubleshoot.records.refrigerant.kept import FOLDER, strike, told_by_hand
    from troubleshoot.visit.kept.journal import JournalError

    told = told_by_hand(rules_in_force(), folder / FOLDER, entry.name).moved
    if number not in {each.number for each in told}:
        raise Failure(
            [f"{entry.name} has no entry {number} that was told outside a visit; what a visit "
             "tells is put right there"], USAGE
        )  # fmt: skip
    try:
        strike(folder / FOLDER, entry.name, __version__, number)
    except JournalError as error:
        raise Failure([str(error)], JOURNAL_FAILED) from None
    tell(f"Struck: entry {number}. It stays in the file.")


def _show(found: tuple[tuple[Entry, OfUnit], ...], is_one: bool, as_json: bool) -> None:
    from troubleshoot.cli.screens.refrigerant import (
        refrigerant_as_json,
        show_refrigerant,
        show_refrigerant_of_all,
    )

    if as_json:
        refrigerant_as_json(found)
    elif is_one:
        show_refrigerant(rules_in_force(), *found[0])
    else:
        show_refrigerant_of_all(found)


def _export(found: tuple[tuple[Entry, OfUnit], ...], file: str) -> None:
    """Write every weighing of these units as CSV. Raises Failure."""
    from troubleshoot.records.refrigerant.sheet import as_refrigerant_sheet
    from troubleshoot.visit.telling.wording import counted

    rows = [
        (entry.name, each)
        for entry, unit in found
        for account in unit.accounts
        for each in account.moved
    ]
    write_new_file(file, as_refrigerant_sheet(rows))
    tell(f"{counted(len(rows), 'weighing', 'weighings')} in {in_a_line(file)}")
    for problem in (problem for _, unit in found for problem in unit.problems):
        tell(problem, err=True)


def import_refrigerant(folder: Path, file: str, good_rows: bool, register: Register) -> None:
    """Take over earlier entries from a table. Raises Failure where a row is bad."""
    from troubleshoot.records.refrigerant.kept import FOLDER, keep_weighings, told_by_hand
    from troubleshoot.records.refrigerant.sheet import read_refrigerant_sheet
    from troubleshoot.visit.kept.journal import JournalError
    from troubleshoot.visit.telling.wording import counted

    knowledge = rules_in_force()
    known = [
        (entry.name, each.day, each.weighing)
        for entry in register.entries
        for each in told_by_hand(knowledge, folder / FOLDER, entry.name).moved
    ]
    try:
        found = read_refrigerant_sheet(
            knowledge, read_text(file), in_a_line(file), register, known, clock.now().date()
        )
    except NotUsable as error:
        raise Failure([str(error)], USAGE) from None
    refuse(found.bad, good_rows)
    try:
        for unit in dict.fromkeys(each[0] for each in found.told):
            own = [(day, weighing) for name, day, weighing in found.told if name == unit]
            keep_weighings(folder / FOLDER, unit, __version__, own)
    except JournalError as error:
        raise Failure([str(error)], JOURNAL_FAILED) from None
    left = f"; {found.of_visits} of visits left out" if found.of_visits else ""
    tell(f"Kept: {counted(len(found.told), 'weighing', 'weighings')}{left}.")
    tell_bad(found.bad)
