"""`diagnose --answers FILE`: a visit answered from a file."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from troubleshoot.cli.case_input import data_and_case
from troubleshoot.cli.door import tell, tell_report
from troubleshoot.cli.failures import USAGE, Failure
from troubleshoot.cli.json_output import say_json
from troubleshoot.cli.rule_base import rules_in_force
from troubleshoot.cli.screens.prompts import show_standing_visits
from troubleshoot.cli.terminal import Terminal
from troubleshoot.dialogue.scripted import ScriptedVisit, start_event
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.visit.cases.file import read_case
from troubleshoot.visit.kept.foreign import foreign_in
from troubleshoot.visit.kept.left_before import left_before
from troubleshoot.visit.kept.stopped import (
    Standing,
    may_be_over,
    standing_account,
    standing_visits,
    stops_unit,
)
from troubleshoot.visit.kept.unit_names import same_unit
from troubleshoot.visit.kept.unreadable import DO_NOT_START, Unreadable


def run_scripted(
    answers: str | None, as_json: bool, profiles: tuple[str, ...], unit: str, visits: Path
) -> None:
    """Run the visit and print its account after every STOP that stands over a unit.

    Refused while one stands over this unit.
    """
    knowledge = rules_in_force()
    for line in foreign_in(visits):
        tell(line, err=True)
    standing = tuple(standing_visits(knowledge, visits))
    rows = [standing_account(each, unit) for each in standing]
    for each in filter(stops_unit, standing):
        if may_be_over(each, unit):
            raise _refused(each, unit, rows, as_json)
    data: object = {}
    case = read_case(knowledge, data)
    if answers is not None:
        data, case = data_and_case(answers, knowledge, as_json)
    assert isinstance(data, Mapping)
    start = start_event(case, data, iter(profiles) if profiles else None)
    account = ScriptedVisit(Reasoner(knowledge), case, start).run()
    left = left_before(knowledge, visits, unit).lines
    if as_json:
        say_json({"standing": rows, "left_before": left, **account})
        return
    from troubleshoot.records.report import markdown_report

    show_standing_visits(Terminal(), standing)
    tell_report(markdown_report(knowledge, account, {"left_before": left}))


def _refused(
    standing: Standing, unit: str, rows: list[dict[str, object]], as_json: bool
) -> Failure:
    """What a script is told that names a unit over which a STOP stands, or what may be one."""
    see = f"troubleshoot report {standing.visit}"
    if isinstance(standing, Unreadable):
        problem, instead = f"a STOP may stand over {unit}", DO_NOT_START.rstrip(".")
    else:
        over = unit if same_unit(standing.unit, unit) else f"{standing.unit}, which may be {unit}"
        problem, instead = f"a STOP stands over {over}: {standing.reason}", f"see: {see}"
    if as_json:
        error = {"key": "unit", "problem": problem, "instead": instead}
        say_json({"error": [error], "standing": rows})
    return Failure([f"{problem} (visit {standing.visit}); {instead}"], USAGE)
