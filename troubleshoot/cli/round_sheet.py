"""`troubleshoot inspect --sheet` and `--due`: what to take up to the roof, and where to go."""

from __future__ import annotations

from pathlib import Path

from troubleshoot.cli import clock
from troubleshoot.cli.screens.prompts import show_standing_visits
from troubleshoot.cli.terminal import Terminal
from troubleshoot.cli.unit_tables import register_in
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.records.due_rounds import due_rounds, season_began
from troubleshoot.records.history.before import NumbersBefore
from troubleshoot.records.round_sheet import Before, sheet
from troubleshoot.records.stands import Visited
from troubleshoot.visit.kept.foreign import foreign_in
from troubleshoot.visit.kept.stopped import standing_visits
from troubleshoot.visit.round.season import Season, season_of
from troubleshoot.visit.telling.wording import counted

NO_ROUND = "no round yet"


def print_sheet(
    knowledge: Knowledge, unit: str | None, season: Season | None, folder: Path
) -> None:
    """The sheet of a season; without one, of the season that the day is in.

    Before it every STOP that stands over a unit: a sheet is taken up to the roof. Of a unit that is
    named its last numbers stand under the blanks.
    """
    terminal, visits = Terminal(), folder / "visits"
    show_standing_visits(terminal, standing_visits(knowledge, visits))
    terminal.say_all(foreign_in(visits))
    today = clock.now()
    chosen = season or season_of(today.month)
    name = f"{unit}, " if unit else ""
    terminal.say(f"PM, {chosen}: {name}{today:%Y-%m-%d}", strong=True)
    before = _before(knowledge, unit, folder) if unit else lambda test: ()
    for line in sheet(knowledge, chosen, before):
        terminal.say(line.text, line.indent, strong=line.head)


def _before(knowledge: Knowledge, unit: str, folder: Path) -> Before:
    """What each test has read before on a unit."""
    entry = register_in(folder).entry(unit)
    journals = Visited(knowledge, folder / "visits").of(unit if entry is None else entry.name)
    return NumbersBefore(knowledge, journals, {} if entry is None else entry.unit).lines


def print_due(knowledge: Knowledge, folder: Path) -> None:
    """The units whose round of this season is not walked yet, in the order in which to go.

    Each STOP that stands over one of them comes with it: there is no round before it is lifted.
    """
    terminal, today = Terminal(), clock.now().date()
    register, visited = register_in(folder), Visited(knowledge, folder / "visits")
    names = [entry.name for entry in register.entries]
    show_standing_visits(terminal, visited.over_others(names))
    terminal.say_all(register.problems)
    rounds = due_rounds(register, visited, today)
    for each in rounds:
        own = (
            each.entry.own[key] for key in ("roof", "serves", "matters") if key in each.entry.own
        )
        last = f"last round {each.last}" if each.last else NO_ROUND
        terminal.say(f"{each.entry.name}: {'; '.join((*own, last))}")
        for stop in visited.stops(each.entry.name):
            terminal.say(stop.lines[0], 2, strong=True)
    season = season_of(today.month)
    terminal.say(
        f"{len(rounds)} of {counted(len(register.entries), 'unit', 'units')} due for the {season} "
        f"round, since {season_began(today)}."
    )
