"""`troubleshoot units`: the register of the units that are looked after."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from troubleshoot.cli.failures import (
    JOURNAL_FAILED,
    USAGE,
    Failure,
)
from troubleshoot.cli.journal_shelf import INSTRUMENTS_FOLDER, REGISTER, JournalShelf
from troubleshoot.cli.refrigerant import refrigerant
from troubleshoot.cli.rule_base import rules_in_force, takes_rules
from troubleshoot.cli.unit_tables import not_there, register_in
from troubleshoot.cli.visiting import data_folder, hold
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.visit.kept.journal import JournalError, JournalFailed

if TYPE_CHECKING:
    from troubleshoot.dialogue.prompts import Ended
    from troubleshoot.dialogue.said import Voice
    from troubleshoot.dialogue.talk import Talk
    from troubleshoot.records.register.entry import Entry


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
    register = register_in(folder)
    visited = Visited(rules_in_force(), folder / "visits")
    (list_as_json if as_json else show_list)(register, visited)


@units.command("backlog", short_help="What waits on the units, what matters most first.")
@click.option("--html", metavar="FILE.html", help="Write it as one page, for a phone or for paper.")
@click.option("--csv", metavar="FILE.csv", help="Write it as a table, every unit a row.")
@click.option("--json", "as_json", is_flag=True, help="As JSON, for scripts.")
@takes_rules
@click.pass_context
def backlog_command(ctx: click.Context, html: str | None, csv: str | None, as_json: bool) -> None:
    """What waits: STOPs that stand, what is open, faults that came back within a year, drifts.

    Of each unit the trend that is past its limit or reaches it first, with when.
    """
    from troubleshoot.cli.backlog import tell_backlog

    tell_backlog(_data(ctx), html, csv, as_json)


@units.command("show", short_help="What is on record of a unit.")
@click.argument("unit")
@click.option("--json", "as_json", is_flag=True, help="As JSON, for scripts.")
@takes_rules
@click.pass_context
def show_command(ctx: click.Context, unit: str, as_json: bool) -> None:
    """What is on record of one unit, after every STOP that stands over it."""
    from troubleshoot.cli.screens.refrigerant import show_in_short
    from troubleshoot.cli.screens.units import entry_as_json, show_entry, show_stands
    from troubleshoot.records.refrigerant.of_unit import refrigerant_of
    from troubleshoot.records.stands import Visited

    folder, knowledge = _data(ctx), rules_in_force()
    register = register_in(folder)
    entry = register.entry(unit)
    visited = Visited(knowledge, folder / "visits")
    stands = visited.stands(unit if entry is None else entry.name)
    if as_json:
        entry_as_json(unit, entry, stands)
    else:
        show_stands(stands)
    if entry is None:
        raise Failure([*register.problems, not_there(register, unit)], USAGE)
    if not as_json:
        show_entry(knowledge, entry, stands)
        show_in_short(refrigerant_of(knowledge, folder, entry, visited.of(entry.name)))


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
    from troubleshoot.records.register.files import read_entry, write_entry
    from troubleshoot.records.register.flat import NotRead, NotWritten

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
    from troubleshoot.cli.unit_tables import import_units

    import_units(_data(ctx), file, good_rows)


@units.command("export", short_help="Write the register as CSV.")
@click.argument("file", metavar="FILE.csv")
@takes_rules
@click.pass_context
def export_command(ctx: click.Context, file: str) -> None:
    """Write the register as CSV for a spreadsheet; no cell of it runs as a formula."""
    from troubleshoot.cli.unit_tables import export_units

    export_units(_data(ctx), file)


@units.command("readings", short_help="Take over the numbers of earlier visits from a CSV file.")
@click.argument("file", metavar="FILE.csv")
@click.option("--good-rows", is_flag=True, help="Keep the good rows though others are bad.")
@takes_rules
@click.pass_context
def readings_command(ctx: click.Context, file: str, good_rows: bool) -> None:
    """Take over the numbers of earlier visits to units of the register.

    A row is a visit: the columns unit and date (2026-05-12), and one a reading by the name of its
    test, as flame-current or suction-pressure at circuit 2. A reading that is a STOP is no history,
    and its row is refused.
    """
    from troubleshoot.cli.unit_tables import import_readings

    import_readings(_data(ctx), file, good_rows)


@units.command("demo", short_help="An invented site of 45 units with three years of visits.")
@takes_rules
@click.pass_context
def demo_command(ctx: click.Context) -> None:
    """Put an invented site into an empty data folder, to try history and lists on.

    Name the folder before the command: troubleshoot --data FOLDER units demo.
    """
    from troubleshoot.cli.unit_tables import keep_demo

    keep_demo(_data(ctx))


@units.command("carry", short_help="What to take up for these units.")
@click.argument("names", metavar="UNIT...", nargs=-1, required=True)
@takes_rules
@click.pass_context
def carry_command(ctx: click.Context, names: tuple[str, ...]) -> None:
    """What to take up for one unit, or for several together, after every STOP over them."""
    from troubleshoot.cli.screens.units import show_carry
    from troubleshoot.records.register.instruments import read_instruments
    from troubleshoot.records.stands import Visited

    folder, knowledge = _data(ctx), rules_in_force()
    register = register_in(folder)
    missing = [not_there(register, name) for name in names if register.entry(name) is None]
    if missing:
        raise Failure([*register.problems, *missing], USAGE)
    wanted = {entry.name: entry for name in names if (entry := register.entry(name)) is not None}
    instruments = read_instruments(folder / INSTRUMENTS_FOLDER)
    visited = Visited(knowledge, folder / "visits")
    show_carry(knowledge, tuple(wanted.values()), visited, instruments)


@units.command("instruments", short_help="The instruments, their accuracy and last proof.")
@click.argument("file", metavar="[FILE.csv]", required=False)
@click.option("--good-rows", is_flag=True, help="Keep the good rows though others are bad.")
@takes_rules
@click.pass_context
def instruments_command(ctx: click.Context, file: str | None, good_rows: bool) -> None:
    """List the instruments with their accuracy and last proof, or take them from a CSV file.

    Its columns: name, kind (as clamp-ammeter), accuracy as printed (1 % + 3 counts), proved (the
    day of the last proof), due (the day of the next, else a year after it), notes. Where both hold
    a visit judges readings by it, else by what is taken for its kind.
    """
    from troubleshoot.cli.unit_tables import import_instruments, list_instruments

    if file is None:
        list_instruments(_data(ctx))
    else:
        import_instruments(_data(ctx), file, good_rows)


@units.command("columns", short_help="What is kept of a unit, and what may stand there.")
@takes_rules
def columns_command() -> None:
    """Every column of the register: what it is, and what may stand in it."""
    from troubleshoot.cli.screens.units import show_columns
    from troubleshoot.records.register.columns import columns_of

    show_columns(columns_of(rules_in_force()))


units.add_command(refrigerant)


def _data(ctx: click.Context) -> Path:
    return data_folder((ctx.obj or {}).get("data"))
