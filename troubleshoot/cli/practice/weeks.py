"""The course as an apprentice sees it: how far each week is, and the case to play next.

A week is told by its number alone: what it is about would tell what its units have.
"""

from __future__ import annotations

from pathlib import Path

from troubleshoot.cli.practice.results import all_scenarios, plays_with_whose
from troubleshoot.cli.rule_base import rules_in_force
from troubleshoot.cli.terminal import Terminal
from troubleshoot.practice.course import next_case, weeks_of
from troubleshoot.visit.telling.wording import bar


def show_course(folder: Path, apprentice: str) -> None:
    """Each week with what is done of it, and what comes next."""
    terminal = Terminal()
    plays = plays_with_whose(terminal, folder, apprentice)
    weeks = weeks_of(plays, all_scenarios(rules_in_force()))
    for week in weeks:
        done = f"{len(week.done)} of {len(week.cases)}"
        share = bar(len(week.done) / max(len(week.cases), 1))
        shut = "" if week.is_open else f", opens after week {week.number - 1}"
        terminal.say(f"week {week.number} {share} {done}{shut}")
    following = next_case(weeks)
    if following is None:
        terminal.say("The course is done. practise --draw makes new cases.")
        return
    terminal.say(f'"{following.call}"')
    terminal.say(f"Next: troubleshoot practise {following.id}")
