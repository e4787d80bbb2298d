"""`rules watch`: a site's folder, checked and its cards tried each time that a file is saved."""

from __future__ import annotations

import time
from contextlib import suppress
from pathlib import Path
from typing import Final

import click

from troubleshoot.cli import clock
from troubleshoot.cli.door import tell
from troubleshoot.cli.failures import Failure
from troubleshoot.cli.rule_base import rules_of
from troubleshoot.cli.workshop.checking import lines_of, sum_of, tell_cause
from troubleshoot.cli.workshop.trying import tell_failure
from troubleshoot.knowledge.layout import yaml_files

SECONDS_BETWEEN_LOOKS: Final = 1.0

Looked = frozenset[tuple[str, int, int]]
"""Each file with its size and when it was changed."""


@click.command("watch", short_help="Check a folder each time that a file in it is saved.")
@click.argument("folder", type=click.Path(exists=True, file_okay=False))
def watch_command(folder: str) -> None:
    """Check FOLDER beside the program's rules, and try its own cards, whenever a file is saved.

    Ctrl-C leaves.
    """
    before: Looked | None = None
    try:
        while True:
            found = _looked_at(Path(folder))
            if found != before:
                before = found
                check_and_try(Path(folder))
            time.sleep(SECONDS_BETWEEN_LOOKS)
    except KeyboardInterrupt:
        tell("")


def check_and_try(folder: Path) -> None:
    """Tell what is wrong in a folder, and which examples of its own cards do not hold."""
    from troubleshoot.knowledge.causes import by_cause
    from troubleshoot.knowledge.checks import checked
    from troubleshoot.knowledge.load import shipped_folder

    lines_of.cache_clear()
    found = checked([shipped_folder(), folder])
    inside = f"{folder}/"
    causes = [each for each in by_cause(found.problems) if each.problem.path.startswith(inside)]
    for cause in causes:
        tell_cause(cause)
    tell(f"{clock.now():%H:%M:%S}  {sum_of(causes)}")
    if found.usable:
        _try_own(folder)


def _try_own(folder: Path) -> None:
    """Try the cards that the folder brings along."""
    from troubleshoot.authoring.trial import try_examples

    try:
        shipped, knowledge = rules_of([]), rules_of([folder])
    except Failure as error:  # saved again meanwhile
        for line in error.lines:
            tell(line)
        return
    own = frozenset(knowledge.faults) - frozenset(shipped.faults)
    trials = list(try_examples(knowledge, own)) if own else []
    for trial in trials:
        tell_failure(knowledge, trial)
    failed = sum(bool(trial.failure) for trial in trials)
    tell(f"          {len(trials)} examples tried, {failed} do not hold")


def _looked_at(folder: Path) -> Looked:
    """The files of a folder as they stand; one that goes away meanwhile is not there."""
    found = set()
    with suppress(OSError):
        for name, entry in yaml_files(folder):
            stat = entry.stat(follow_symlinks=False)
            found.add((name, stat.st_size, stat.st_mtime_ns))
    return frozenset(found)
