"""What the files of a rule base define: every name, by kind, with its places.

Read from the located files, not from the model, so that names can be checked while something else
in the files is still wrong.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import field
from itertools import chain
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.base import RuleFile, entries
from troubleshoot.knowledge.forms import LISTINGS, ONE_A_FILE
from troubleshoot.knowledge.nodes import Located, LocatedMapping, LocatedValue
from troubleshoot.knowledge.upgrading import AREAS_BEFORE
from troubleshoot.knowledge.walking import text_of, texts_of, value_at


@frozen
class Definition:
    """One entry of a rule file: where its id stands, and the whole entry."""

    kind: str
    id: str
    file: RuleFile
    at: LocatedValue
    node: LocatedMapping


@frozen
class Definitions:
    """All entries of a rule base, in file order, and the names that follow from them."""

    all: tuple[Definition, ...]
    by_kind: Mapping[str, Mapping[str, Definition]]
    words: Mapping[str, Mapping[str, tuple[str, ...]]] = field(default_factory=dict)
    """Of a test its outcomes, of a fact its values: kind -> id -> words."""
    names: Mapping[str, frozenset[str]] = field(default_factory=dict)
    """Names that need no entry of their own: area, subsystem, hazard kind, derived finding, state,
    retired. A word that only its user says is found by a further check, so that it still loads."""

    def of(self, kind: str) -> Mapping[str, Definition]:
        return self.by_kind.get(kind, {})


def collect_definitions(files: tuple[RuleFile, ...]) -> Definitions:
    """Collect every entry that has an id; of two with one id the first counts."""
    found = tuple(definition for file in files for definition in _definitions(file))
    by_kind: dict[str, dict[str, Definition]] = {}
    for definition in found:
        by_kind.setdefault(definition.kind, {}).setdefault(definition.id, definition)
    words = {
        "test": {d.id: _outcomes(d.node) for d in by_kind.get("test", {}).values()},
        "fact": {d.id: _values(d.node) for d in by_kind.get("fact", {}).values()},
    }
    return Definitions(found, by_kind, words, _names(files, found))


def _definitions(file: RuleFile) -> Iterator[Definition]:
    if file.kind in ONE_A_FILE:
        alone = ONE_A_FILE[file.kind]
        yield from _definition(alone.called, file, file.root, alone.key)
    for listing in LISTINGS.get(file.kind, ()):
        if listing.called:
            for node in entries(file.root, listing.key):
                yield from _definition(listing.called, file, node, "id")


def _definition(kind: str, file: RuleFile, node: object, key: str) -> Iterator[Definition]:
    if isinstance(node, LocatedMapping):
        at = value_at(node, key)
        word = text_of(at)
        if word is not None and isinstance(at, LocatedValue):
            yield Definition(kind, word, file, at, node)


def _outcomes(test: LocatedMapping) -> tuple[str, ...]:
    words = (text_of(value_at(outcome, "id")) for outcome in entries(test, "outcomes"))
    return tuple(word for word in words if word is not None)


def _values(fact: LocatedMapping) -> tuple[str, ...]:
    return tuple(word for word, _ in texts_of(value_at(fact, "values")))


_DECLARED: Final = ("subsystem", "hazard kind", "limit")


def _names(
    files: tuple[RuleFile, ...], found: tuple[Definition, ...]
) -> Mapping[str, frozenset[str]]:
    def texts(kind: str, *keys: str) -> frozenset[str]:
        values = (text_of(value_at(d.node, *keys)) for d in found if d.kind == kind)
        return frozenset(value for value in values if value is not None)

    def said_at_top(kind: str, key: str) -> Iterator[str]:
        values = (text_of(value_at(file.root, key)) for file in files if file.kind == kind)
        return (value for value in values if value is not None)

    def listed(node: Located | None) -> Iterator[str]:
        return (word for word, _ in texts_of(node))

    ids = {kind: frozenset(d.id for d in found if d.kind == kind) for kind in _DECLARED}
    parts = (listed(value_at(d.node, "areas")) for d in found if d.kind == "subsystem")
    retired = (value_at(file.root, "retired") for file in files if file.kind == "retired")
    areas = frozenset(chain(said_at_top("tests", "area"), *parts, AREAS_BEFORE))
    return {
        "area": ids["subsystem"] | areas,
        "hazard kind": ids["hazard kind"] | frozenset(said_at_top("hazards", "kind")),
        "subsystem": ids["subsystem"] | texts("fault", "subsystem"),
        "derived finding": texts("procedure", "then", "derives"),
        "state": ids["limit"],
        "retired": frozenset(word for node in retired for word in listed(node)),
    }
