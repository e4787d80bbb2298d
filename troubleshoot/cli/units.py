"""`troubleshoot units`: the register of the units that are looked after."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from troubleshoot.cli.door import tell
from troubleshoot.cli.failures import (
    CHECKS_FOUND,
    JOURNAL_FAILED,
    NOT_UNDERSTOOD,
    USAGE,
    Failure,
)
from troubleshoot.cli.journal_shelf import REGISTER, JournalShelf
from troubleshoot.cli.rule_base import rules_in_force, takes_rules
from troubleshoot.cli.visiting import data_folder, hold
from troubleshoot.outside.files import read_text
from troubleshoot.outside.refusal import NotUsable, in_a_line
from troubleshoot.visit.kept.journal import JournalError, JournalFailed

if TYPE_CHECKING:
    from troubleshoot.dialogue.prompts import Ended
    from troubleshoot.dialogue.said import Voice
    from troubleshoot.dialogue.talk import Talk
    from troubleshoot.records.register.entry import Entry
    from troubleshoot.records.register.files import Register


@click.group(invoke_without_command=True)
@click.pass_context
def units(ctx: click.Context) -> None:
    """The units that are looked after: what is on record of each, and how it stands.

    Without a command: list them.
    """
    if ctx.invoked_subcommand is None:
        ctx.invoke(list_command)


@units.command("list", short_help="Every unit, and how it stands.")
@click.option("--json", "as_json", is_flag=True, help="As JSON, for scripts.")
@takes_rules
@click.pass_context
def list_command(ctx: click.Context, as_json: bool = False) -> None:
    """Every unit with where it is, its last visit, STOPs that stand and what is open."""
    from troubleshoot.cli.screens.units import list_as_json, show_list
    from troubleshoot.records.stands import Visited

    folder = _data(ctx)
    register = _register(folder)
    visited = Visited(rules_in_force(), folder / "visits")
    (list_as_json if as_json else show_list)(register, visited)


@units.command("show", short_help="What is on record of a unit.")
@click.argument("unit")
@click.option("--json", "as_json", is_flag=True, help="As JSON, for scripts.")
@takes_rules
@click.pass_context
def show_command(ctx: click.Context, unit: str, as_json: bool) -> None:
    """What is on record of one unit, after every STOP that stands over it."""
    from troubleshoot.cli.screens.units import entry_as_json, show_entry, show_stands
    from troubleshoot.records.stands import Visited

    folder, knowledge = _data(ctx), rules_in_force()
    register = _register(folder)
    entry = register.entry(unit)
    stands = Visited(knowledge, folder / "visits").stands(unit if entry is None else entry.name)
    if as_json:
        entry_as_json(unit, entry, stands)
    else:
        show_stands(stands)
    if entry is None:
        raise Failure([*register.problems, _not_there(register, unit)], USAGE)
    if not as_json:
        show_entry(knowledge, entry, stands)


@units.command("add", short_help="Put a unit into the register, by its data plate.")
@click.argument("unit", required=False, default="")
@takes_rules
@click.pass_context
def add_command(ctx: click.Context, unit: str) -> None:
    """Put a unit into the register by its data plate, one question after the other.

    A unit that is in it is asked what is still open. Each answer is on disk before the next.
    """
    from troubleshoot.cli.attentive import VisitTerminal
    from troubleshoot.records.register.entry import named

    try:
        name = named(unit, "the unit's name") if unit else ""
    except NotUsable as error:
        raise Failure([str(error)], USAGE) from None
    folder, knowledge = _data(ctx), rules_in_force()
    try:
        with JournalShelf(knowledge, folder / "visits") as shelf:
            talk = VisitTerminal(knowledge)
            ctx.exit(hold(knowledge, talk, lambda voice: _adding(shelf, voice, folder, name)))
    except JournalError as error:
        raise Failure([str(error)], JOURNAL_FAILED) from None


def _adding(shelf: JournalShelf, voice: Voice, folder: Path, name: str) -> Talk[Ended]:
    """Ask for a unit's data plate; a danger that is told meanwhile begins a visit to the unit."""
    from troubleshoot.dialogue.opening import begun_in_danger
    from troubleshoot.dialogue.talk import DangerCalled
    from troubleshoot.records.register.adding import Adding
    from troubleshoot.records.register.files import NotRead, NotWritten, read_entry, write_entry

    units_folder = folder / REGISTER

    def known(unit: str) -> Entry | None:
        try:
            return read_entry(shelf.knowledge, units_folder, unit)
        except NotRead as error:
            raise JournalFailed(f"{error}; put the file right, or move it away") from None

    def keep(entry: Entry) -> None:
        try:
            write_entry(units_folder, entry)
        except NotWritten as error:
            raise JournalFailed(str(error)) from None

    adding = Adding(shelf.knowledge, voice, known, keep)
    try:
        return (yield from adding.run(name))
    except DangerCalled as called:
        return (yield from begun_in_danger(shelf, voice, adding.entry.name or name, str(called)))


