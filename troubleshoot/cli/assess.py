"""`troubleshoot assess FILE`: rank causes from readings already taken, no questions."""

from __future__ import annotations

import click

from troubleshoot.cli.case_input import case_from
from troubleshoot.cli.door import tell
from troubleshoot.cli.json_output import say_json
from troubleshoot.cli.rule_base import rules_in_force, takes_rules


@click.command()
@click.argument("file", metavar="FILE")
@click.option("--json", "as_json", is_flag=True, help="The account as JSON, for scripts.")
@takes_rules
def assess(file: str, as_json: bool) -> None:
    """Rank causes from readings already taken, without asking anything.

    FILE is YAML or JSON (- for standard input) with unit, complaint, conditions and readings.
    """
    from troubleshoot.visit.cases.assessment import assess_case

    knowledge = rules_in_force()
    case = case_from(file, knowledge, as_json)
    account, lines = assess_case(knowledge, case)
    if as_json:
        say_json(account)
    else:
        for line in lines:
            tell(line)
