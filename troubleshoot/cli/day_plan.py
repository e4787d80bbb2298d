"""`troubleshoot inspect --plan ROOF`: a day's rounds on one roof."""

from __future__ import annotations

from pathlib import Path

from troubleshoot.cli import clock
from troubleshoot.cli.failures import USAGE, Failure
from troubleshoot.cli.journal_shelf import INSTRUMENTS_FOLDER
from troubleshoot.cli.screens.prompts import show_standing_visits
from troubleshoot.cli.screens.units import show_carry
from troubleshoot.cli.terminal import Terminal
from troubleshoot.cli.unit_tables import register_in
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import begun
from troubleshoot.records.day_plan import on_roof, plan_lines, planned, spent
from troubleshoot.records.due_rounds import due_rounds
from troubleshoot.records.register.instruments import read_instruments
from troubleshoot.records.stands import Visited
from troubleshoot.visit.round.season import season_of
from troubleshoot.visit.telling.wording import counted

NONE_DUE = "No round of this season is due."


def print_plan(knowledge: Knowledge, folder: Path, words: str, hours: int | None) -> None:
    """The day's plan of a roof, then what to take up for it. Raises Failure.

    Each STOP that stands over a unit comes first, and no unit under one is in the plan.
    """
    terminal, today = Terminal(), clock.now().date()
    register, visited = register_in(folder), Visited(knowledge, folder / "visits")
    due = due_rounds(register, visited, today)
    if not due:
        terminal.say(NONE_DUE)
        return
    try:
        roof, here = on_roof(due, words)
    except NotUsable as error:
        raise Failure([*register.problems, str(error)], USAGE) from None
    show_standing_visits(terminal, visited.over_others(entry.name for entry in register.entries))
    terminal.say_all(register.problems)
    stopped = [each for each in here if visited.stops(each.entry.name)]
    for each in stopped:
        show_standing_visits(terminal, visited.stops(each.entry.name))
        terminal.say(f"Not in the plan: {each.entry.name}.")
    season = season_of(today.month)
    free = [each for each in here if each not in stopped]
    plan = planned(knowledge, roof, free, season, hours)
    terminal.say(
        f"{begun(season)} rounds, {roof}, {today}: {len(plan.stops)} of "
        f"{counted(len(here), 'due unit', 'due units')}, about {spent(plan.minutes)}.",
        strong=True,
    )
    if plan.stops:
        for line, indent in plan_lines(plan):
            terminal.say(line, indent)
        instruments = read_instruments(folder / INSTRUMENTS_FOLDER)
        show_carry(knowledge, [stop.entry for stop in plan.stops], visited, instruments)
