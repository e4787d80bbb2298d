"""`rules draw`: the faults of a subsystem against its tests, as one page to print."""

from __future__ import annotations

from pathlib import Path

import click

from troubleshoot.cli.door import tell
from troubleshoot.cli.failures import USAGE, Failure
from troubleshoot.cli.rule_base import rules_in_force, takes_rules
from troubleshoot.cli.workshop.new_card import write_new
from troubleshoot.outside.refusal import in_a_line


@click.command("draw", short_help="Draw the faults of a subsystem against its tests.")
@click.argument("subsystem")
@click.argument("file", type=click.Path(dir_okay=False))
@takes_rules
def draw_command(subsystem: str, file: str) -> None:
    """Draw the faults of SUBSYSTEM against the tests that they are known by, into FILE.svg.

    It prints on one page. A FILE that is there is left as it is.
    """
    from troubleshoot.authoring.drawing import chart_of, svg_of
    from troubleshoot.knowledge.problems import did_you_mean

    knowledge = rules_in_force()
    chart = chart_of(knowledge, subsystem)
    if not chart.faults:
        known = {fault.subsystem for fault in knowledge.faults.values()}
        said = f"{subsystem} is no subsystem with faults; {did_you_mean(subsystem, known)}"
        raise Failure([said], USAGE)
    path = Path(file)
    write_new(path.parent, {path.name: svg_of(chart)})
    tell(f"{in_a_line(file)}: {len(chart.faults)} faults, {len(chart.tests)} tests")
