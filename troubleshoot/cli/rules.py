"""`troubleshoot rules`: check, try and explain the rule base."""

from __future__ import annotations

import click

from troubleshoot.cli.failures import CHECKS_FOUND, USAGE, Failure
from troubleshoot.cli.rule_base import shipped_rules


@click.group()
def rules() -> None:
    """Check, try and explain the rule base."""


@rules.command("check")
@click.argument("pack", nargs=-1, type=click.Path(exists=True, file_okay=False))
@click.pass_context
def check_rules_command(ctx: click.Context, pack: tuple[str, ...]) -> None:
    """Check every rule file; PACK folders are checked beside the shipped rules.

    Each line says path:line:column, what is wrong, and what to write instead.
    """
    from troubleshoot.knowledge.checks import check_rules
    from troubleshoot.knowledge.load import shipped_folder

    problems = check_rules([shipped_folder(), *pack])
    for problem in problems:
        click.echo(f"{problem} [{problem.check}]")
    errors = sum(problem.level == "error" for problem in problems)
    click.echo(f"{errors} to mend, {len(problems) - errors} to know")
    ctx.exit(CHECKS_FOUND if errors else 0)


@rules.command("test")
@click.argument("only", nargs=-1, metavar="[FAULT or SUBSYSTEM]...")
@click.pass_context
def test_rules_command(ctx: click.Context, only: tuple[str, ...]) -> None:
    """Try every card's examples: each must name its fault, or must not."""
    from troubleshoot.visit.trial import try_examples

    knowledge = shipped_rules()
    known = set(knowledge.faults) | {fault.subsystem for fault in knowledge.faults.values()}
    for name in only:
        if name not in known:
            raise Failure([f"{name} is neither a fault nor a subsystem of the rules"], USAGE)
    tried = failed = 0
    for trial in try_examples(knowledge, frozenset(only)):
        tried += 1
        if trial.failure:
            failed += 1
            click.echo(f"{trial.fault}: {trial.example}: {trial.failure}")
    click.echo(f"{tried} examples tried, {failed} failed")
    ctx.exit(CHECKS_FOUND if failed else 0)


@rules.command("explain")
@click.argument("name", metavar="ID")
def explain_command(name: str) -> None:
    """Explain a fault, test, hazard, complaint, procedure or check by its id."""
    from troubleshoot.cli.pages import page_of
    from troubleshoot.reasoning.equipment import suggest

    knowledge = shipped_rules()
    lines = page_of(knowledge, name)
    if lines is None:
        names = [*knowledge.faults, *knowledge.tests, *knowledge.hazards, *knowledge.complaints]
        raise Failure([f"{name} is not in the rules; {suggest(name, names)}"], USAGE)
    for line in lines:
        click.echo(line)


@rules.command("measure")
@click.option("--visits", default=200, show_default=True, help="Simulated visits a unit.")
@click.option("--subsets", default=20, show_default=True, help="Subsets solved exactly, a unit.")
@click.option("--seed", default=1, show_default=True, help="Same seed, same figures.")
def measure_command(visits: int, subsets: int, seed: int) -> None:
    """Measure how well the rules tell faults apart: isolation, simulated visits, the optimum."""
    from troubleshoot.measure.table import measure

    for line in measure(shipped_rules(), visits, subsets, seed):
        click.echo(line)
