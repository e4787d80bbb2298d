"""`troubleshoot visits` and `troubleshoot report VISIT`: what is kept of earlier visits."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Final

import click

from troubleshoot.cli.door import tell, tell_report
from troubleshoot.cli.failures import JOURNAL_FAILED, USAGE, Failure
from troubleshoot.cli.json_output import say_json
from troubleshoot.cli.new_file import write_page
from troubleshoot.cli.rule_base import missing_rules, rules_in_force, takes_rules
from troubleshoot.cli.visiting import data_folder
from troubleshoot.outside.refusal import NotUsable, in_a_line
from troubleshoot.visit.kept.foreign import foreign_in
from troubleshoot.visit.kept.journal import JournalError, JournalNewer
from troubleshoot.visit.kept.lines import ENDINGS, Record
from troubleshoot.visit.kept.names import journal_path, kept_visits
from troubleshoot.visit.kept.reading import read_visit
from troubleshoot.visit.kept.stopped import (
    Standing,
    standing_account,
    standing_in,
    standing_visits,
    stops_unit,
)
from troubleshoot.visit.kept.unreadable import Unreadable

_SAYING: Final = ("start", "call", "named", "danger")
_NO_VISIT: Final = ("named", "left-before", "on-record", "instruments", "end")
MOST_SHOWN: Final = 200
"""Letters of a visit's words in the list."""


@click.command()
@takes_rules
@click.pass_context
def visits(ctx: click.Context) -> None:
    """List the visits that are kept, the latest first; one that cannot be read says why.

    Before them every STOP that stands over a unit, and what lies there and is not read as a visit.
    """
    paths = kept_visits(visits_folder(ctx))
    stopping, damaged = set[Path](), set[Path]()
    strays = foreign_in(visits_folder(ctx))
    for standing in (
        standing_visits(rules_in_force(), visits_folder(ctx)) if paths or strays else ()
    ):
        tell(standing.lines[0])
        if isinstance(standing, Unreadable):
            damaged.add(standing.path)
        if stops_unit(standing):
            stopping.add(standing.path)
    for line in strays:
        tell(line)
    shown = stopped = is_open = False
    for path in paths:
        try:
            kept = read_visit(path)
        except JournalError as error:
            stands, words = "damaged", str(error)
            if isinstance(error, JournalNewer):
                stands = "newer"
        else:
            stands = "open elsewhere" if kept.elsewhere else _how_it_stands(kept.events)
            if stands == "closed" and not _was_begun(kept.events):
                continue
            stands = "open" if path in stopping and stands == "closed" else stands
            stands = "damaged" if path in damaged else stands
            words = _what_about(kept.events)
            stopped = stopped or stands == "stopped"
            is_open = is_open or stands in ("open", "reopened")
        tell(f"{path.stem}  {stands:<12} {words}")
        shown = True
    if not shown:
        tell("No visit is kept yet. Start one with: troubleshoot")
    if is_open:
        tell("An open one goes on by: troubleshoot, and there the visit's name or its unit's")
    if stopped:
        tell("A stopped one that has been made safe goes on by: troubleshoot reopen VISIT")


def _how_it_stands(events: Sequence[Record]) -> str:
    """The ending of a visit, or whether it is open, for the first time or again."""
    for event in reversed(events):
        if event.get("event") == "end" and event.get("ending") in ENDINGS:
            return _one_line(event["ending"])
        if event.get("event") == "reopened":
            return "reopened"
    return "open"


def _was_begun(events: Sequence[Record]) -> bool:
    """Whether more was told than the name of a unit: a visit left at once is none."""
    return any(event.get("event") not in _NO_VISIT for event in events)


def _what_about(events: Sequence[Record]) -> str:
    """The unit's name, and the caller's words or the complaint that they were taken for."""
    last = {event["event"]: event for event in events if event.get("event") in _SAYING}
    start, call, danger = (last.get(kind, {}) for kind in ("start", "call", "danger"))
    name = start.get("name") or last.get("named", {}).get("name")
    untold = "no call told" if danger and not start.get("routine") else "PM"
    words = start.get("words") or call.get("words") or start.get("complaint") or untold
    return _one_line(f"{name}: {words}" if name else words)


