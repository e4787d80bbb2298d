"""A pack that does more than add.

What: a folder beside the shipped rules has no pack.yaml; it retires or renames what is shipped,
says a shipped id in words of its own, or lets a shipped equipment fact follow from others; one of
its looks or measurements does not say in which state the unit must be; the shipped rules hold a
pack.yaml.
Why: a pack from somebody else must not weaken a caution or change what shipped rules mean. What
its test needs of lock, roof and air is asked by the state it names, and nothing is asked for none.
Fix: add entries with ids of your own. Ask the senior technician to change the shipped rules.
Write `work-state`; `any` says that it needs none: nobody touches the unit for it.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.base import RuleFile
from troubleshoot.knowledge.definitions import Definitions
from troubleshoot.knowledge.nodes import Located, LocatedList, LocatedMapping, LocatedValue
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.walking import text_of, texts_of, value_at

ID: Final = "packs"
_AT_THE_UNIT: Final = frozenset({"look", "measurement"})


def find(files: tuple[RuleFile, ...], definitions: Definitions) -> Iterator[Problem]:
    """Yield a problem for every pack that is unnamed or reaches into the shipped rules."""
    yield from _manifests(files)
    shipped = {
        kind: frozenset(id_ for id_, entry in entries.items() if entry.file.folder == 0)
        for kind, entries in definitions.by_kind.items()
    }
    retirable = frozenset().union(*shipped.values())
    for file in files:
        if file.folder and file.kind == "retired":
            for word, at in texts_of(value_at(file.root, "retired")):
                if word in retirable:
                    yield _problem(file, at, f"the pack retires {word}, which is shipped")
            for entry in _items(value_at(file.root, "aliases")):
                yield from _keys_in(file, value_at(entry, "from"), shipped.get("test"), "renames")
        if file.folder and file.kind == "tests":
            for test in _items(value_at(file.root, "tests")):
                yield from _without_state(file, test)
        if file.folder and file.kind == "words":
            ids = frozenset().union(*(_texts(f.root) for f in files if f.folder == 0))
            yield from _keys_in(file, value_at(file.root, "words"), ids, "says otherwise")
        if file.folder and file.kind == "equipment":
            for entry in _items(value_at(file.root, "implies")):
                yield from _keys_in(file, value_at(entry, "then"), shipped.get("fact"), "sets")


def _manifests(files: tuple[RuleFile, ...]) -> Iterator[Problem]:
    named = {file.folder for file in files if file.kind == "pack"}
    first = {file.folder: file for file in reversed(files)}
    for folder, file in sorted(first.items()):
        if folder and folder not in named:
            what = "this folder of rules has no pack.yaml"
            instead = "add pack.yaml with format: 1 and the pack's name"
            yield Problem(file.path, 1, 1, what, instead, ID)
        if folder == 0 and folder in named:
            manifest = next(f for f in files if f.folder == 0 and f.kind == "pack")
            yield Problem(manifest.path, 1, 1, "the shipped rules are no pack", "delete it", ID)


def _texts(node: Located) -> frozenset[str]:
    """Every key and every text of a file: whatever may be an id, as an outcome of a step is."""
    if isinstance(node, LocatedMapping):
        values = (_texts(entry.value) for entry in node.entries.values())
        return frozenset(node.entries).union(*values)
    if isinstance(node, LocatedList):
        return frozenset[str]().union(*map(_texts, node.items))
    text = text_of(node)
    return frozenset() if text is None else frozenset({text})


def _items(node: Located | None) -> tuple[Located, ...]:
    return node.items if isinstance(node, LocatedList) else ()


def _without_state(file: RuleFile, test: Located) -> Iterator[Problem]:
    """A test with the unit at hand that leaves open whether it runs, is live or is locked out."""
    kind = value_at(test, "kind")
    at_the_unit = isinstance(kind, LocatedValue) and kind.value in _AT_THE_UNIT
    if at_the_unit and value_at(test, "work-state") is None:
        what = "a look or a measurement of a pack leaves its work state open"
        instead = "write work-state: locked-out, running, ..., or any if nobody touches the unit"
        yield Problem(file.path, test.line, test.column, what, instead, ID)


def _keys_in(
    file: RuleFile, node: Located | None, shipped: frozenset[str] | None, verb: str
) -> Iterator[Problem]:
    if isinstance(node, LocatedMapping) and shipped is not None:
        for key, entry in node.entries.items():
            if key in shipped:
                what = f"the pack {verb} {key}, which is shipped"
                yield Problem(file.path, entry.line, entry.column, what, _ADD_ONLY, ID)


_ADD_ONLY: Final = "a pack may add, never change what is shipped"


def _problem(file: RuleFile, at: Located, what: str) -> Problem:
    return Problem(file.path, at.line, at.column, what, _ADD_ONLY, ID)
