"""`rules draw`: a subsystem's faults against its tests, or the path of a visit, as one page."""

from __future__ import annotations

from pathlib import Path

import click

from troubleshoot.cli.case_input import case_from
from troubleshoot.cli.door import tell
from troubleshoot.cli.failures import JOURNAL_FAILED, USAGE, Failure
from troubleshoot.cli.kept_visits import visit_of
from troubleshoot.cli.rule_base import rules_in_force, takes_rules
from troubleshoot.cli.workshop.new_card import write_new
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.problems import did_you_mean
from troubleshoot.outside.files import is_file
from troubleshoot.outside.refusal import in_a_line
from troubleshoot.reasoning.readings.answers import Case
from troubleshoot.visit.events import replay
from troubleshoot.visit.kept.journal import JournalError
from troubleshoot.visit.kept.reading import read_visit
from troubleshoot.visit.kept.understanding import understood


@click.command("draw", short_help="Draw a subsystem's faults, or the path of a visit.")
@click.argument("what")
@click.argument("file", type=click.Path(dir_okay=False))
@takes_rules
@click.pass_context
def draw_command(ctx: click.Context, what: str, file: str) -> None:
    """Draw WHAT into FILE.svg, which prints on one page.

    A subsystem: its faults against the tests that they are known by. A visit that is kept, or a
    case file as assess takes it: what was read in its order, where it led, and where each other
    outcome would have. A FILE that is there is left as it is.
    """
    from troubleshoot.authoring.drawing import chart_of, svg_of
    from troubleshoot.authoring.path import path_of
    from troubleshoot.authoring.path_drawing import svg_of_path

    knowledge = rules_in_force()
    chart = chart_of(knowledge, what)
    if chart.faults:
        drawn = svg_of(chart)
        told = f"{len(chart.faults)} faults, {len(chart.tests)} tests"
    else:
        path = path_of(knowledge, _case_of(ctx, knowledge, what), in_a_line(Path(what).name))
        drawn, told = svg_of_path(path), f"{len(path.turns)} tests"
    target = Path(file)
    write_new(target.parent, {target.name: drawn})
    tell(f"{in_a_line(file)}: {told}")


def _case_of(ctx: click.Context, knowledge: Knowledge, what: str) -> Case:
    """The case of a file or of a visit that is kept. Raises Failure where it is neither."""
    if is_file(what):
        return case_from(what, knowledge, as_json=False)
    try:
        journal = visit_of(what, ctx)
    except Failure:
        known = {fault.subsystem for fault in knowledge.faults.values()}
        said = f"{in_a_line(what)} is no subsystem with faults, no visit that is kept and no file"
        raise Failure([f"{said}; {did_you_mean(what, known)}"], USAGE) from None
    try:
        kept = read_visit(journal)
    except JournalError as error:
        raise Failure([str(error)], JOURNAL_FAILED) from None
    return replay(knowledge, understood(knowledge, kept.events).events).case
