"""`troubleshoot visits` and `troubleshoot report VISIT`: what is kept of earlier visits."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

import click

from troubleshoot.cli.failures import JOURNAL_FAILED, USAGE, Failure
from troubleshoot.cli.json_output import say_json
from troubleshoot.cli.rule_base import shipped_rules
from troubleshoot.cli.visiting import data_folder
from troubleshoot.visit.journal import SUFFIX, Journal, JournalError


@click.command()
@click.pass_context
def visits(ctx: click.Context) -> None:
    """List the visits that are kept, the latest first."""
    folder = data_folder((ctx.obj or {}).get("data")) / "visits"
    paths = sorted(folder.glob(f"*{SUFFIX}"), reverse=True)
    if not paths:
        click.echo("No visit is kept yet. Start one with: troubleshoot")
    stopped = False
    for path in paths:
        with opened(path.stem, ctx) as journal:
            start = next((e for e in journal.events if e["event"] == "start"), {})
            end = _how_it_stands(journal.events)
            words = start.get("words") or start.get("complaint") or "routine round"
            click.echo(f"{path.stem}  {end:<12} {words}")
            stopped = stopped or end == "stopped"
    if stopped:
        click.echo("A stopped one that has been made safe goes on by: troubleshoot reopen VISIT")


def _how_it_stands(events: Sequence[Mapping[str, Any]]) -> str:
    """The ending of a visit, or whether it is open, for the first time or again."""
    for event in reversed(events):
        if event["event"] == "end":
            return str(event["ending"])
        if event["event"] == "reopened":
            return "reopened"
    return "open"


@click.command()
@click.argument("visit")
@click.option("--json", "as_json", is_flag=True, help="The account as JSON, with its STOPs.")
@click.pass_context
def report(ctx: click.Context, visit: str, as_json: bool = False) -> None:
    """The report of a visit, in Markdown."""
    from troubleshoot.reasoning.conclude import Reasoner
    from troubleshoot.records.report import markdown_report
    from troubleshoot.visit.account import ending_of
    from troubleshoot.visit.events import replay
    from troubleshoot.visit.stops import standing_stop
    from troubleshoot.visit.visit_account import stops_account, visit_account
    from troubleshoot.visit.work_state import open_items

    knowledge = shipped_rules()
    with opened(visit, ctx) as journal:
        state = replay(knowledge, journal.events)
    case = state.case
    if state.cured:  # the report names what was repaired, not what would be next without it
        case = replace(case, repaired=case.repaired[:-1])
    conclusions = Reasoner(knowledge).conclude(case)
    ending = "left" if state.ended is None else ending_of(conclusions)
    if state.ended == "stopped":
        ending = "stopped"
    extras = {
        "title": f"Visit {visit}: {state.name}" if state.name else f"Visit {visit}",
        "words": state.words,
        "unit": state.unit_data,
        "stops": stops_account(knowledge, state),
        "notes": state.notes,
        "open_items": open_items(state.work) if state.ended != "closed" else (),
    }
    stop = standing_stop(knowledge, state, conclusions)
    plain = visit_account(knowledge, state, conclusions, ending=ending, stop=stop)
    if as_json:
        say_json({**plain, **extras})
    else:
        click.echo(markdown_report(knowledge, plain, extras))


def opened(visit: str, ctx: click.Context) -> Journal:
    """The journal of a visit by its name, held open."""
    path = data_folder((ctx.obj or {}).get("data")) / "visits" / f"{visit}{SUFFIX}"
    if not path.is_file():
        raise Failure([f"there is no visit {visit}; see: troubleshoot visits"], USAGE)
    try:
        return Journal.open(path)
    except JournalError as error:
        raise Failure([str(error)], JOURNAL_FAILED) from None
