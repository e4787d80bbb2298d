"""`rules check`: every rule file, and packs beside them, in the form that its reader wants."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cache
from typing import TYPE_CHECKING, Any, Final

import click

from troubleshoot.cli.door import columns, put, tell
from troubleshoot.cli.failures import CHECKS_FOUND, RULES_INVALID
from troubleshoot.cli.json_output import say_json
from troubleshoot.cli.rule_base import rules_in, site_folders, takes_rules
from troubleshoot.outside.files import read_text
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import first_refused, shortened

if TYPE_CHECKING:
    from troubleshoot.knowledge.causes import Cause
    from troubleshoot.knowledge.problems import Problem

WIDEST: Final = 100
"""Letters of a source line that are shown where the screen has room: those round the place."""
MOST_PLACES: Final = 6
_INDENT: Final = "    "


@click.command("check", short_help="Check every rule file, and packs beside them.")
@click.argument("pack", nargs=-1, type=click.Path(exists=True, file_okay=False))
@click.option(
    "--against",
    metavar="FOLDER",
    help="Earlier rules: list every caution and need that is gone and that nobody signed.",
)
@click.option("--one-line", is_flag=True, help="A line for each problem, and no more.")
@click.option("--json", "as_json", is_flag=True, help="For scripts.")
@takes_rules
@click.pass_context
def check_rules_command(
    ctx: click.Context, pack: tuple[str, ...], against: str | None, one_line: bool, as_json: bool
) -> None:
    """Check every rule file; PACK folders are checked beside the shipped rules.

    Each problem says path:line:column, what is wrong, and what to write instead, with the line in
    which it stands. What only follows from it is counted with it. Exit code 1: something is to be
    put right; 5: no command goes by such rules.
    """
    from troubleshoot.knowledge.causes import by_cause
    from troubleshoot.knowledge.checks import checked
    from troubleshoot.knowledge.load import shipped_folder

    earlier = rules_in(against) if against is not None else None
    found = checked([shipped_folder(), *site_folders(*pack)], earlier)
    causes = by_cause(found.problems)
    if as_json:
        say_json(_plain(causes, found.usable))
    else:
        for cause in causes:
            tell_cause(cause, one_line)
        tell(sum_of(causes))
    errors = any(problem.level == "error" for problem in found.problems)
    ctx.exit(CHECKS_FOUND if errors and found.usable else RULES_INVALID if errors else 0)


def tell_cause(cause: Cause, one_line: bool = False) -> None:
    """Tell a problem, with its line and what goes with it unless one line is wanted."""
    problem = cause.problem
    tell(f"{shortened(str(problem))} [{problem.check}]")
    if one_line:
        return
    for line in _pointed_at(problem):
        put(line)
    if cause.follow:
        places = [each.place for each in cause.follow[:MOST_PLACES]]
        more = len(cause.follow) - len(places)
        tell(f"{_INDENT}goes with it: {', '.join(places)}{f', and {more} more' if more else ''}")


def _pointed_at(problem: Problem) -> Iterator[str]:
    """The line in which a problem stands, and a mark under its place; nothing of an odd line."""
    lines = lines_of(problem.path)
    line = lines[problem.line - 1] if problem.line <= len(lines) else ""
    if not line.strip() or first_refused(line) is not None:
        return
    screen = columns()
    room = WIDEST if screen is None else max(1, min(WIDEST, screen - len(_INDENT)))
    start = max(0, problem.column - 1 - room // 2) if len(line) > room else 0
    yield f"{_INDENT}{line[start : start + room]}"
    yield f"{_INDENT}{' ' * (problem.column - 1 - start)}^"


@cache
def lines_of(path: str) -> Sequence[str]:
    """The lines of a file as they are read; none where it cannot be read."""
    try:
        return read_text(path).replace("\r\n", "\n").expandtabs(1).split("\n")
    except NotUsable:
        return ()


def sum_of(causes: Sequence[Cause]) -> str:
    """How many problems have to be put right, and how many to be known."""
    errors = sum(cause.problem.level == "error" for cause in causes)
    following = sum(len(cause.follow) for cause in causes)
    told = f"{errors} to fix, {len(causes) - errors} to know"
    return f"{told}, {following} that go with them" if following else told


def _plain(causes: Sequence[Cause], usable: bool) -> dict[str, Any]:
    """What was found as plain data; what goes with a problem stands in it."""
    errors = sum(cause.problem.level == "error" for cause in causes)
    return {
        "schema": 1,
        "to_fix": errors,
        "to_know": len(causes) - errors,
        "usable": usable,
        "problems": [
            {**_row(each.problem), "goes_with_it": [_row(other) for other in each.follow]}
            for each in causes
        ],
    }


def _row(problem: Problem) -> dict[str, Any]:
    return {
        "path": problem.path,
        "line": problem.line,
        "column": problem.column,
        "what": problem.what,
        "instead": problem.instead,
        "check": problem.check,
        "level": problem.level,
    }
