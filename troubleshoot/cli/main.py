"""The `troubleshoot` command: a group whose commands are imported only when they are used."""

from __future__ import annotations

import gc
import importlib
import io
import sys
from collections.abc import Mapping
from typing import Any

import click

from troubleshoot import __version__
from troubleshoot.cli.failures import run_command
from troubleshoot.cli.rule_base import takes_rules

COMMANDS: Mapping[str, tuple[str, str]] = {
    "diagnose": ("troubleshoot.cli.diagnose:diagnose", "A visit to a unit with a complaint."),
    "inspect": ("troubleshoot.cli.diagnose:inspect", "A PM of a unit."),
    "assess": (
        "troubleshoot.cli.assess:assess",
        "Rank causes from readings already taken; asks nothing.",
    ),
    "calc": ("troubleshoot.cli.calc:calc", "One computation, with units, formula and source."),
    "visits": ("troubleshoot.cli.kept_visits:visits", "List the visits that are kept."),
    "reopen": (
        "troubleshoot.cli.reopen:reopen",
        "Go on with a stopped visit that has been made safe.",
    ),
    "report": ("troubleshoot.cli.kept_visits:report", "The report of a visit."),
    "units": ("troubleshoot.cli.units:units", "The register of units, and how each stands."),
    "history": (
        "troubleshoot.cli.history:history",
        "A unit's numbers over the years, and what drifts.",
    ),
    "practise": ("troubleshoot.cli.practise:practise", "Practise on units that answer."),
    "rules": ("troubleshoot.cli.rules:rules", "Check, test, explain and write the rule base."),
}
"""Command name -> where it lives, and its one line of help, so that help imports nothing."""


class LazyGroup(click.Group):
    """Imports a command's module when the command is called, never to list it."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in COMMANDS:
            return None
        module, _, attribute = COMMANDS[cmd_name][0].partition(":")
        command = getattr(importlib.import_module(module), attribute)
        assert isinstance(command, click.Command)
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        with formatter.section("Commands"):
            formatter.write_dl([(name, line) for name, (_, line) in COMMANDS.items()])


@click.group(cls=LazyGroup, invoke_without_command=True)
@click.option(
    "--data",
    type=click.Path(file_okay=False),
    envvar="TROUBLESHOOT_DATA",
    help="Folder for visits and units, instead of the usual one.",
)
@takes_rules
@click.version_option(__version__)
@click.pass_context
def cli(ctx: click.Context, data: str | None) -> None:
    """Lead a technician from a rooftop unit's complaint to its cause, safely.

    Without a command: start a visit, or go on with the one that is open. At any question, type
    ? for how, w for why it is asked, and help for the rest.
    """
    ctx.obj = {"data": data}
    if ctx.invoked_subcommand is None:
        ctx.invoke(_command("diagnose"))


def _command(name: str) -> Any:
    module, _, attribute = COMMANDS[name][0].partition(":")
    return getattr(importlib.import_module(module), attribute)


def main() -> None:
    """Entry point: runs the command line and turns every known failure into a sentence.

    What the terminal's encoding cannot show is replaced, never a crash; bytes that are no text are
    marked on the way in, for whoever reads them to turn away.
    """
    # Loading makes many objects that all live on; looking for rubbish among them costs a tenth of
    # the start and finds none.
    gc.set_threshold(1_000_000)
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")
    if isinstance(sys.stdin, io.TextIOWrapper):
        sys.stdin.reconfigure(errors="surrogateescape")
    sys.exit(run_command(cli))
