"""The parts of what is shown, and the lines that they are broken into at a width."""

from __future__ import annotations

import textwrap

from troubleshoot.cli.door import told
from troubleshoot.frozen import frozen
from troubleshoot.outside.text import shown


@frozen
class Paragraph:
    """A text that is broken into lines; `strong` is not to be missed."""

    text: str
    indent: int = 0
    strong: bool = False


@frozen
class Choices:
    """What may be chosen, a line each; on a small screen two to a line where they fit."""

    items: tuple[str, ...]
    indent: int = 2


def wrapped(text: str, width: int, indent: int = 0) -> list[str]:
    """The lines of a text, never broken at a hyphen; at least one, which may be empty."""
    start = " " * indent
    return textwrap.wrap(
        shown(told(text)),
        width,
        initial_indent=start,
        subsequent_indent=start + "  ",
        break_on_hyphens=False,
    ) or [""]


def in_columns(choices: Choices, width: int, *, pairs: bool) -> list[str]:
    """The lines of what may be chosen; `pairs`: two short ones share a line."""
    column = (width - choices.indent) // 2
    lines: list[str] = []
    open_line = False
    for item in choices.items:
        own = wrapped(item, width, choices.indent)
        short = pairs and len(own[0]) < column + choices.indent and len(own) == 1
        if short and open_line:
            lines[-1] = f"{lines[-1].ljust(column + choices.indent)}{own[0].strip()}"
        else:
            lines += own
        open_line = short and not open_line
    return lines
