"""Tables of units and of their earlier visits: taken in, written, and the invented site."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Final

from troubleshoot import __version__
from troubleshoot.cli.door import tell
from troubleshoot.cli.failures import (
    CHECKS_FOUND,
    JOURNAL_FAILED,
    NOT_UNDERSTOOD,
    USAGE,
    Failure,
)
from troubleshoot.cli.journal_shelf import INSTRUMENTS_FOLDER, REGISTER
from troubleshoot.cli.new_file import write_new_file
from troubleshoot.cli.rule_base import kept_with_visit, rules_in_force
from troubleshoot.outside.files import is_folder, read_text
from troubleshoot.outside.refusal import NotUsable, in_a_line

if TYPE_CHECKING:
    from troubleshoot.records.register.files import Register
    from troubleshoot.records.register.sheet import BadCell

DEMO: Final = "college"
"""The folder of the invented site among the scenarios."""

NO_INSTRUMENT: Final = (
    "No instrument is on record; take some in with: troubleshoot units instruments FILE.csv"
)


def register_in(folder: Path) -> Register:
    """The register of a data folder."""
    from troubleshoot.records.register.files import read_register

    return read_register(rules_in_force(), folder / REGISTER)


def not_there(register: Register, unit: str) -> str:
    """That the register has no such unit, with those whose names are like it."""
    from troubleshoot.visit.kept.unit_names import may_be_same

    alike = [entry.name for entry in register.entries if may_be_same(entry.name, unit)]
    instead = f"did you mean {' or '.join(alike[:3])}?" if alike else "see: troubleshoot units list"
    return f"the register has no unit {in_a_line(unit)}; {instead}"


def import_units(folder: Path, file: str, good_rows: bool) -> None:
    """Take units from a table. Raises Failure where a row is bad."""
    from troubleshoot.records.register.files import write_entry
    from troubleshoot.records.register.flat import NotWritten
    from troubleshoot.records.register.sheet import read_sheet
    from troubleshoot.visit.telling.wording import counted

    try:
        found = read_sheet(rules_in_force(), read_text(file), in_a_line(file), register_in(folder))
    except NotUsable as error:
        raise Failure([str(error)], USAGE) from None
    refuse(found.bad, good_rows)
    _tell_stops(folder, [entry.name for entry in found.entries])
    try:
        for entry in found.entries:
            write_entry(folder / REGISTER, entry)
    except NotWritten as error:
        raise Failure([str(error)], JOURNAL_FAILED) from None
    again = len(found.entries) - found.new
    tell(f"Kept: {counted(found.new, 'new unit', 'new units')}, {again} that were there before.")
    tell_bad(found.bad)


def _tell_stops(folder: Path, units: Sequence[str]) -> None:
    """Tell of every STOP that stands, or may stand, over one of these units."""
    from troubleshoot.visit.kept.stopped import may_be_over, standing_visits, stops_unit

    for each in filter(stops_unit, standing_visits(rules_in_force(), folder / "visits")):
        if any(may_be_over(each, unit) for unit in units):
            for line in each.lines:
                tell(line)


def export_units(folder: Path, file: str) -> None:
    """Write the register as a table; a file that is there is left alone."""
    from troubleshoot.records.register.sheet import as_sheet
    from troubleshoot.visit.telling.wording import counted

    register = register_in(folder)
    write_new_file(file, as_sheet(rules_in_force(), register.entries))
    tell(f"{counted(len(register.entries), 'unit', 'units')} in {in_a_line(file)}")
    for problem in register.problems:
        tell(problem, err=True)


def list_instruments(folder: Path) -> None:
    """Every instrument with its accuracy and last proof."""
    from troubleshoot.records.register.instruments import instrument_lines, read_instruments

    found = read_instruments(folder / INSTRUMENTS_FOLDER)
    for line in (*found.problems, *instrument_lines(found)):
        tell(line)
    if not found.kept:
        tell(NO_INSTRUMENT)


def import_instruments(folder: Path, file: str, good_rows: bool) -> None:
    """Take instruments from a table. Raises Failure where a row is bad."""
    from troubleshoot.records.register.flat import NotWritten
    from troubleshoot.records.register.instruments import read_instrument_sheet, write_instrument
    from troubleshoot.visit.telling.wording import counted

    try:
        found = read_instrument_sheet(read_text(file), in_a_line(file))
    except NotUsable as error:
        raise Failure([str(error)], USAGE) from None
    refuse(found.bad, good_rows)
    try:
        for each in found.kept:
            write_instrument(folder / INSTRUMENTS_FOLDER, each)
    except NotWritten as error:
        raise Failure([str(error)], JOURNAL_FAILED) from None
    tell(f"Kept: {counted(len(found.kept), 'instrument', 'instruments')}.")
    tell_bad(found.bad)


def import_readings(folder: Path, file: str, good_rows: bool) -> None:
    """Take over the visits of a table. Raises Failure where a row is bad."""
    from troubleshoot.records.past_visits import keep_past_visits, read_past_visits
    from troubleshoot.visit.kept.journal import JournalError
    from troubleshoot.visit.telling.wording import counted

    knowledge = rules_in_force()
    try:
        past = read_past_visits(knowledge, read_text(file), Path(file).name, register_in(folder))
    except NotUsable as error:
        raise Failure([str(error)], USAGE) from None
    refuse(past.bad, good_rows)
    header = {"program": __version__, **kept_with_visit(knowledge)}
    try:
        keep_past_visits(folder / "visits", past, header)
    except JournalError as error:
        raise Failure([str(error)], JOURNAL_FAILED) from None
    tell(f"Kept: {counted(len(past.visits), 'visit', 'visits')}.")
    tell_bad(past.bad)


def keep_demo(folder: Path) -> None:
    """Put the invented site into a data folder that holds nothing of a real one."""
    from troubleshoot.cli.refrigerant import import_refrigerant
    from troubleshoot.knowledge.load import shipped_folder

    if any(is_folder(folder / each) and any((folder / each).iterdir()) for each in _KEPT):
        raise Failure(
            [f"{in_a_line(str(folder))}: units or visits are kept there; name an empty folder: "
             "troubleshoot --data FOLDER units demo"], USAGE
        )  # fmt: skip
    site = shipped_folder().parent / "scenarios" / DEMO
    import_units(folder, str(site / "units.csv"), good_rows=False)
    import_readings(folder, str(site / "readings.csv"), good_rows=False)
    import_refrigerant(folder, str(site / "refrigerant.csv"), False, register_in(folder))


_KEPT: Final = (REGISTER, "visits", "refrigerant")


def refuse(bad: Sequence[BadCell], good_rows: bool) -> None:
    """Raises Failure with every bad row, unless the good ones are to be kept."""
    if bad and not good_rows:
        kept = "nothing was kept; put them right, or keep the good rows with --good-rows"
        raise Failure([*map(str, bad), f"{_rows(bad)} not taken: {kept}"], NOT_UNDERSTOOD)


def tell_bad(bad: Sequence[BadCell]) -> None:
    """Raises Failure with the rows that were left out."""
    if bad:
        raise Failure([*map(str, bad), f"{_rows(bad)} not taken"], CHECKS_FOUND)


def _rows(bad: Sequence[BadCell]) -> str:
    from troubleshoot.records.register.sheet import rows_bad
    from troubleshoot.visit.telling.wording import counted

    return counted(rows_bad(bad), "row", "rows")