@units.command("import", short_help="Take units from a CSV file.")
@click.argument("file", metavar="FILE.csv")
@click.option("--good-rows", is_flag=True, help="Keep the good rows though others are bad.")
@takes_rules
@click.pass_context
def import_command(ctx: click.Context, file: str, good_rows: bool) -> None:
    """Take units from a CSV file; `units columns` says what may stand in it.

    A bad row is named with its column, and nothing is kept unless --good-rows is said. A unit that
    is in the register keeps what an empty cell does not tell.
    """
    from troubleshoot.records.register.files import NotWritten, write_entry
    from troubleshoot.records.register.sheet import read_sheet, rows_bad
    from troubleshoot.visit.telling.wording import counted

    folder, knowledge = _data(ctx), rules_in_force()
    register = _register(folder)
    try:
        found = read_sheet(knowledge, read_text(file), in_a_line(file), register)
    except NotUsable as error:
        raise Failure([str(error)], USAGE) from None
    bad = [str(cell) for cell in found.bad]
    if bad and not good_rows:
        kept = "nothing was kept; put them right, or keep the good rows with --good-rows"
        raise Failure([*bad, f"{counted(rows_bad(found.bad), 'row', 'rows')} not taken: {kept}"],
                      NOT_UNDERSTOOD)  # fmt: skip
    try:
        for entry in found.entries:
            write_entry(folder / REGISTER, entry)
    except NotWritten as error:
        raise Failure([str(error)], JOURNAL_FAILED) from None
    again = len(found.entries) - found.new
    tell(f"Kept: {counted(found.new, 'new unit', 'new units')}, {again} that were there before.")
    if bad:
        count = counted(rows_bad(found.bad), "row", "rows")
        raise Failure([*bad, f"{count} not taken"], CHECKS_FOUND)


@units.command("export", short_help="Write the register as CSV.")
@click.argument("file", metavar="FILE.csv")
@takes_rules
@click.pass_context
def export_command(ctx: click.Context, file: str) -> None:
    """Write the register as CSV for a spreadsheet; no cell of it runs as a formula."""
    from troubleshoot.cli.practice.files import unwritable
    from troubleshoot.records.register.sheet import as_sheet
    from troubleshoot.visit.telling.wording import counted

    register = _register(_data(ctx))
    try:
        with Path(file).open("x", encoding="utf-8", newline="") as stream:
            stream.write(as_sheet(rules_in_force(), register.entries))
    except FileExistsError:
        raise Failure([f"{in_a_line(file)} is there already; name another file"], USAGE) from None
    except OSError as error:
        raise unwritable(in_a_line(file), error) from None
    tell(f"{counted(len(register.entries), 'unit', 'units')} in {in_a_line(file)}")
    _tell_problems(register.problems)


@units.command("columns", short_help="What is kept of a unit, and what may stand there.")
@takes_rules
def columns_command() -> None:
    """Every column of the register: what it is, and what may stand in it."""
    from troubleshoot.cli.screens.units import show_columns
    from troubleshoot.records.register.columns import columns_of

    show_columns(columns_of(rules_in_force()))


def _data(ctx: click.Context) -> Path:
    return data_folder((ctx.obj or {}).get("data"))


def _register(folder: Path) -> Register:
    from troubleshoot.records.register.files import read_register

    return read_register(rules_in_force(), folder / REGISTER)


def _tell_problems(problems: Sequence[str]) -> None:
    for problem in problems:
        tell(problem, err=True)


def _not_there(register: Register, unit: str) -> str:
    """That the register has no such unit, with those whose names are like it."""
    from troubleshoot.visit.kept.unit_names import may_be_same

    alike = [entry.name for entry in register.entries if may_be_same(entry.name, unit)]
    instead = f"did you mean {' or '.join(alike[:3])}?" if alike else "see: troubleshoot units list"
    return f"the register has no unit {in_a_line(unit)}; {instead}"
