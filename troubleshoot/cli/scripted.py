"""`diagnose --answers FILE`: a visit answered from a file."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import click

from troubleshoot.cli.case_input import read_plain, refusal_failure
from troubleshoot.cli.failures import USAGE, Failure
from troubleshoot.cli.journal_shelf import JournalShelf
from troubleshoot.cli.json_output import say_json
from troubleshoot.cli.rule_base import shipped_rules
from troubleshoot.dialogue.scripted import ScriptedVisit, start_event
from troubleshoot.dialogue.shelf import same_unit
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.equipment import InputRefused
from troubleshoot.visit.case_file import read_case


def run_scripted(
    answers: str | None, as_json: bool, profiles: tuple[str, ...], unit: str, visits: Path
) -> None:
    """Run the visit and print its account; refused while a STOP stands over the unit."""
    knowledge = shipped_rules()
    for stopped in JournalShelf(knowledge, visits).stopped() if unit else ():
        if same_unit(stopped.unit, unit):
            sentence = f"a STOP stands over {unit}; see: troubleshoot report {stopped.visit}"
            raise Failure([sentence], USAGE)
    try:
        data = read_plain(answers) if answers is not None else {}
        case = read_case(knowledge, data)
    except InputRefused as error:
        raise refusal_failure(error, as_json) from None
    assert isinstance(data, Mapping)
    start = start_event(case, data, iter(profiles) if profiles else None)
    account = ScriptedVisit(Reasoner(knowledge), case, start).run()
    if as_json:
        say_json(account)
        return
    from troubleshoot.records.report import markdown_report

    click.echo(markdown_report(knowledge, account))
