"""Located values against a form -> plain data, and a problem for every place that does not fit.

The plain data is regular: keys stand in the order of the form, what may be one item or a list is
always a list, runs of white space are one space. That is what `building` takes and what the cache
keeps.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Final

from troubleshoot.knowledge.nodes import (
    Located,
    LocatedList,
    LocatedMapping,
    LocatedValue,
)
from troubleshoot.knowledge.problems import Problem, did_you_mean
from troubleshoot.knowledge.reading_values import ValueReader
from troubleshoot.knowledge.shapes import (
    Anything,
    Choice,
    Exactly,
    Facts,
    Findings,
    Later,
    ListOf,
    Name,
    NewId,
    Number,
    OneOrMore,
    Pairs,
    Percent,
    Record,
    Shape,
    Tagged,
    Text,
    Truth,
    Word,
)


def read_form(form: Record, root: Located, path: str) -> tuple[Any, list[Problem]]:
    """Return the plain data of a file and every problem; the data only serves if there is none."""
    reader = FormReader(path)
    data = reader.read(form, root, "the file")
    return data, reader.problems


MOST_KEYS_NAMED: Final = 6
"""Of so few keys all are offered; of more the nearest."""


class FormReader(ValueReader):
    """Reads lists and mappings too; `called` is how a message speaks of the place."""

    def __init__(self, path: str) -> None:
        super().__init__(path)
        self._readers: dict[type, Callable[[Any, Located, str], Any]] = {
            Text: self.text,
            NewId: self.new_id,
            Name: self.name,
            Word: self.word,
            Choice: self.choice,
            Number: self.number,
            Exactly: self.exactly,
            Percent: self.percent,
            Truth: self.truth,
            Anything: self.anything,
            ListOf: self._list,
            OneOrMore: self._one_or_more,
            Pairs: self._pairs,
            Findings: self._findings,
            Facts: self._facts,
            Record: self._record,
            Tagged: self._tagged,
            Later: self._later,
        }

    def read(self, shape: Shape, node: Located, called: str) -> Any:
        return self._readers[type(shape)](shape, node, called)

    def _list(self, shape: ListOf, node: Located, called: str) -> list[Any]:
        if not isinstance(node, LocatedList):
            self.refuse(node, f"{called} must be a list", "write it as [one, two] or with dashes")
            return []
        if not shape.least <= len(node.items) <= shape.most:
            wanted = f"write {shape.least} to {shape.most}"
            if shape.least == shape.most:
                wanted = f"write {shape.least}"
            self.refuse(node, f"{called} holds {len(node.items)} items", wanted)
        item_called = f"an item of {called}"
        return [self.read(shape.item, item, item_called) for item in node.items]

    def _one_or_more(self, shape: OneOrMore, node: Located, called: str) -> list[Any]:
        if isinstance(node, LocatedList):
            return self._list(ListOf(shape.item, most=shape.most), node, called)
        return [self.read(shape.item, node, called)]

    def _entries(
        self, node: Located, called: str, least: int, most: int, example: str
    ) -> LocatedMapping | None:
        if not isinstance(node, LocatedMapping):
            self.refuse(node, f"{called} must be a mapping", f"write {example}")
            return None
        if not least <= len(node.entries) <= most:
            wanted = f"write {least}" if least == most else f"write {least} to {most}"
            self.refuse(node, f"{called} holds {len(node.entries)} keys", f"{wanted}: {example}")
        return node

    def _pairs(self, shape: Pairs, node: Located, called: str) -> dict[str, Any]:
        mapping = self._entries(node, called, shape.least, shape.most, "{key: value}")
        if mapping is None:
            return {}
        result = {}
        for key, entry in mapping.entries.items():
            at = LocatedValue(key, entry.line, entry.column)
            name = self.read(shape.key, at, f"a key of {called}")
            result[name] = self.read(shape.value, entry.value, key)
        return result

    def _findings(self, shape: Findings, node: Located, called: str) -> dict[str, list[Any]]:
        example = "{test: outcome}"
        mapping = self._entries(node, called, shape.least, shape.most, example)
        return {} if mapping is None else self._words_by_key(mapping, Name("outcome"))

    def _facts(self, shape: Facts, node: Located, called: str) -> dict[str, list[Any]]:
        mapping = self._entries(node, called, 1, 12, "{fact: word}")
        return {} if mapping is None else self._words_by_key(mapping, Word())

    def _words_by_key(self, mapping: LocatedMapping, word: Shape) -> dict[Any, list[Any]]:
        words = OneOrMore(word)
        result = {}
        for key, entry in mapping.entries.items():
            at = LocatedValue(key, entry.line, entry.column)
            name = self.name(Name("key"), at, "a key")
            result[name] = self._one_or_more(words, entry.value, key)
            if isinstance(entry.value, LocatedList) and not entry.value.items:
                self.refuse(entry.value, f"{key} names no word", "name at least one")
        return result

    def _record(self, shape: Record, node: Located, called: str) -> dict[str, Any]:
        if not isinstance(node, LocatedMapping):
            keys = ", ".join(field.key for field in shape.fields[:4])
            self.refuse(node, f"{called} must be a mapping", f"write keys such as {keys}")
            return {}
        known = [field.key for field in shape.fields]
        for key, entry in node.entries.items():
            if key not in known:
                place = LocatedValue(key, entry.line, entry.column)
                self.refuse(place, f"unknown key {key} in {shape.name}", _key_meant(key, known))
        result = {}
        for field in shape.fields:
            if field.key in node.entries:
                value = node.entries[field.key].value
                result[field.key] = self.read(field.shape, value, field.key)
            elif field.required:
                instead = f"add {field.key}: {field.meaning}"
                self.refuse(node, f"{field.key} is missing in {shape.name}", instead)
        if shape.some_of and not any(key in node.entries for key in shape.some_of):
            instead = "write at least one of: " + ", ".join(shape.some_of)
            self.refuse(node, f"{shape.name} says nothing", instead)
        return result

    def _tagged(self, shape: Tagged, node: Located, called: str) -> Any:
        tags = [tag for tag, _ in shape.options]
        present: list[str] = []
        if isinstance(node, LocatedMapping):
            present = [tag for tag in tags if tag in node.entries]
        if len(present) == 1:
            return self.read(dict(shape.options)[present[0]], node, called)
        if not present and shape.otherwise is not None:
            return self.read(shape.otherwise, node, called)
        instead = "write exactly one of: " + ", ".join(tags)
        count = "none" if not present else "more than one"
        self.refuse(node, f"{shape.name} has {count} of its possible keys", instead)
        return {}

    def _later(self, shape: Later, node: Located, called: str) -> Any:
        return self.read(shape.get(), node, called)


def _key_meant(key: str, known: list[str]) -> str:
    """What to write for a key that is none: of a few, all of them, for the nearest may mislead."""
    few = len(known) <= MOST_KEYS_NAMED
    return f"write one of: {', '.join(known)}" if few else did_you_mean(key, known)
