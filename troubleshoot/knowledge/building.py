"""Plain data that passed its form -> the objects of the model, as the form says.

Data that has not been read against its form must not come here: nothing is checked again.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache
from sys import intern
from typing import Any, Final

from troubleshoot.knowledge.model.tests import Finding
from troubleshoot.knowledge.shapes import (
    Choice,
    Facts,
    Findings,
    Later,
    ListOf,
    Member,
    Name,
    NewId,
    OneOrMore,
    Pairs,
    Record,
    Shape,
    Tagged,
)


def build(shape: Shape, data: Any) -> Any:
    """The object that plain data of a shape becomes: lists are tuples, findings are `Finding`s."""
    builder = _BUILDERS.get(type(shape))
    return data if builder is None else builder(shape, data)


def build_record(record: Record, data: Mapping[str, Any], **more: Any) -> Any:
    """The object of a record, `more` being what it has from elsewhere; a mapping stays one."""
    if record.makes is None:
        return data
    for member in record.members:
        value: Any = data
        for key in member.keys:
            value = value.get(key)
            if value is None:
                break
        else:
            more[member.name] = _made(member, value)
    return record.makes(**more)


def _made(member: Member, value: Any) -> Any:
    return build(member.shape, value) if member.make is None else member.make(value)


def _items(shape: ListOf | OneOrMore, data: list[Any]) -> tuple[Any, ...]:
    return tuple(build(shape.item, each) for each in data)


def _findings(shape: Findings, data: Mapping[str, list[str]]) -> Finding | tuple[Finding, ...]:
    """One finding where only one may stand, else all."""
    found = tuple(_finding(test, tuple(outcomes)) for test, outcomes in data.items())
    return found[0] if shape.most == 1 else found


@cache
def _finding(test: str, outcomes: tuple[str, ...]) -> Finding:
    """The same finding on many cards is one object: it is kept, and read back, once."""
    return Finding(intern(test), tuple(map(intern, outcomes)))


def _tagged(shape: Tagged, data: Any) -> Any:
    chosen = next((option for tag, option in shape.options if tag in data), shape.otherwise)
    return data if chosen is None else build(chosen, data)


_BUILDERS: Final[Mapping[type, Callable[[Any, Any], Any]]] = {
    Choice: lambda shape, word: intern(word),
    Name: lambda shape, word: intern(word),
    NewId: lambda shape, word: intern(word),
    ListOf: _items,
    OneOrMore: _items,
    Pairs: lambda shape, data: {key: build(shape.value, each) for key, each in data.items()},
    Findings: _findings,
    Facts: lambda shape, data: {fact: tuple(words) for fact, words in data.items()},
    Record: build_record,
    Tagged: _tagged,
    Later: lambda shape, data: build(shape.get(), data),
}
