"""`troubleshoot history UNIT [TEST]`: a unit's numbers over the visits, and what drifts."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from troubleshoot.cli.door import tell, told
from troubleshoot.cli.failures import USAGE, Failure
from troubleshoot.cli.rule_base import rules_in_force, takes_rules
from troubleshoot.cli.unit_tables import register_in
from troubleshoot.cli.visiting import data_folder
from troubleshoot.outside.refusal import in_a_line

if TYPE_CHECKING:
    from troubleshoot.knowledge.model import Knowledge
    from troubleshoot.reasoning.unit.equipment import Unit
    from troubleshoot.records.history.drift import Raised
    from troubleshoot.records.history.series import Series
    from troubleshoot.records.refrigerant.account import CircuitAccount


@click.command()
@click.argument("unit")
@click.argument("test", nargs=-1)
@click.option("--json", "as_json", is_flag=True, help="As JSON, for scripts.")
@click.option("--html", metavar="FILE.html", help="Write it as one page, with each line drawn.")
@takes_rules
@click.pass_context
def history(
    ctx: click.Context, unit: str, test: tuple[str, ...], as_json: bool, html: str | None
) -> None:
    """What was read on a unit visit after visit: what drifts, and when it reaches its limit.

    With TEST, in its own words (subcooling, microamps), every number of it with its weather.
    """
    from troubleshoot.cli.screens.history import history_as_json, show_history, show_series
    from troubleshoot.cli.screens.prompts import show_standing_visits
    from troubleshoot.cli.screens.refrigerant import show_in_short
    from troubleshoot.cli.terminal import Terminal
    from troubleshoot.reasoning.unit.equipment import read_unit
    from troubleshoot.records.history.collecting import history_of
    from troubleshoot.records.history.drift import alarms_of
    from troubleshoot.records.refrigerant.of_unit import refrigerant_of
    from troubleshoot.records.register.entry import Entry
    from troubleshoot.records.stands import Visited

    knowledge, folder = rules_in_force(), data_folder((ctx.obj or {}).get("data"))
    entry = register_in(folder).entry(unit)
    name, kept = (unit, {}) if entry is None else (entry.name, entry.unit)
    visited = Visited(knowledge, folder / "visits")
    if not as_json:
        show_standing_visits(Terminal(), visited.stops(name))
    found = history_of(knowledge, visited.of(name), kept)
    for problem in found.problems:
        tell(problem, err=True)
    every = found.series
    if not every:
        raise Failure([f"no reading of a unit {in_a_line(name)} is kept; see: troubleshoot units"],
                      USAGE)  # fmt: skip
    refrigerant = refrigerant_of(knowledge, folder, entry or Entry(name), visited.of(name))
    if test:
        every = _asked(knowledge, read_unit(knowledge, kept), every, " ".join(test))
    raised = [each for series in every for each in alarms_of(knowledge, series)]
    if html is not None:
        _write(knowledge, name, every, raised, html, () if test else refrigerant.accounts)
    elif as_json:
        history_as_json(name, every, raised)
    elif test:
        for series in every:
            show_series(knowledge, series)
    else:
        show_history(knowledge, every, raised)
        show_in_short(refrigerant)


def _write(
    knowledge: Knowledge,
    name: str,
    every: tuple[Series, ...],
    raised: list[Raised],
    file: str,
    refrigerant: tuple[CircuitAccount, ...],
) -> None:
    """The history as one page, with a figure of each series."""
    from troubleshoot.cli.new_file import write_page
    from troubleshoot.records.history.drawn import drawn
    from troubleshoot.records.history.told import caption_of, history_report

    compared = (series for series in every if series.comparable)
    figures = [drawn(series, told(caption_of(knowledge, series))) for series in compared]
    report = history_report(knowledge, name, every, raised, refrigerant)
    write_page(file, report, f"History: {name}", [figure for figure in figures if figure])


def _asked(
    knowledge: Knowledge, unit: Unit, every: tuple[Series, ...], words: str
) -> tuple[Series, ...]:
    """The series that a person's words are of. Raises Failure where there are none."""
    from troubleshoot.visit.hearing.tests_by_words import heard_test

    heard = heard_test(knowledge, unit, words)
    meant = {heard.taken, *heard.which, words}
    found = tuple(series for series in every if meant & {series.test.id, series.quantity})
    if not found:
        read = ", ".join(dict.fromkeys(series.test.name for series in every))
        raise Failure([f"nothing read there is called {in_a_line(words)}; there is: {read}"], USAGE)
    return found
