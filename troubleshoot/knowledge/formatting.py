"""Rule files in one canonical style: keys in the order of the form, lines of 100 at most.

What fits on a line is written in brackets on that line, save entries and lists of mappings, which
read better one below the other. Only comments at the top of a file can be kept; others are
refused, not lost. What was written in an older form is written in today's.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator
from typing import Any, Final

from troubleshoot.knowledge.comments import comments_below, top_comments
from troubleshoot.knowledge.forms import FORMS
from troubleshoot.knowledge.located import read_located
from troubleshoot.knowledge.nodes import Located, LocatedMapping
from troubleshoot.knowledge.problems import Problem, RuleFileError
from troubleshoot.knowledge.reading_forms import read_form
from troubleshoot.knowledge.shapes import (
    Facts,
    Findings,
    Later,
    ListOf,
    Name,
    OneOrMore,
    Pairs,
    Record,
    Shape,
    Tagged,
)
from troubleshoot.knowledge.upgrading import form_before, upgraded
from troubleshoot.knowledge.yaml_scalars import write_scalar

WIDTH: Final = 100

_WORDS: Final = OneOrMore(Name("word"), alone=True)


def format_file(text: str, path: str = "the file", kind: str | None = None) -> str:
    """Return a rule file in the canonical style; formatting twice changes nothing more.

    `kind` is a key of FORMS; without it the kind is told from the file's keys. Raises
    RuleFileError where the file does not fit its form, or has a comment that is not at the top.
    """
    text = text.removeprefix("\ufeff").replace("\r\n", "\n")
    root = read_located(text, path)
    kind = kind or kind_of_content(root)
    data, problems = read_form(form_before(kind), root, path)
    for line, column in comments_below(text):
        what = "a comment that formatting would lose"
        instead = "move it to the top of the file"
        problems.append(Problem(path, line + 1, column + 1, what, instead, "format"))
    if problems:
        raise RuleFileError(problems)
    return written(kind, data, top_comments(text))


def written(kind: str, data: dict[str, Any], comments: Iterable[str] = ()) -> str:
    """The text of a file from its plain data, as it is written now."""
    lines = _record_lines(FORMS[kind], upgraded(kind, data), 0)
    return "\n".join([*comments, *lines]) + "\n"


def written_in_list(form: Record, data: dict[str, Any]) -> list[str]:
    """The lines of one entry of a list, as it is written in a card."""
    return list(_lines("-", form, data, 2))


def kind_of_content(root: Located) -> str:
    """The kind of rule file whose keys these are; the likeliest where none fits."""
    keys = set(root.entries) if isinstance(root, LocatedMapping) else set()

    def fit(kind: str) -> tuple[int, int]:
        known = {field.key for field in FORMS[kind].fields}
        return len(keys & known), -len(keys ^ known)

    return max(FORMS, key=fit)


def _record_lines(form: Record, data: dict[str, Any], indent: int) -> Iterator[str]:
    for key, shape, value in _members(form, data):
        yield from _lines(f"{write_scalar(key)}:", shape, value, indent)


def _lines(start: str, shape: Shape, value: Any, indent: int) -> Iterator[str]:
    """Lines for `start` (a key with its colon, or a dash) and its value."""
    shape, value = _settled(shape, value)
    if not _is_spread(shape, value):
        line = f"{' ' * indent}{start} {_on_one_line(shape, value)}"
        if len(line) <= WIDTH or not isinstance(value, dict | list | str) or not value:
            yield line
            return
    if isinstance(value, dict):
        yield from _mapping_lines(start, shape, value, indent)
    elif isinstance(value, list):
        yield f"{' ' * indent}{start}"
        yield from _item_lines(shape, value, indent + 2)
    else:
        yield f"{' ' * indent}{start} >-"
        inner = " " * (indent + 2)
        yield from textwrap.wrap(
            value, WIDTH, initial_indent=inner, subsequent_indent=inner,
            break_long_words=False, break_on_hyphens=False,
        )  # fmt: skip


def _mapping_lines(start: str, shape: Shape, value: Any, indent: int) -> Iterator[str]:
    """A mapping below its key, or beginning on the line of its dash."""
    lines = [
        line
        for key, inner, each in _members(shape, value)
        for line in _lines(f"{write_scalar(key)}:", inner, each, indent + 2)
    ]
    if start == "-":
        lines[0] = f"{' ' * indent}- {lines[0].lstrip()}"
    else:
        yield f"{' ' * indent}{start}"
    yield from lines


def _item_lines(shape: Shape, value: list[Any], indent: int) -> Iterator[str]:
    """Items one below the other; findings that have a line of their own have no brackets."""
    one_a_line = isinstance(shape, ListOf) and shape.block
    for number, each in enumerate(value):
        item, settled = _settled(_item_of(shape), each)
        if number and isinstance(shape, ListOf) and shape.apart:
            yield ""
        if one_a_line and isinstance(item, Findings):
            yield from _mapping_lines("-", item, settled, indent)
        else:
            yield from _lines("-", item, settled, indent)


def _on_one_line(shape: Shape, value: Any) -> str:
    """A value on one line; a list or mapping in brackets."""
    return _bracketed(shape, value) if isinstance(value, dict | list) else write_scalar(value)


def _bracketed(shape: Shape, value: Any) -> str:
    shape, value = _settled(shape, value)
    if isinstance(value, dict):
        members = (
            f"{write_scalar(key, in_brackets=True)}: {_bracketed(inner, each)}"
            for key, inner, each in _members(shape, value)
        )
        return "{" + ", ".join(members) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(_bracketed(_item_of(shape), each) for each in value) + "]"
    return write_scalar(value, in_brackets=True)


def _is_spread(shape: Shape, value: Any) -> bool:
    """Whether a value is written over several lines however short it is."""
    shape, value = _settled(shape, value)
    if not value:
        return False
    if isinstance(shape, Record | ListOf) and shape.block:
        return True
    if isinstance(value, dict):
        return any(_is_spread(inner, each) for _, inner, each in _members(shape, value))
    if isinstance(value, list):
        several = len(value) > 1 and any(isinstance(each, dict) for each in value)
        return several or any(_is_spread(_item_of(shape), each) for each in value)
    return False


def _settled(shape: Shape, value: Any) -> tuple[Shape, Any]:
    """The shape that a value really has, and the value as it is written."""
    if isinstance(shape, Later):
        return _settled(shape.get(), value)
    if isinstance(shape, Tagged):
        chosen = next((option for tag, option in shape.options if tag in value), shape.otherwise)
        return (shape, value) if chosen is None else _settled(chosen, value)
    if isinstance(shape, OneOrMore) and shape.alone and len(value) == 1:
        return _settled(shape.item, value[0])
    return shape, value


def _item_of(shape: Shape) -> Shape:
    return shape.item if isinstance(shape, ListOf | OneOrMore) else shape


def _members(shape: Shape, value: dict[str, Any]) -> Iterator[tuple[str, Shape, Any]]:
    """The keys of a mapping in the order in which they are written, with shape and value."""
    if isinstance(shape, Record):
        for field in shape.fields:
            if field.key in value:
                yield field.key, field.shape, value[field.key]
        return
    if isinstance(shape, Findings | Facts):
        inner: Shape = _WORDS
    else:
        inner = shape.value if isinstance(shape, Pairs) else shape
    for key, each in value.items():
        yield key, inner, each
