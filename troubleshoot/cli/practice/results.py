"""What an apprentice sees of the scenarios and of their own plays: the list, progress, the CSV.

The list tells what a dispatcher would: the call, the season, how hard. Nothing in it names a
subsystem or a cause.
"""

from __future__ import annotations

from pathlib import Path

from troubleshoot.cli.door import tell
from troubleshoot.cli.failures import CHECKS_FOUND, NOT_UNDERSTOOD, USAGE, Failure
from troubleshoot.cli.new_file import write_new_file
from troubleshoot.cli.rule_base import rules_in_force
from troubleshoot.cli.terminal import Terminal
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.practice.loading import ScenarioError, load_scenarios
from troubleshoot.practice.record import (
    RecordDamaged,
    all_records,
    as_csv,
    other_spelling,
    read_plays,
    record_path,
)
from troubleshoot.practice.scenario import Scenario
from troubleshoot.practice.scores import Play, calibration, first_of, progress
from troubleshoot.visit.telling.wording import bar, counted

SEASONS = {"summer": "summer", "winter": "winter", "spring-or-fall": "spring or fall"}
DIFFICULTIES = {1: "plain", 2: "takes thought", 3: "misleads"}


def path_of(folder: Path, apprentice: str) -> Path:
    """The record of an apprentice. Raises Failure for what can be no name."""
    try:
        return record_path(folder, apprentice)
    except NotUsable as error:
        raise Failure([str(error)], USAGE) from None


def plays_of(folder: Path, apprentice: str) -> tuple[Play, ...]:
    """The plays of an apprentice. Raises Failure where their record is damaged."""
    try:
        return read_plays(path_of(folder, apprentice))
    except RecordDamaged as error:
        raise Failure([str(error)], NOT_UNDERSTOOD) from None


def plays_with_whose(terminal: Terminal, folder: Path, apprentice: str) -> tuple[Play, ...]:
    """The plays; said whose they are, where the name was written otherwise when they were begun."""
    plays = plays_of(folder, apprentice)
    if other := other_spelling(plays, apprentice):
        terminal.say(f"The record of {other}: letters and digits alone tell names apart.")
    return plays


def all_scenarios(knowledge: Knowledge) -> tuple[Scenario, ...]:
    """The shipped scenarios. Raises Failure where one of them cannot be read."""
    try:
        return load_scenarios(knowledge)
    except ScenarioError as error:
        raise Failure([str(each) for each in error.problems], CHECKS_FOUND) from None


def list_scenarios(folder: Path, apprentice: str) -> None:
    """Every call with its season and difficulty, and the first result with its date."""
    terminal, rules = Terminal(), rules_in_force()
    scenarios = all_scenarios(rules)
    first = first_of(plays_with_whose(terminal, folder, apprentice))
    for scenario in sorted(scenarios, key=lambda s: (s.difficulty, s.id)):
        season = SEASONS.get(scenario.season, "any season")
        how = f"{season}, {DIFFICULTIES[scenario.difficulty]}"
        terminal.say(f"{scenario.id}: {how}", strong=True)
        terminal.say(f'"{scenario.call}"', 2)
        if scenario.id in first:
            terminal.say(result_of(first[scenario.id]), 2)
    terminal.say(f"{counted(len(scenarios), 'call', 'calls')}; practise NAME plays one.")


def result_of(play: Play) -> str:
    """What came of a play, with its date."""
    if play.failed:
        return f"{play.date}: failed on safety"
    if play.verdict in ("shown", "left"):
        return f"{play.date}: {play.verdict}"
    return f"{play.date}: {play.points} points"


def show_progress(folder: Path, apprentice: str) -> None:
    """How each subsystem stands by its first plays, and how sure the calls were."""
    terminal, rules = Terminal(), rules_in_force()
    plays = plays_with_whose(terminal, folder, apprentice)
    for each in sorted(progress(plays), key=lambda each: each.mean):
        failures = f", {each.failures} failed" if each.failures else ""
        terminal.say(
            f"{bar(each.mean / 100)} {each.mean:.0f} {rules.spoken(each.subsystem)}: "
            f"{counted(each.scenarios, 'scenario', 'scenarios')}, "
            f"{counted(each.plays, 'play', 'plays')}{failures}"
        )
    if not plays:
        terminal.say("Nothing has been played yet.")
        return
    left = sum(play.verdict == "left" for play in plays)
    if left:
        terminal.say(f"Left before the call: {counted(left, 'play', 'plays')}.")
    guesses = sum(play.guesses for play in plays)
    if guesses:
        close = sum(play.guesses_close for play in plays)
        terminal.say(f"Sound readings known: {close} of {guesses}.")
    _say_sureness(terminal, plays)
    parts = sum(play.parts for play in plays)
    if parts:
        terminal.say(f"Done to a unit on a guess: {counted(parts, 'time', 'times')}.")


def _say_sureness(terminal: Terminal, plays: tuple[Play, ...]) -> None:
    """Sureness held against the truth."""
    found = calibration(plays)
    if found.sure_right + found.sure_wrong:
        times = counted(found.sure_wrong, "time", "times") if found.sure_wrong else "never"
        right = counted(found.sure_right, "time", "times") if found.sure_right else "never"
        terminal.say(f"You were sure and wrong: {times}; sure and right: {right}.")
    if found.doubtful_right:
        times = counted(found.doubtful_right, "time", "times")
        terminal.say(f"You were not sure, and right all the same: {times}.")


def export_plays(folder: Path, apprentice: str | None, file: str) -> None:
    """Write the record of one apprentice, or of all, as CSV; a file that is there is left alone."""
    try:
        records = all_records(folder) if apprentice is None else (plays_of(folder, apprentice),)
    except RecordDamaged as error:
        raise Failure([str(error)], NOT_UNDERSTOOD) from None
    write_new_file(file, as_csv(*records))
    tell(f"{counted(sum(map(len, records)), 'play', 'plays')} in {file}")
