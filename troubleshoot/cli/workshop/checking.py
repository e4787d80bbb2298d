"""`rules check`: every rule file, and packs beside them."""

from __future__ import annotations

import click

from troubleshoot.cli.door import tell
from troubleshoot.cli.failures import CHECKS_FOUND
from troubleshoot.cli.rule_base import rules_in, site_folders, takes_rules
from troubleshoot.outside.text import shortened


@click.command("check", short_help="Check every rule file, and packs beside them.")
@click.argument("pack", nargs=-1, type=click.Path(exists=True, file_okay=False))
@click.option(
    "--against",
    metavar="FOLDER",
    help="Earlier rules: list every caution and need that is gone and that nobody signed.",
)
@takes_rules
@click.pass_context
def check_rules_command(ctx: click.Context, pack: tuple[str, ...], against: str | None) -> None:
    """Check every rule file; PACK folders are checked beside the shipped rules.

    Each line says path:line:column, what is wrong, and what to write instead.
    """
    from troubleshoot.knowledge.checks import check_rules
    from troubleshoot.knowledge.load import shipped_folder

    earlier = rules_in(against) if against is not None else None
    problems = check_rules([shipped_folder(), *site_folders(*pack)], earlier)
    for problem in problems:
        tell(f"{shortened(str(problem))} [{problem.check}]")
    errors = sum(problem.level == "error" for problem in problems)
    tell(f"{errors} to fix, {len(problems) - errors} to know")
    ctx.exit(CHECKS_FOUND if errors else 0)
