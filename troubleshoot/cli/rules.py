"""`troubleshoot rules`: check, try and explain the rule base."""

from __future__ import annotations

import click

from troubleshoot.cli.workshop.checking import check_rules_command
from troubleshoot.cli.workshop.drawing import draw_command
from troubleshoot.cli.workshop.files import format_command, schema_command, texts_command
from troubleshoot.cli.workshop.finding import explain_command, find_command
from troubleshoot.cli.workshop.going_over import go_over_command
from troubleshoot.cli.workshop.measuring import measure_command
from troubleshoot.cli.workshop.new_card import new_command
from troubleshoot.cli.workshop.packs import pack
from troubleshoot.cli.workshop.trying import test_rules_command
from troubleshoot.cli.workshop.watching import watch_command


@click.group()
def rules() -> None:
    """Check, try and explain the rule base."""


for _command in (
    check_rules_command, draw_command, explain_command, find_command, format_command,
    go_over_command, measure_command, new_command, pack, schema_command, test_rules_command,
    texts_command, watch_command,
):  # fmt: skip
    rules.add_command(_command)
