"""The YAML parser's complaints, put as an author would say them, with the usual slip named."""

from __future__ import annotations

from typing import Final

import yaml

from troubleshoot.knowledge.problems import Problem

_SLIPS: Final = (
    ("mapping values are not allowed", "a colon inside unquoted text", "put the text in quotes"),
    ("cannot start any token", "a text that begins with a special sign", "put it in quotes"),
    ("could not find expected ':'", "a line without `key:`", "write key: value, or use quotes"),
    ("expected alphabetic or numeric", "a text that begins with * or &", "put it in quotes"),
    ("unexpected end of stream", "a quote that is never closed", "close the quote"),
    ("unexpected document indicator", "a quote that is never closed", "close the quote"),
    ("unknown escape", "a backslash inside double quotes", "use single quotes"),
    ("hexdecimal", "a broken escape inside double quotes", "use single quotes"),
    ("hexadecimal", "a broken escape inside double quotes", "use single quotes"),
    ("expected ',' or", "a list or mapping in brackets that goes wrong here",
     "check the commas, the closing bracket and quotes round texts with commas"),
    ("did not find expected '-'", "a line that does not line up with the list",
     "indent it like its neighbors"),
    ("did not find expected key", "a line that does not line up, or text after a closing quote",
     "indent it like its neighbors; put the whole text in quotes"),
    ("expected <block end>", "a line that does not line up, or text after a closing quote",
     "indent it like its neighbors; put the whole text in quotes"),
    ("sequence entries are not allowed", "a dash in the wrong place",
     "begin the list on a line of its own"),
)  # fmt: skip
_OTHERWISE: Final = (
    "this is not well-formed YAML",
    "check indentation, colons and quotes",
)


def explain_syntax(error: yaml.YAMLError, lines: list[str], path: str) -> Problem:
    """Turn a parser's error into a problem at the line and column where it gave up."""
    mark = getattr(error, "problem_mark", None) or getattr(error, "context_mark", None)
    if "unexpected" in str(getattr(error, "problem", "")):  # where the quote was opened
        mark = getattr(error, "context_mark", None) or mark
    line, column = (mark.line + 1, mark.column + 1) if mark is not None else (1, 1)
    if line > len(lines):
        line, column = len(lines), len(lines[-1]) + 1
    if lines[line - 1][column - 1 : column] == "\t":
        return Problem(path, line, column, "a tab", "indent with spaces", "yaml")
    said = f"{getattr(error, 'context', '')} {getattr(error, 'problem', '')}"
    for words, what, instead in _SLIPS:
        if words in said:
            return Problem(path, line, column, what, instead, "yaml")
    what, instead = _OTHERWISE
    return Problem(path, line, column, what, instead, "yaml")
