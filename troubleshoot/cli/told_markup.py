"""Markdown, JSON and help in another language: their marks, keys and columns stay."""

from __future__ import annotations

import inspect
from collections.abc import Callable, Iterable, Mapping
from typing import Final

import click

from troubleshoot.outside.marked import marked, unescaped
from troubleshoot.outside.text import markdown

Told = Callable[[str], str]

_TEXTS: Final = frozenset({
    "cautions", "certifies", "defer_to", "formula", "handed_over", "instead", "lines", "name",
    "not_understood", "open_items", "problem", "proofs", "says", "source", "tag", "title",
    "to_read", "what_to_do",
})  # fmt: skip
"""Keys of plain data under which texts stand; whatever stands under others a script reads."""


def told_markdown(text: str, told: Told) -> str:
    """A report line by line, and cell by cell."""
    return "\n".join(_markdown_line(line, told) for line in text.split("\n"))


def _markdown_line(line: str, told: Told) -> str:
    parts = marked(line)
    cells = " | ".join(_markdown_text(cell, told) for cell in parts.cells)
    return parts.head + cells + parts.strong + parts.end


def _markdown_text(text: str, told: Told) -> str:
    """A text between marks. Where it is told otherwise its letters are escaped anew."""
    plain = unescaped(text)
    new = told(plain)
    if new == plain:
        return text
    return markdown(new) if plain != text else new


def told_plain(value: object, told: Told, key: str = "") -> object:
    """Plain data with its texts told; `key`: under which it stands."""
    if isinstance(value, str):
        return told(value) if key in _TEXTS else value
    if isinstance(value, Mapping):
        return {name: told_plain(each, told, name) for name, each in value.items()}
    if isinstance(value, list | tuple):
        return [told_plain(each, told, key) for each in value]
    return value


def help_formatter(told: Told) -> type[click.HelpFormatter]:
    """Help whose texts are told before they are broken into lines."""

    class Formatter(click.HelpFormatter):
        def write_usage(self, prog: str, args: str = "", prefix: str | None = None) -> None:
            super().write_usage(prog, args, f"{told('Usage:')} " if prefix is None else prefix)

        def write_heading(self, heading: str) -> None:
            super().write_heading(told(heading))

        def write_text(self, text: str) -> None:
            paragraphs = inspect.cleandoc(text).split("\n\n")
            super().write_text("\n\n".join(told(" ".join(each.split())) for each in paragraphs))

        def write_dl(
            self, rows: Iterable[tuple[str, str]], col_max: int = 30, col_spacing: int = 2
        ) -> None:
            super().write_dl([(term, told(text)) for term, text in rows], col_max, col_spacing)

    return Formatter
