"""An id that is used twice, or that was retired.

What: two entries of one kind have the same id, two outcomes of a test, or an id stands in
retired.yaml. A pack counts together with the shipped rules: it may add, never replace.
Why: old visits name tests, outcomes and faults by id; an id must mean one thing for good.
Fix: give the new entry an id of its own.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.base import RuleFile, entries
from troubleshoot.knowledge.definitions import Definition, Definitions
from troubleshoot.knowledge.nodes import LocatedValue
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.walking import text_of, value_at

ID: Final = "unique-ids"

_RETIRABLE: Final = frozenset({"test", "fault", "hazard", "complaint", "procedure"})


def find(files: tuple[RuleFile, ...], definitions: Definitions) -> Iterator[Problem]:
    """Yield a problem for every id that is not the entry's own."""
    for definition in definitions.all:
        first = definitions.of(definition.kind)[definition.id]
        if first is not definition:
            yield _twice(definition, first)
        if definition.kind in _RETIRABLE and definition.id in definitions.names["retired"]:
            what = f"the id {definition.id} is retired"
            yield _problem(definition.file, definition.at, what, "choose a new id")
        if definition.kind == "test":
            yield from _outcomes_twice(definition)


def _twice(definition: Definition, first: Definition) -> Problem:
    what = (
        f"the {definition.kind} {definition.id} is already defined in "
        f"{first.file.path}, line {first.at.line}"
    )
    if definition.file.folder and not first.file.folder:
        return _problem(definition.file, definition.at, what, "a pack may add, never replace")
    return _problem(definition.file, definition.at, what, "choose another id")


def _outcomes_twice(test: Definition) -> Iterator[Problem]:
    seen: dict[str, int] = {}
    for outcome in entries(test.node, "outcomes"):
        at = value_at(outcome, "id")
        word = text_of(at)
        if word is None or not isinstance(at, LocatedValue):
            continue
        if word in seen:
            what = f"{test.id} has the outcome {word} already, on line {seen[word]}"
            yield _problem(test.file, at, what, "choose another word")
        seen.setdefault(word, at.line)


def _problem(file: RuleFile, at: LocatedValue, what: str, instead: str) -> Problem:
    return Problem(file.path, at.line, at.column, what, instead, ID)
