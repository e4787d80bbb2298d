"""Walking a file along its form: every value together with the shape that it should have."""

from __future__ import annotations

from collections.abc import Iterator

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.nodes import Located, LocatedList, LocatedMapping, LocatedValue
from troubleshoot.knowledge.shapes import (
    Later,
    ListOf,
    OneOrMore,
    Pairs,
    Record,
    Shape,
    Tagged,
)


@frozen
class Step:
    """A value met on the walk; `inside` are the mappings round it, the nearest last."""

    shape: Shape
    node: Located
    inside: tuple[LocatedMapping, ...]


def walk(shape: Shape, node: Located, inside: tuple[LocatedMapping, ...] = ()) -> Iterator[Step]:
    """Yield every value of a file with its shape, parents first; what does not fit is left out."""
    if isinstance(shape, Later):
        shape = shape.get()
    yield Step(shape, node, inside)
    if isinstance(shape, OneOrMore):
        items = node.items if isinstance(node, LocatedList) else (node,)
        for item in items:
            yield from walk(shape.item, item, inside)
    elif isinstance(shape, ListOf) and isinstance(node, LocatedList):
        for item in node.items:
            yield from walk(shape.item, item, inside)
    elif isinstance(node, LocatedMapping):
        yield from _walk_mapping(shape, node, inside)


def _walk_mapping(
    shape: Shape, node: LocatedMapping, inside: tuple[LocatedMapping, ...]
) -> Iterator[Step]:
    if isinstance(shape, Record):
        for key, entry in node.entries.items():
            field = shape.field(key)
            if field is not None:
                yield from walk(field.shape, entry.value, (*inside, node))
    elif isinstance(shape, Pairs):
        for key, entry in node.entries.items():
            yield Step(shape.key, LocatedValue(key, entry.line, entry.column), inside)
            yield from walk(shape.value, entry.value, inside)
    elif isinstance(shape, Tagged):
        chosen = next((option for tag, option in shape.options if tag in node.entries), None)
        option = chosen if chosen is not None else shape.otherwise
        if option is not None:
            yield from walk(option, node, inside)


def text_of(node: Located | None) -> str | None:
    """The text of a value, or None where it is no text."""
    if isinstance(node, LocatedValue) and isinstance(node.value, str):
        return " ".join(node.value.split())
    return None


def texts_of(node: Located | None) -> Iterator[tuple[str, LocatedValue]]:
    """The texts of a single value or of a list, each with its value."""
    for item in node.items if isinstance(node, LocatedList) else (node,):
        text = text_of(item)
        if text is not None and isinstance(item, LocatedValue):
            yield text, item


def value_at(node: Located | None, *keys: str | int) -> Located | None:
    """The value reached by keys and list numbers, or None where the way ends before."""
    for key in keys:
        if isinstance(node, LocatedMapping) and isinstance(key, str) and key in node.entries:
            node = node.entries[key].value
        elif isinstance(node, LocatedList) and isinstance(key, int) and key < len(node.items):
            node = node.items[key]
        else:
            return None
    return node
