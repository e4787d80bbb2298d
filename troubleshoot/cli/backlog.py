"""`troubleshoot units backlog`: what waits on the units of a register."""

from __future__ import annotations

from pathlib import Path

from troubleshoot.cli import clock
from troubleshoot.cli.door import tell
from troubleshoot.cli.json_output import say_json
from troubleshoot.cli.new_file import write_new_file, write_page
from troubleshoot.cli.rule_base import rules_in_force
from troubleshoot.cli.screens.prompts import show_standing_visits
from troubleshoot.cli.terminal import Terminal
from troubleshoot.cli.unit_tables import register_in
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.refusal import in_a_line
from troubleshoot.records.backlog.collecting import Backlog, Waiting, backlog_of
from troubleshoot.records.backlog.told import (
    NOTHING_WAITS,
    about,
    backlog_report,
    backlog_table,
    stop_lines,
    summary,
    waiting_lines,
)
from troubleshoot.records.stands import Visited
from troubleshoot.visit.kept.names import natural
from troubleshoot.visit.kept.stopped import Standing, standing_account


def tell_backlog(folder: Path, html: str | None, csv: str | None, as_json: bool) -> None:
    """What waits on every unit: on the screen, or as a page, a table or JSON. Raises Failure."""
    knowledge, register, today = rules_in_force(), register_in(folder), clock.now().date()
    visited = Visited(knowledge, folder / "visits")
    backlog = backlog_of(knowledge, register, visited, today)
    others = visited.over_others(entry.name for entry in register.entries)
    for problem in (*register.problems, *backlog.problems):
        tell(problem, err=True)
    if html is not None:
        lines = [line for each in others for line in each.lines]
        write_page(html, backlog_report(knowledge, backlog, lines, today), f"Backlog: {today}")
    if csv is not None:
        write_new_file(csv, backlog_table(knowledge, backlog))
        tell(f"Written: {in_a_line(csv)}")
    if as_json:
        say_json(_plain(knowledge, backlog, others))
    elif html is None and csv is None:
        _show(knowledge, backlog, others)


def _show(knowledge: Knowledge, backlog: Backlog, others: tuple[Standing, ...]) -> None:
    """Each unit on which something waits; of the others their names."""
    terminal = Terminal()
    show_standing_visits(terminal, others)
    for waiting in (each for each in backlog.units if each.waits):
        terminal.say(f"{waiting.entry.name}: {about(waiting, backlog)}")
        for line in stop_lines(waiting):
            terminal.say(line, 2, strong=True)
        terminal.say_all(waiting_lines(knowledge, waiting), 2)
    silent = sorted((each.entry.name for each in backlog.units if not each.waits), key=natural)
    if silent:
        terminal.say(f"{NOTHING_WAITS} {', '.join(silent)}.")
    terminal.say(summary(backlog), strong=True)


def _plain(
    knowledge: Knowledge, backlog: Backlog, others: tuple[Standing, ...]
) -> dict[str, object]:
    return {
        "units": [_unit(knowledge, each) for each in backlog.units],
        "problems": list(backlog.problems),
        "standing": [standing_account(each, "") for each in others],
    }


def _unit(knowledge: Knowledge, waiting: Waiting) -> dict[str, object]:
    stands, worst = waiting.stands, waiting.worst
    when = None if worst is None else worst.due
    return {
        "name": waiting.entry.name,
        "standing": [standing_account(each, waiting.entry.name) for each in stands.stops],
        "left_off": list(stands.left_off),
        "open_visits": list(stands.open_visits),
        "open_items": list(stands.open_items),
        "came_back": [
            {"fault": each.fault.id, "days": [day.isoformat() for day in each.days]}
            for each in waiting.repeats
        ],
        "worst": None
        if worst is None
        else {
            "test": worst.series.test.id,
            "at": None if worst.series.at is None else str(worst.series.at),
            "alarms": [each.alarm.id for each in worst.alarms],
            "past": worst.is_past,
            "due": None if when is None else when.day.isoformat(),
        },
        "last_visit": stands.last or None,
        "round_due": waiting.is_due,
    }
