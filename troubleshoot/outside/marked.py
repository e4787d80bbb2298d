"""The lines of Markdown that this program writes, taken apart: a closed grammar, a line at a time.

A report has headings, lists, tables, strong lines and plain ones, and every letter that people
wrote is escaped in it, so that a line tells by its marks alone what it is.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.frozen import frozen

_LINE: Final = re.compile(r"(#+ |- |\| | *\*\*)?(.*?)(\*\*)?( \|| {2})?", re.DOTALL)
_ESCAPED: Final = re.compile(r"\\([\\`*_\[\]<>|~&#+=.)-])")
_BETWEEN_CELLS: Final = r"(?<!\\) \| "
ROW: Final = "| "
ITEM: Final = "- "


@frozen
class Marked:
    """A line: what it begins with, its text or the texts of its cells, and what it ends with.

    The texts are still escaped.
    """

    head: str
    cells: tuple[str, ...]
    strong: str
    end: str

    @property
    def text(self) -> str:
        """The text of a line that is no row of a table."""
        return self.cells[0]


def marked(line: str) -> Marked:
    """A line of a report, taken apart."""
    match = _LINE.fullmatch(line)
    assert match is not None, "every line is one"
    head, body, strong, end = (part or "" for part in match.groups())
    cells = re.split(_BETWEEN_CELLS, body) if head == ROW else [body]
    return Marked(head, tuple(cells), strong, end)


def unescaped(text: str) -> str:
    """The letters that were written."""
    return _ESCAPED.sub(r"\1", text)
