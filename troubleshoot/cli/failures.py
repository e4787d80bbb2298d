"""How the command line fails: one sentence on standard error, and an exit code that tells.

0 done; 1 checks found something; 2 usage; 3 a scripted answer was not understood; 4 visit kept,
not finished; 5 rules invalid; 6 the journal cannot be written; 130 Ctrl-C.
"""

from __future__ import annotations

import io
import os
import sys
from collections.abc import Iterable
from typing import Any

import click

from troubleshoot.cli.door import catalogue_in_use, fitted, tell, told
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import shortened, shown

CHECKS_FOUND = 1
USAGE = 2
NOT_UNDERSTOOD = 3
KEPT = 4
RULES_INVALID = 5
JOURNAL_FAILED = 6
INTERRUPTED = 130


class Failure(click.ClickException):
    """A failure with its exit code and sentences; with `--json` also an error object."""

    def __init__(self, lines: Iterable[str], exit_code: int) -> None:
        self.lines = tuple(lines)
        super().__init__("\n".join(self.lines))
        self.code = exit_code

    def show(self, file: Any = None) -> None:
        for line in self.lines:
            click.echo(fitted(shortened(shown(told(line))), err=True), err=True, file=file)


def _use_language() -> None:
    """Have help told in the language in use, if another is. Raises NotUsable."""
    formatter = click.HelpFormatter
    if catalogue_in_use() is not None:
        from troubleshoot.cli.told_markup import help_formatter

        formatter = help_formatter(told)
    click.Context.formatter_class = formatter


def run_command(command: click.Command) -> int:
    """Run the command line; returns the exit code, never a traceback for what people do."""
    try:
        _use_language()
    except NotUsable as error:
        click.echo(shown(str(error)), err=True)
        return USAGE
    try:
        result = command.main(standalone_mode=False, prog_name="troubleshoot")
    except click.exceptions.Exit as error:
        return error.exit_code
    except click.Abort:
        click.echo("", err=True)
        return INTERRUPTED
    except Failure as error:
        error.show()
        return error.code
    except click.ClickException as error:
        said = io.StringIO()
        error.show(said)
        tell(said.getvalue().removesuffix("\n"), err=True)
        return error.exit_code
    except BrokenPipeError:
        # Whoever read our output has gone; say nothing more, at exit either.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 1
    return result if isinstance(result, int) else 0
