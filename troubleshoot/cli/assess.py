"""`troubleshoot assess FILE`: rank causes from readings already taken, no questions."""

from __future__ import annotations

from pathlib import Path

import click

from troubleshoot.cli.case_input import case_from
from troubleshoot.cli.door import tell
from troubleshoot.cli.json_output import say_json
from troubleshoot.cli.kept_visits import visits_folder
from troubleshoot.cli.rule_base import rules_in_force, takes_rules
from troubleshoot.cli.screens.prompts import show_standing_visits
from troubleshoot.cli.terminal import Terminal
from troubleshoot.visit.kept.stopped import standing_account, standing_visits


@click.command()
@click.argument("file", metavar="[FILE]", required=False)
@click.option("--json", "as_json", is_flag=True, help="The account as JSON; of a table, by lines.")
@click.option("--all", "is_table", is_flag=True, help="FILE is a table of logged readings.")
@click.option("--columns", is_flag=True, help="What may stand in such a table.")
@click.option("--to", metavar="FILE", help="Where the results of a table go.")
@click.option(
    "--workers", type=click.IntRange(1, 64), help="Processes for a table; one for each processor."
)
@takes_rules
@click.pass_context
def assess(
    ctx: click.Context,
    file: str | None,
    as_json: bool,
    is_table: bool,
    columns: bool,
    to: str | None,
    workers: int | None,
) -> None:
    """Rank causes from readings already taken, without asking anything.

    FILE is YAML or JSON (- for standard input) with unit, complaint, conditions and readings. It
    names no unit: every STOP that stands over one is told first.

    With --all it is a CSV table of logged readings, a row one unit at one moment: the column unit,
    and one a reading, as suction-pressure at circuit 2; the register knows the unit. Each row comes
    to its STOPs, its likeliest causes, or what of it is not understood.
    """
    if columns:
        from troubleshoot.cli.logged import show_logged_columns

        show_logged_columns()
    elif file is None:
        raise click.UsageError("Name a FILE.")
    elif is_table:
        from troubleshoot.cli.logged import assess_table
        from troubleshoot.cli.side_by_side import processors
        from troubleshoot.cli.visiting import data_folder

        folder = data_folder((ctx.obj or {}).get("data"))
        ctx.exit(assess_table(folder, file, to, as_json, workers or processors()))
    elif to is not None or workers is not None:
        raise click.UsageError("--to and --workers go with --all.")
    else:
        _assess_one(file, as_json, visits_folder(ctx))


def _assess_one(file: str, as_json: bool, visits: Path) -> None:
    from troubleshoot.visit.cases.assessment import assess_case

    knowledge = rules_in_force()
    case = case_from(file, knowledge, as_json)
    account, lines = assess_case(knowledge, case)
    standing = tuple(standing_visits(knowledge, visits))
    if as_json:
        say_json({"standing": [standing_account(each, "") for each in standing], **account})
    else:
        show_standing_visits(Terminal(), standing)
        for line in lines:
            tell(line)
