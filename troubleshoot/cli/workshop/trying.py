"""`rules test`: every card's examples, tried; a site's past cases; grades that nothing holds."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Final

import click

from troubleshoot.cli.door import put, tell
from troubleshoot.cli.failures import CHECKS_FOUND, USAGE, Failure
from troubleshoot.cli.rule_base import rules_in_force, takes_rules
from troubleshoot.outside.refusal import in_a_line

if TYPE_CHECKING:
    from troubleshoot.authoring.history import PastCase
    from troubleshoot.authoring.trial import Trial
    from troubleshoot.knowledge.model import Fault, Knowledge

MOST_MARGINS: Final = 20


@click.command("test", short_help="Try every card's examples, or a site's past cases.")
@click.argument("only", nargs=-1, metavar="[FAULT or SUBSYSTEM]...")
@click.option(
    "--changed", is_flag=True, help="Only those that a change since they last held can affect."
)
@click.option("--margins", is_flag=True, help="Which examples are nearest to failing.")
@click.option("--rivals", is_flag=True, help="The nearest causes, and the test that splits them.")
@click.option("--mutate", is_flag=True, help="Which grade could change and no example notices.")
@click.option(
    "--cases",
    type=click.Path(exists=True, file_okay=False),
    metavar="FOLDER",
    help="Past cases instead: files with truth, and with case as assess takes it.",
)
@takes_rules
@click.pass_context
def test_rules_command(
    ctx: click.Context,
    only: tuple[str, ...],
    changed: bool,
    margins: bool,
    rivals: bool,
    mutate: bool,
    cases: str | None,
) -> None:
    """Try every card's examples: each must name its fault, or must not.

    One that fails is told with the ranking that came, the one that is wanted, and the answers that
    made the difference.
    """
    knowledge = rules_in_force()
    if cases is not None:
        ctx.exit(_try_cases(knowledge, Path(cases)))
    faults = _named(knowledge, only)
    if mutate:
        ctx.exit(_mutate(knowledge, faults))
    from troubleshoot.authoring.held import run_examples
    from troubleshoot.knowledge.cache import cache_folder

    run = run_examples(knowledge, faults, cache_folder(), changed)
    for trial in run.trials:
        tell_failure(knowledge, trial)
        if rivals and trial.example.names_it:
            _tell_rivals(trial)
    if margins:
        _tell_margins(run.trials)
    if changed:
        tell(f"Left out, as nothing that they rest on has changed since they held: {run.unchanged}")
    failed = sum(bool(trial.failure) and not trial.known_gap for trial in run.trials)
    gaps = sum(trial.known_gap for trial in run.trials)
    tell(f"{len(run.trials)} examples tried, {failed} failed, {gaps} known gaps in draft cards")
    ctx.exit(CHECKS_FOUND if failed else 0)


def _named(knowledge: Knowledge, only: Sequence[str]) -> list[Fault]:
    """The cards that are named by themselves or by their subsystem; all where none is."""
    known = set(knowledge.faults) | {fault.subsystem for fault in knowledge.faults.values()}
    for name in only:
        if name not in known:
            raise Failure([f"{name} is neither a fault nor a subsystem of the rules"], USAGE)
    return [
        fault
        for fault in knowledge.faults.values()
        if not only or fault.id in only or fault.subsystem in only
    ]


def tell_failure(knowledge: Knowledge, trial: Trial) -> None:
    """Tell of an example that fails, and why."""
    from troubleshoot.authoring.account_of_trial import account

    if trial.failure:
        kind = "known gap: " if trial.known_gap else ""
        tell(f"{kind}{trial.fault}: {trial.example.name}: {trial.failure}")
        for line in account(knowledge, trial):
            tell(f"  {line}")


def _tell_rivals(trial: Trial) -> None:
    from troubleshoot.authoring.rivals import rivals
    from troubleshoot.visit.telling.wording import percent

    found = rivals(trial)
    if found is None:
        return
    tell(f"{trial.fault}: {trial.example.name}: {percent(found.own.probability)}")
    for cause in found.nearest:
        tell(f"  {cause.fault.name}  ({cause.fault.id}): {percent(cause.probability)}")
    if found.splits is not None:
        minutes = round(found.splits.minutes + found.splits.switch_minutes)
        tell(f"  tells them apart for least: {found.splits.test.name} (about {minutes} min)")


def _tell_margins(trials: Iterable[Trial]) -> None:
    """The examples that are nearest to failing, the nearest first."""
    found = [(margin, trial) for trial in trials if (margin := trial.margin) is not None]
    found.sort(key=lambda each: each[0])
    tell("Nearest to failing, with the points of chance that are left:")
    for margin, trial in found[:MOST_MARGINS]:
        tell(f"  {100 * margin:.0f}  {trial.fault}: {trial.example.name}")


def _mutate(knowledge: Knowledge, faults: Iterable[Fault]) -> int:
    """Tell each grade that could change; the exit code."""
    from troubleshoot.authoring.example_text import example_lines
    from troubleshoot.authoring.mutating import unnoticed
    from troubleshoot.cli.workshop.card_said import said_finding
    from troubleshoot.knowledge.spoken import spoken

    grades = free = 0
    for fault in faults:
        grades += len(fault.evidence)
        for each in unnoticed(knowledge, fault):
            free += 1
            finding = each.item.findings[0]
            said = said_finding(knowledge, finding)
            tell(
                f"{fault.id}: {said}: no example notices if {spoken(each.item.grade)} becomes "
                f"{spoken(each.becomes)}"
            )
            if each.example is not None:
                tell("  This one would:")
                for line in example_lines(each.example):
                    put(f"  {line}")
    tell(f"{grades} grades tried, {free} could change unnoticed")
    return 0


def _try_cases(knowledge: Knowledge, folder: Path) -> int:
    """Tell each past case whose fault does not come first; the exit code."""
    from troubleshoot.authoring.history import AMONG, past_cases
    from troubleshoot.visit.telling.wording import counted

    cases = list(past_cases(knowledge, folder))
    for case in cases:
        if case.wrong or case.place != 1:
            tell(_case_line(case))
    first = sum(case.place == 1 for case in cases)
    among = sum(case.place is not None and 1 < case.place <= AMONG for case in cases)
    unread = sum(bool(case.wrong) for case in cases)
    tried = counted(len(cases), "case", "cases")
    tell(
        f"{tried}: what was found comes first in {first}, second or third in {among}, "
        f"later or not at all in {len(cases) - first - among - unread}; {unread} could not be read"
    )
    return 0 if first == len(cases) else CHECKS_FOUND


def _case_line(case: PastCase) -> str:
    from troubleshoot.visit.telling.wording import percent

    file = in_a_line(case.file)
    if case.wrong:
        return f"{file}: {case.wrong}"
    found = " and ".join(case.truth) or "nothing wrong"
    if not case.told:
        return f"{file}: {found} was found, and no cause is ranked"
    fault, chance = case.told[0]
    place = "nowhere" if case.place is None else f"at place {case.place}"
    return f"{file}: {found} was found and stands {place}; first {fault} {percent(chance)}"
