"""`troubleshoot diagnose [UNIT]`: a visit with a complaint, by conversation or from a file."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from troubleshoot.cli.rule_base import rules_in_force, takes_rules
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import MOST_NAME, one_line
from troubleshoot.safety.profiles import PROFILES

if TYPE_CHECKING:
    from troubleshoot.visit.round.season import Season


def _a_name(ctx: click.Context, parameter: click.Parameter, value: str | None) -> str | None:
    """A unit's name as it stands in the record for good; one that cannot is a usage error."""
    try:
        return value and one_line(value, "the unit's name", MOST_NAME)
    except NotUsable as error:
        raise click.BadParameter(f"{error.what}; {error.instead}") from None


@click.command()
@click.argument("unit", required=False, metavar="[UNIT]", callback=_a_name)
@click.option("--answers", metavar="FILE", help="Answer from a YAML or JSON file; ask nothing.")
@click.option("--json", "as_json", is_flag=True, help="The account as JSON; asks nothing.")
@click.option("--no-input", is_flag=True, help="Ask nothing; what no file answers is skipped.")
@click.option(
    "--profile",
    "profiles",
    multiple=True,
    type=click.Choice(PROFILES),
    help="Who is asking; repeat for several. A conversation asks once, a script has all.",
)
@takes_rules
@click.pass_context
def diagnose(
    ctx: click.Context,
    unit: str | None = None,
    answers: str | None = None,
    as_json: bool = False,
    no_input: bool = False,
    profiles: tuple[str, ...] = (),
) -> None:
    """Visit a unit that has a complaint and be led to the cause, safely.

    UNIT is a unit's name from the register; without it you are asked.
    """
    if answers is not None or no_input or as_json:
        from troubleshoot.cli.scripted import run_scripted
        from troubleshoot.cli.visiting import data_folder

        visits = data_folder((ctx.obj or {}).get("data")) / "visits"
        run_scripted(answers, as_json, profiles, unit or "", visits)
        return
    from troubleshoot.cli.visiting import converse

    ctx.exit(converse(rules_in_force(), unit, profiles, (ctx.obj or {}).get("data")))


@click.command()
@click.argument("unit", required=False, metavar="[UNIT]", callback=_a_name)
@click.option("--profile", "profiles", multiple=True, type=click.Choice(PROFILES))
@click.option("--sheet", is_flag=True, help="Print the season's inspection sheet; no visit.")
@click.option(
    "--season", type=click.Choice(("spring", "fall")), help="Of the sheet; else the day's own."
)
@click.option("--due", is_flag=True, help="List the units whose round of the season is due.")
@click.option("--plan", metavar="ROOF", help="A day's plan of the due rounds on one roof.")
@click.option("--hours", type=click.IntRange(1, 24), help="Of work that the plan has room for.")
@takes_rules
@click.pass_context
def inspect(
    ctx: click.Context,
    unit: str | None,
    profiles: tuple[str, ...],
    sheet: bool,
    season: Season | None,
    due: bool,
    plan: str | None,
    hours: int | None,
) -> None:
    """A PM of a unit, with no complaint to start from."""
    if season is not None and not sheet:
        raise click.UsageError("--season chooses a sheet; say --sheet too.")
    if hours is not None and plan is None:
        raise click.UsageError("--hours goes with --plan.")
    data = (ctx.obj or {}).get("data")
    if plan is not None:
        if unit is not None or sheet:
            raise click.UsageError("--plan is of a roof; it takes neither a unit nor --sheet.")
        from troubleshoot.cli.day_plan import print_plan
        from troubleshoot.cli.visiting import data_folder

        print_plan(rules_in_force(), data_folder(data), plan, hours)
        return
    if due:
        if unit is not None or sheet:
            raise click.UsageError("--due lists units; it takes neither a unit nor --sheet.")
        from troubleshoot.cli.round_sheet import print_due
        from troubleshoot.cli.visiting import data_folder

        print_due(rules_in_force(), data_folder(data))
        return
    if sheet:
        from troubleshoot.cli.round_sheet import print_sheet
        from troubleshoot.cli.visiting import data_folder

        print_sheet(rules_in_force(), unit, season, data_folder(data))
        return
    from troubleshoot.cli.visiting import converse

    ctx.exit(converse(rules_in_force(), unit, profiles, data, routine=True))
