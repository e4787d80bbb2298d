"""How the register looks in plain lines, and as JSON."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from troubleshoot.cli.json_output import say_json
from troubleshoot.cli.screens.prompts import show_standing_visits
from troubleshoot.cli.terminal import Terminal
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.places import with_place
from troubleshoot.records.register.carry import BY_THE_REGISTER, carry_lines
from troubleshoot.records.register.columns import AT, NAME, Column, columns_of
from troubleshoot.records.register.entry import Entry, cells_of
from troubleshoot.records.register.files import Register
from troubleshoot.records.register.instruments import Instruments, instrument_lines
from troubleshoot.records.stands import Stands, Visited, open_lines
from troubleshoot.visit.kept.stopped import standing_account
from troubleshoot.visit.telling.wording import counted

NONE_YET = "No unit is in the register yet. Put one in with: troubleshoot units add"
NO_VISIT = "no visit yet"
_IN_THE_LIST = ("site", "roof", "serves", "matters")


def show_list(register: Register, visited: Visited) -> None:
    """A unit a line, with what stands over it and what is open below it."""
    terminal = Terminal()
    names = [entry.name for entry in register.entries]
    show_standing_visits(terminal, visited.over_others(names))
    terminal.say_all(register.problems)
    stopped = left = 0
    for entry in register.entries:
        stands = visited.stands(entry.name)
        stopped += bool(stands.stops)
        left += bool(stands.left_off or stands.open_visits or stands.open_items)
        own = (entry.own[key] for key in _IN_THE_LIST if key in entry.own)
        last = f"last visit {stands.last}" if stands.last else NO_VISIT
        terminal.say(f"{entry.name}: {'; '.join((*own, last))}")
        for stop in stands.stops:
            terminal.say(stop.lines[0], 2, strong=True)
        terminal.say_all(open_lines(stands), 2)
    if not register.entries:
        terminal.say(NONE_YET)
        return
    terminal.say(
        f"{counted(len(register.entries), 'unit', 'units')}; {stopped} under a STOP, {left} with "
        "something open."
    )


def show_stands(stands: Stands) -> None:
    """The STOPs over a unit, whole, before anything else is told of it; then what is open."""
    terminal = Terminal()
    show_standing_visits(terminal, stands.stops)
    for line in open_lines(stands):
        terminal.say(line, strong=True)


def show_entry(knowledge: Knowledge, entry: Entry, stands: Stands) -> None:
    """What is on record of a unit, under its headings."""
    terminal = Terminal()
    terminal.say(entry.name, strong=True)
    terminal.say(f"last visit {stands.last}" if stands.last else NO_VISIT, 2)
    cells = cells_of(entry)
    heading = ""
    for column in columns_of(knowledge):
        for key, words in cells.items():
            name, _, place = key.partition(AT)
            if name != column.key or name == NAME:
                continue
            if column.about != heading:
                heading = column.about
                terminal.say(f"{heading}:")
            said = with_place(column.spoken, place)
            terminal.say(f"{said}: {knowledge.spoken(words)}", 2)


def show_carry(
    knowledge: Knowledge, entries: Sequence[Entry], visited: Visited, instruments: Instruments
) -> None:
    """What to take up for these units; before it what stands over them, and what is open."""
    terminal = Terminal()
    for entry in entries:
        stands = visited.stands(entry.name)
        show_standing_visits(terminal, stands.stops)
        for line in open_lines(stands):
            terminal.say(f"{entry.name}: {line}", strong=True)
    terminal.say(f"To take up for {', '.join(entry.name for entry in entries)}:", strong=True)
    terminal.say_all(carry_lines(knowledge, entries), 2)
    terminal.say_all(instrument_lines(instruments), 2)
    terminal.say_all(instruments.problems)
    terminal.say(BY_THE_REGISTER)


def show_columns(columns: Iterable[Column]) -> None:
    """Every column with what may stand in it."""
    terminal = Terminal()
    heading = ""
    for column in columns:
        if column.about != heading:
            heading = column.about
            terminal.say(f"{heading}:", strong=True)
        terminal.say(f"{column.key}: {column.meaning} ({column.takes})", 2)


def list_as_json(register: Register, visited: Visited) -> None:
    """Every unit with what stands, one JSON object."""
    rows = [_plain(entry.name, entry, visited.stands(entry.name)) for entry in register.entries]
    names = [entry.name for entry in register.entries]
    others = [standing_account(each, "") for each in visited.over_others(names)]
    say_json({"units": rows, "problems": list(register.problems), "standing": others})


def entry_as_json(unit: str, entry: Entry | None, stands: Stands) -> None:
    """One unit with what stands over it, one JSON object."""
    say_json(_plain(unit if entry is None else entry.name, entry, stands))


def _plain(name: str, entry: Entry | None, stands: Stands) -> dict[str, object]:
    return {
        "name": name,
        "on_record": None if entry is None else {**entry.own, **entry.unit},
        "standing": [standing_account(each, name) for each in stands.stops],
        "left_off": list(stands.left_off),
        "open_visits": list(stands.open_visits),
        "open_items": list(stands.open_items),
        "last_visit": stands.last or None,
    }
