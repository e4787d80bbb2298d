"""Sentences as code makes them: an expression to the texts that it can come to, holes named."""

from __future__ import annotations

import ast
import itertools
import re
from collections.abc import Iterator
from typing import Final

from troubleshoot.language.holes import letters, written
from troubleshoot.language.notes import JOINED

_MOST_WAYS: Final = 24
_HOLE: Final = "\0"
_Piece = tuple[str, str]
"""(text, "") or (what fills the hole, _HOLE)."""


def sentences(node: ast.expr) -> Iterator[str]:
    """The texts that an expression can come to."""
    for way in itertools.islice(_ways(node), _MOST_WAYS):
        yield from _texts(way)


def joint(node: ast.Call) -> Iterator[str]:
    """What joins the texts of a list: `" and ".join(names)`."""
    between = str(node.func.value.value)  # type: ignore[attr-defined]
    first, more = JOINED
    yield from _texts(((first, _HOLE), (between, ""), (more, _HOLE)))


def _ways(node: ast.expr) -> Iterator[tuple[_Piece, ...]]:
    """The ways in which an expression comes to a text."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        yield ((node.value, ""),)
    elif isinstance(node, ast.JoinedStr):
        for parts in itertools.product(*(list(_ways(value)) for value in node.values)):
            yield tuple(itertools.chain.from_iterable(parts))
    elif isinstance(node, ast.FormattedValue):
        inner = node.value
        if isinstance(inner, ast.IfExp | ast.JoinedStr) or is_text(inner):
            yield from _ways(inner)
        else:
            yield ((name_of(inner), _HOLE),)
    elif isinstance(node, ast.IfExp):
        yield from _ways(node.body)
        yield from _ways(node.orelse)
    elif isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add):
        for left, right in itertools.product(list(_ways(node.left)), list(_ways(node.right))):
            yield (*left, *right)
    else:
        yield ((name_of(node), _HOLE),)


def name_of(node: ast.expr) -> str:
    """What fills a hole, in a word."""
    if isinstance(node, ast.Name):
        name = node.id
    elif isinstance(node, ast.Attribute):
        name = node.attr
    elif isinstance(node, ast.Subscript):
        inside = node.slice
        own = inside.value if isinstance(inside, ast.Constant) else None
        name = own if isinstance(own, str) else name_of(node.value)
    elif isinstance(node, ast.Call):
        goes_over = is_join(node) or name_of(node.func) in _OVER
        name = name_of(node.args[-1] if node.args and goes_over else node.func)
    elif isinstance(node, ast.GeneratorExp | ast.ListComp):
        name = name_of(node.elt)
    elif isinstance(node, ast.BoolOp):
        name = name_of(node.values[0])
    else:
        name = "number" if isinstance(node, ast.BinOp) else "text"
    plain = re.sub(r"[^a-z0-9]+", "_", name.lower()).strip("_")
    return plain if plain[:1].isalpha() else f"text_{plain}".rstrip("_")


_OVER: Final = frozenset({"map", "sorted", "str", "len", "filter", "list", "tuple", "fromkeys"})


def is_text(node: ast.AST) -> bool:
    return isinstance(node, ast.Constant) and isinstance(node.value, str)


def is_join(node: ast.Call) -> bool:
    is_join = isinstance(node.func, ast.Attribute) and node.func.attr == "join"
    return is_join and is_text(node.func.value)  # type: ignore[attr-defined]


def _texts(pieces: tuple[_Piece, ...]) -> Iterator[str]:
    """The lines of a text as a translator reads them: holes named, blanks at the ends gone."""
    lines: list[list[_Piece]] = [[]]
    for text, kind in pieces:
        first, *more = [text] if kind else text.split("\n")
        lines[-1].append((first, kind))
        lines += [[(each, "")] for each in more]
    for line in lines:
        own = "".join(text for text, kind in line if not kind)
        if letters(own) and not _PATTERN.search(own):
            said = _sentence(line)
            yield from (cell.strip() for cell in said.strip("| ").split(" | ") if letters(cell))


_PATTERN: Final = re.compile(r"\(\?|\\")


def _sentence(line: list[_Piece]) -> str:
    """One line with named holes: of neighbouring holes one is made, and no name stands twice."""
    merged: list[_Piece] = []
    for text, kind in line:
        if merged and merged[-1][1] == kind:
            joint = "_" if kind else ""
            merged[-1] = (f"{merged[-1][0]}{joint}{text}", kind)
        elif text or kind:
            merged.append((text, kind))
    if re.match(r" \w", merged[0][0]) and not merged[0][1]:
        merged.insert(0, ("before", _HOLE))
    if re.search(r"\w $", merged[-1][0]) and not merged[-1][1]:
        merged.append(("after", _HOLE))
    said, names = "", dict[str, int]()
    for text, kind in merged:
        if not kind:
            said += written(text)
            continue
        names[text] = names.get(text, 0) + 1
        said += f"{{{text}{names[text] if names[text] > 1 else ''}}}"
    bare = said.strip()
    return _LEADING.sub("", bare) if not bare.startswith("{") else bare


_LEADING: Final = re.compile(r"^(?:[,;:.)\-]|#+) +|^\((?=[^)]*$)")