def _one_line(value: object) -> str:
    """A value of a journal in a line of the list: as written, but never two lines or a page."""
    return " ".join(str(value).split())[:MOST_SHOWN]


@click.command()
@click.argument("visit")
@click.option("--json", "as_json", is_flag=True, help="The account as JSON, with its STOPs.")
@click.option("--occupants", is_flag=True, help="The note for the people in the building.")
@click.option("--html", metavar="FILE.html", help="Write it as one page, for a phone or for paper.")
@takes_rules
@click.pass_context
def report(
    ctx: click.Context,
    visit: str,
    as_json: bool = False,
    occupants: bool = False,
    html: str | None = None,
) -> None:
    """The report of a visit, in Markdown."""
    from troubleshoot.records.occupants import occupants_note
    from troubleshoot.records.report import markdown_report
    from troubleshoot.visit.events import replay
    from troubleshoot.visit.kept.understanding import understood
    from troubleshoot.visit.telling.kept_visit import kept_account
    from troubleshoot.visit.telling.pack_told import pack_line, rules_of_the_day

    if as_json and (occupants or html):
        raise click.UsageError(
            "--json is for scripts; it goes with neither --html nor --occupants."
        )
    knowledge = rules_in_force()
    path = visit_of(visit, ctx)
    may_stop = standing_in(knowledge, path)
    try:
        kept = read_visit(path)
    except JournalError as error:
        raise unreadable_failure(may_stop, str(error), as_json) from None
    understanding = understood(knowledge, kept.events)
    state = replay(knowledge, understanding.events)
    first = may_stop.lines if isinstance(may_stop, Unreadable) else ()
    for notice in filter(None, [*first, kept.notice, *missing_rules(kept.header)]):
        tell(notice, err=True)
    plain, extras = kept_account(knowledge, visit, state, understanding)
    extras = {**extras, "rules_of_the_day": [*rules_of_the_day(knowledge, kept.header)]}
    if as_json:
        packs = {"site_rules": [*map(pack_line, knowledge.packs)]} if knowledge.packs else {}
        say_json({**plain, **extras, **packs})
        return
    text = (
        occupants_note(knowledge, plain, extras, _serves(ctx, state.name))
        if occupants
        else markdown_report(knowledge, plain, extras)
    )
    if html is None:
        tell_report(text)
    else:
        write_page(html, text, str(extras["title"]))


def _serves(ctx: click.Context, unit: str) -> str:
    """The rooms of a unit, by the register; empty where it is not in it."""
    from troubleshoot.cli.unit_tables import register_in

    entry = register_in(visits_folder(ctx).parent).entry(unit) if unit else None
    return "" if entry is None else entry.own.get("serves", "")


def unreadable_failure(may_stop: Standing | None, why: str, as_json: bool = False) -> Failure:
    """A visit that cannot be read: first whether a STOP may stand over its unit."""
    lines = (why,) if may_stop is None else may_stop.lines
    if as_json:
        standing = [] if may_stop is None else [standing_account(may_stop, may_stop.unit)]
        error = {"key": "visit", "problem": lines[0], "instead": " ".join(lines[1:])}
        say_json({"error": [error], "standing": standing})
    return Failure(lines, JOURNAL_FAILED)


def visits_folder(ctx: click.Context) -> Path:
    """Where the visits of the data folder that was named lie. Raises Failure."""
    return data_folder((ctx.obj or {}).get("data")) / "visits"


def visit_of(visit: str, ctx: click.Context) -> Path:
    """The journal of a visit by its name; a name that leads elsewhere is refused."""
    try:
        path = journal_path(visits_folder(ctx), visit)
    except NotUsable as error:
        raise Failure([str(error)], USAGE) from None
    if path not in kept_visits(path.parent):
        raise Failure([f"there is no visit {in_a_line(visit)}; see: troubleshoot visits"], USAGE)
    return path
