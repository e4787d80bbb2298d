"""The door: every text leaves the program here, and every typed line comes in, in one's language.

The environment names a catalogue file; without one all is English, and nothing of this costs more
than a look at the environment. Only what people see is told in the language: journals, rule files
and what is written for scripts to read stay as they are, so that a visit can be gone on with in any
other.
"""

from __future__ import annotations

import os
import sys
from functools import cache
from typing import TYPE_CHECKING, Final

import click

from troubleshoot.outside.text import shown

if TYPE_CHECKING:
    from troubleshoot.language.catalogue import Catalogue

CATALOGUE_VARIABLE: Final = "TROUBLESHOOT_LANGUAGE"
"""Environment variable that names the catalogue file of another language."""


def catalogue_in_use() -> Catalogue | None:
    """The catalogue that the environment names, if any. Raises NotUsable."""
    path = os.environ.get(CATALOGUE_VARIABLE)
    return _catalogue(path) if path else None


@cache
def _catalogue(path: str) -> Catalogue:
    from troubleshoot.language.catalogue import Catalogue
    from troubleshoot.language.catalogue_file import MOST_BYTES, read_catalogue
    from troubleshoot.outside.files import read_text

    return Catalogue(read_catalogue(read_text(path, MOST_BYTES), path))


def told(text: str) -> str:
    """A text in the language in use; what its catalogue does not say stays English."""
    catalogue = catalogue_in_use()
    return text if catalogue is None else catalogue.told(text)


def heard(typed: str) -> str:
    """What was typed, as the program knows it."""
    catalogue = catalogue_in_use()
    return typed if catalogue is None else catalogue.heard(typed)


def tell(text: str, err: bool = False) -> None:
    """Say a text that stands by itself, a line or several, on standard output or error.

    On a terminal its words stay whole; where no person reads it, so do its lines.
    """
    put(fitted(told(text), err), err)


def fitted(text: str, err: bool = False) -> str:
    """A text broken at its words where a line goes past the terminal's edge, and set in under it.

    Never broken at a hyphen, nor where a word is wider than the screen: what is to be typed or
    copied stays whole.
    """
    width = columns(err)
    if width is None or all(len(line) <= width for line in text.splitlines()):
        return text
    return "\n".join(_broken(line, width) for line in text.splitlines())


def _broken(line: str, width: int) -> str:
    import textwrap

    under = " " * (len(line) - len(line.lstrip()) + 2)
    return textwrap.fill(
        line, width, subsequent_indent=under, break_long_words=False, break_on_hyphens=False
    )


def columns(err: bool = False) -> int | None:
    """How wide the terminal is that a text goes to; None where no person reads it."""
    if not (sys.stderr if err else sys.stdout).isatty():
        return None
    import shutil

    return shutil.get_terminal_size().columns


def put(text: str, err: bool = False) -> None:
    """Put a text out that has been told already, since it was broken into lines."""
    click.echo(shown(text), err=err)


def put_data(line: str) -> None:
    """Put out a line of a table or of JSON for a script, with its own end and as it is."""
    click.echo(line, nl=False)


def tell_report(text: str) -> None:
    """Say a report in Markdown: its marks stay, and what people wrote stays escaped."""
    if catalogue_in_use() is not None:
        from troubleshoot.cli.told_markup import told_markdown

        text = told_markdown(text, told)
    click.echo(text)
