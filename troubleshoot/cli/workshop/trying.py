"""`rules test`: every card's examples, tried."""

from __future__ import annotations

import click

from troubleshoot.cli.door import tell
from troubleshoot.cli.failures import CHECKS_FOUND, USAGE, Failure
from troubleshoot.cli.rule_base import rules_in_force, takes_rules


@click.command("test")
@click.argument("only", nargs=-1, metavar="[FAULT or SUBSYSTEM]...")
@takes_rules
@click.pass_context
def test_rules_command(ctx: click.Context, only: tuple[str, ...]) -> None:
    """Try every card's examples: each must name its fault, or must not."""
    from troubleshoot.visit.cases.trial import try_examples

    knowledge = rules_in_force()
    known = set(knowledge.faults) | {fault.subsystem for fault in knowledge.faults.values()}
    for name in only:
        if name not in known:
            raise Failure([f"{name} is neither a fault nor a subsystem of the rules"], USAGE)
    tried = failed = gaps = 0
    for trial in try_examples(knowledge, frozenset(only)):
        tried += 1
        failed += bool(trial.failure) and not trial.known_gap
        gaps += trial.known_gap
        if trial.failure:
            kind = "known gap: " if trial.known_gap else ""
            tell(f"{kind}{trial.fault}: {trial.example}: {trial.failure}")
    tell(f"{tried} examples tried, {failed} failed, {gaps} known gaps in draft cards")
    ctx.exit(CHECKS_FOUND if failed else 0)
