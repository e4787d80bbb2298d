"""Values of a rule file that remember the line and column where they began, counted from 1."""

from __future__ import annotations

from collections.abc import Mapping

from troubleshoot.frozen import frozen

Scalar = str | int | float | bool | None


@frozen
class LocatedValue:
    """A text, number, true, false or nothing, and where it begins."""

    value: Scalar
    line: int
    column: int


@frozen
class LocatedList:
    items: tuple[Located, ...]
    line: int
    column: int


@frozen
class Entry:
    """One `key: value` of a mapping; the place is the key's."""

    value: Located
    line: int
    column: int


@frozen
class LocatedMapping:
    entries: Mapping[str, Entry]
    line: int
    column: int


Located = LocatedValue | LocatedList | LocatedMapping


def plain(node: Located) -> object:
    """Return the tree as dicts, lists and scalars, without places."""
    if isinstance(node, LocatedMapping):
        return {key: plain(entry.value) for key, entry in node.entries.items()}
    if isinstance(node, LocatedList):
        return [plain(item) for item in node.items]
    return node.value
