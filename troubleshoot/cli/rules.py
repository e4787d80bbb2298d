"""`troubleshoot rules`: check, test and explain the rule base."""

from __future__ import annotations

import click

from troubleshoot.cli.failures import CHECKS_FOUND
from troubleshoot.cli.rule_base import shipped_rules


@click.group()
def rules() -> None:
    """Check, test, explain and write the rule base."""


@rules.command("test")
@click.argument("only", nargs=-1, metavar="[FAULT or SUBSYSTEM]...")
@click.pass_context
def test_rules(ctx: click.Context, only: tuple[str, ...]) -> None:
    """Try every card's examples: each must name its fault, or must not."""
    from troubleshoot.visit.trial import try_examples

    tried = failed = 0
    for trial in try_examples(shipped_rules(), frozenset(only)):
        tried += 1
        if trial.failure:
            failed += 1
            click.echo(f"{trial.fault}: {trial.example}: {trial.failure}")
    click.echo(f"{tried} examples tried, {failed} failed")
    ctx.exit(CHECKS_FOUND if failed else 0)
