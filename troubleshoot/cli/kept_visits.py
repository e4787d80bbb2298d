"""`troubleshoot visits` and `troubleshoot report VISIT`: what is kept of earlier visits."""

from __future__ import annotations

from dataclasses import replace

import click

from troubleshoot.cli.failures import JOURNAL_FAILED, USAGE, Failure
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
    for path in paths:
        with _opened(path.stem, ctx) as journal:
            start = next((e for e in journal.events if e["event"] == "start"), {})
            end = next((e["ending"] for e in journal.events if e["event"] == "end"), "open")
            words = start.get("words") or start.get("complaint") or "routine round"
            click.echo(f"{path.stem}  {end:<12} {words}")


@click.command()
@click.argument("visit")
@click.pass_context
def report(ctx: click.Context, visit: str) -> None:
    """The report of a visit, in Markdown."""
    from troubleshoot.reasoning.conclude import Reasoner
    from troubleshoot.records.report import markdown_report
    from troubleshoot.visit.account import ending_of
    from troubleshoot.visit.events import replay
    from troubleshoot.visit.visit_account import visit_account
    from troubleshoot.visit.work_state import open_items

    knowledge = shipped_rules()
    with _opened(visit, ctx) as journal:
        state = replay(knowledge, journal.events)
    case = state.case
    if state.cured:  # the report names what was repaired, not what would be next without it
        case = replace(case, repaired=case.repaired[:-1])
    conclusions = Reasoner(knowledge).conclude(case)
    ending = "left" if state.ended is None else ending_of(conclusions)
    extras = {
        "title": f"Visit {visit}: {state.name}" if state.name else f"Visit {visit}",
        "words": state.words,
        "unit": state.unit_data,
        "notes": state.notes,
        "open_items": open_items(state.work) if state.ended is None else (),
    }
    plain = visit_account(knowledge, state, conclusions, ending=ending)
    click.echo(markdown_report(knowledge, plain, extras))


def _opened(visit: str, ctx: click.Context) -> Journal:
    path = data_folder((ctx.obj or {}).get("data")) / "visits" / f"{visit}{SUFFIX}"
    if not path.is_file():
        raise Failure([f"there is no visit {visit}; see: troubleshoot visits"], USAGE)
    try:
        return Journal.open(path)
    except JournalError as error:
        raise Failure([str(error)], JOURNAL_FAILED) from None
