"""A fault card in the wrong place.

What: the name of the file is not the fault's id, or the folder is not its subsystem.
Why: a stranger finds a card by its name.
Fix: rename the file or the folder, not an id that is in use.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.definitions import Definition, Definitions
from troubleshoot.knowledge.nodes import LocatedValue
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase
from troubleshoot.knowledge.walking import text_of, value_at

ID: Final = "file-names"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every card whose path does not say what it is."""
    yield from find_in(base.definitions)


def find_in(definitions: Definitions) -> Iterator[Problem]:
    """The same, of files whose names may be unknown to each other: it may be why."""
    for card in definitions.of("fault").values():
        _, folder, name = card.file.name.split("/")
        if name != f"{card.id}.yaml":
            what = f"the fault {card.id} stands in {name}"
            yield _problem(card, card.at, what, _mended(card.id, name), f"fault {name[:-5]}")
        subsystem = value_at(card.node, "subsystem")
        word = text_of(subsystem)
        if subsystem is not None and word is not None and folder != word:
            entry = card.node.entries["subsystem"]
            at = LocatedValue(word, entry.line, entry.column)
            yield _problem(
                card,
                at,
                f"the subsystem {word} stands in the folder {folder}",
                f"move it to {word}/",
            )


def _mended(id_: str, name: str) -> str:
    return f"name the file {id_}.yaml, or write fault: {name.removesuffix('.yaml')}"


def _problem(
    card: Definition, at: LocatedValue, what: str, instead: str, about: str = ""
) -> Problem:
    return Problem(card.file.path, at.line, at.column, what, instead, ID, about=about)
