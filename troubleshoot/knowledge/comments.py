"""Comments of a rule file: which stand at its top, and which elsewhere."""

from __future__ import annotations

import bisect
from collections.abc import Iterator

import yaml
from yaml.tokens import ScalarToken

Position = tuple[int, int]
"""Line and column, counted from 0."""


def top_comments(text: str) -> list[str]:
    """The comment lines before the first line of content, and the empty lines between them."""
    found: list[str] = []
    for line in text.splitlines():
        stripped = line.strip()
        if stripped and not stripped.startswith("#"):
            break
        found.append(stripped)
    while found and not found[-1]:
        found.pop()
    while found and not found[0]:
        found.pop(0)
    return found


def comments_below(text: str) -> Iterator[Position]:
    """Yield the place of every comment after the first line of content."""
    spans = _scalar_spans(text)
    below = False
    for number, line in enumerate(text.split("\n")):
        below = below or bool(line.strip() and not line.lstrip().startswith("#"))
        column = _comment_in(line, number, spans) if below else None
        if column is not None:
            yield number, column


def _comment_in(line: str, number: int, spans: list[tuple[Position, Position]]) -> int | None:
    for column, character in enumerate(line):
        if character != "#" or (column and line[column - 1] not in " \t"):
            continue
        if not _inside((number, column), spans):
            return column
    return None


def _inside(position: Position, spans: list[tuple[Position, Position]]) -> bool:
    before = bisect.bisect_right(spans, (position, (1 << 30, 0))) - 1
    return before >= 0 and position < spans[before][1]


def _scalar_spans(text: str) -> list[tuple[Position, Position]]:
    """Where texts and numbers begin and end; a block text begins after its own first line."""
    loader = yaml.CBaseLoader if yaml.__with_libyaml__ else yaml.BaseLoader
    spans = []
    for token in yaml.scan(text, Loader=loader):
        if isinstance(token, ScalarToken):
            start, end = token.start_mark, token.end_mark
            begins = (start.line, start.column)
            if token.style in ("|", ">"):
                begins = (start.line + 1, 0)
            spans.append((begins, (end.line, end.column)))
    return spans
