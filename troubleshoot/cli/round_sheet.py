"""`troubleshoot inspect --sheet`: the season's inspection sheet, fitted to the terminal."""

from __future__ import annotations

from pathlib import Path

from troubleshoot.cli import clock
from troubleshoot.cli.screens.prompts import show_standing_visits
from troubleshoot.cli.terminal import Terminal
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.records.round_sheet import sheet
from troubleshoot.visit.kept.foreign import foreign_in
from troubleshoot.visit.kept.stopped import standing_visits
from troubleshoot.visit.round.season import Season, season_of


def print_sheet(
    knowledge: Knowledge, unit: str | None, season: Season | None, visits: Path
) -> None:
    """The sheet of a season; without one, of the season that the day is in.

    Before it every STOP that stands over a unit: a sheet is taken up to the roof.
    """
    terminal = Terminal()
    show_standing_visits(terminal, standing_visits(knowledge, visits))
    terminal.say_all(foreign_in(visits))
    today = clock.now()
    chosen = season or season_of(today.month)
    name = f"{unit}, " if unit else ""
    terminal.say(f"PM, {chosen}: {name}{today:%Y-%m-%d}", strong=True)
    for line in sheet(knowledge, chosen):
        terminal.say(line.text, line.indent, strong=line.head)
