"""`rules explain` and `rules find`: what the rules have on something."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import groupby
from typing import TYPE_CHECKING, Final

import click

from troubleshoot.cli.door import tell
from troubleshoot.cli.failures import USAGE, Failure
from troubleshoot.cli.rule_base import rules_in_force, takes_rules

if TYPE_CHECKING:
    from troubleshoot.authoring.finding import Entry
    from troubleshoot.knowledge.model import Knowledge

_HEADINGS: Final = {
    "call": "Calls",
    "fault": "Faults",
    "test": "Looks and readings",
    "hazard": "Cautions",
    "procedure": "Rules of order and validity",
    "limit": "Limits",
}


@click.command("explain", short_help="A fault, test, hazard, call or check as a page.")
@click.argument("words", nargs=-1, required=True, metavar="ID or WORDS...")
@takes_rules
def explain_command(words: tuple[str, ...]) -> None:
    """Explain a fault, test, hazard, call, procedure or check, by its id or by words.

    Words that fit several list them.
    """
    from troubleshoot.authoring.finding import find_entries
    from troubleshoot.cli.pages import page_about

    knowledge, said = rules_in_force(), " ".join(words)
    lines = page_about(knowledge, said)
    if lines is None:
        found = find_entries(knowledge, said)
        if not found:
            raise _nothing(knowledge, said)
        named = [entry for entry in found if not entry.said]
        only = found if len(found) == 1 else named if len(named) == 1 else ()
        lines = page_about(knowledge, only[0].id) if only else None
        lines = list(_listed(found)) if lines is None else lines
    for line in lines:
        tell(line)


@click.command("find", short_help="Everything in the rules that speaks of something.")
@click.argument("words", nargs=-1, required=True, metavar="WORDS...")
@takes_rules
def find_command(words: tuple[str, ...]) -> None:
    """List what speaks of WORDS: what is called so first, then where else they stand."""
    from troubleshoot.authoring.finding import find_entries

    knowledge, said = rules_in_force(), " ".join(words)
    found = find_entries(knowledge, said)
    if not found:
        raise _nothing(knowledge, said)
    for line in _listed(found):
        tell(line)


def _listed(found: Iterable[Entry]) -> Iterator[str]:
    """Entries by kind, the kinds as their first entries stand."""
    entries = list(found)
    kinds = list(dict.fromkeys(entry.kind for entry in entries))
    entries.sort(key=lambda entry: kinds.index(entry.kind))
    for kind, of_kind in groupby(entries, key=lambda entry: entry.kind):
        yield f"{_HEADINGS[kind]}:"
        for entry in of_kind:
            yield f"  {entry.name}  ({entry.id})"
            if entry.said:
                yield f"    {entry.said}"
    yield "A page of its own for each: troubleshoot rules explain ID"


def _nothing(knowledge: Knowledge, said: str) -> Failure:
    from troubleshoot.reasoning.unit.equipment import suggest

    names = [*knowledge.faults, *knowledge.tests, *knowledge.hazards, *knowledge.complaints]
    return Failure([f"{said} is not in the rules; {suggest(said, names)}"], USAGE)
