"""Located values against a form -> plain data, and a problem for every place that does not fit.

The plain data is regular: keys stand in the order of the form, what may be one item or a list is
always a list, runs of white space are one space. That is what `building` takes and what the cache
keeps.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any, Final

from troubleshoot.knowledge.nodes import (
    Located,
    LocatedList,
    LocatedMapping,
    LocatedValue,
    plain,
)
from troubleshoot.knowledge.problems import Problem, did_you_mean
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
    Record,
    Shape,
    Tagged,
    Text,
    Truth,
    Word,
)

ID: Final = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
WORD: Final = re.compile(r"[A-Za-z0-9.]+(?:-[A-Za-z0-9.]+)*")
LONGEST_ID: Final = 80
_LONGEST_NAME: Final = 200


def read_form(form: Record, root: Located, path: str) -> tuple[Any, list[Problem]]:
    """Return the plain data of a file and every problem; the data only serves if there is none."""
    reader = FormReader(path)
    data = reader.read(form, root, "the file")
    return data, reader.problems


class FormReader:
    """Reads values against shapes; `called` is how a message speaks of the place."""

    def __init__(self, path: str) -> None:
        self.problems: list[Problem] = []
        self._path = path
        self._readers: dict[type, Callable[[Any, Located, str], Any]] = {
            Text: self._text,
            NewId: self._new_id,
            Name: self._name,
            Word: self._word,
            Choice: self._choice,
            Number: self._number,
            Exactly: self._exactly,
            Truth: self._truth,
            Anything: self._anything,
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

    def _refuse(self, node: Located, what: str, instead: str) -> None:
        place = (self._path, node.line, node.column)
        self.problems.append(Problem(*place, what, instead, "form"))

    def _words(self, node: Located, called: str, wanted: str) -> str | None:
        """The text of a value with its white space evened out, or None after a problem."""
        if isinstance(node, LocatedValue):
            if isinstance(node.value, str):
                text = " ".join(node.value.split())
                if text:
                    return text
                self._refuse(node, f"{called} is empty", f"write {wanted}")
                return None
            if isinstance(node.value, bool | int | float):
                shown = str(node.value).lower()
                self._refuse(node, f"{called} must be {wanted}, not {shown}", "put it in quotes")
                return None
            self._refuse(node, f"{called} has no value", f"write {wanted}, or delete the key")
            return None
        kind = "a list" if isinstance(node, LocatedList) else "a mapping"
        self._refuse(node, f"{called} must be {wanted}, not {kind}", f"write {wanted}")
        return None

    def _text(self, shape: Text, node: Located, called: str) -> str | None:
        text = self._words(node, called, "a text")
        if text is not None and len(text) > shape.longest:
            what = f"{called} has {len(text)} characters"
            self._refuse(node, what, f"keep it under {shape.longest}")
        return text

    def _new_id(self, shape: NewId, node: Located, called: str) -> str | None:
        text = self._words(node, called, "an id")
        if text is not None and (not ID.fullmatch(text) or len(text) > LONGEST_ID):
            instead = "write small letters and digits, words joined by hyphens"
            self._refuse(node, f"{called} {text!r} is not well formed", instead)
        return text

    def _name(self, shape: Name, node: Located, called: str) -> str | None:
        text = self._words(node, called, f"the name of a {shape.of}")
        if text is not None and len(text) > _LONGEST_NAME:
            self._refuse(node, f"{called} has {len(text)} characters", "write an id")
        return text

    def _word(self, shape: Word, node: Located, called: str) -> str | None:
        text = self._words(node, called, "a word")
        if text is not None and (not WORD.fullmatch(text) or len(text) > LONGEST_ID):
            self._refuse(node, f"{called} {text!r} is not one word", "join words by hyphens")
        return text

    def _choice(self, shape: Choice, node: Located, called: str) -> str | None:
        text = self._words(node, called, "one of " + ", ".join(shape.options))
        if text is not None and text not in shape.options:
            self._refuse(node, f"{called} cannot be {text}", did_you_mean(text, shape.options))
        return text

    def _number(self, shape: Number, node: Located, called: str) -> float | int | None:
        value = node.value if isinstance(node, LocatedValue) else None
        if isinstance(value, bool) or not isinstance(value, int | float):
            self._refuse(node, f"{called} must be a number", f"write {_range(shape)}")
            return None
        below = shape.least is not None and value < shape.least
        above = shape.most is not None and value > shape.most
        if below or above or (shape.whole and not isinstance(value, int)):
            self._refuse(node, f"{called} cannot be {value}", f"write {_range(shape)}")
        return value

    def _exactly(self, shape: Exactly, node: Located, called: str) -> int:
        value = node.value if isinstance(node, LocatedValue) else None
        if isinstance(value, bool) or value != shape.number:
            instead = f"this program reads {called}: {shape.number}"
            self._refuse(node, f"another {called} than this program knows", instead)
        return shape.number

    def _truth(self, shape: Truth, node: Located, called: str) -> bool | None:
        if isinstance(node, LocatedValue) and isinstance(node.value, bool):
            return node.value
        self._refuse(node, f"{called} must be true or false", "write true or false")
        return None

    def _anything(self, shape: Anything, node: Located, called: str) -> Any:
        if isinstance(node, LocatedValue) and node.value is None:
            self._refuse(node, f"{called} has no value", "write it, or delete the key")
        return _evened(plain(node))

    def _list(self, shape: ListOf, node: Located, called: str) -> list[Any]:
        if not isinstance(node, LocatedList):
            self._refuse(node, f"{called} must be a list", "write it as [one, two] or with dashes")
            return []
        if not shape.least <= len(node.items) <= shape.most:
            wanted = f"write {shape.least} to {shape.most}"
            if shape.least == shape.most:
                wanted = f"write {shape.least}"
            self._refuse(node, f"{called} holds {len(node.items)} items", wanted)
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
            self._refuse(node, f"{called} must be a mapping", f"write {example}")
            return None
        if not least <= len(node.entries) <= most:
            wanted = f"write {least}" if least == most else f"write {least} to {most}"
            self._refuse(node, f"{called} holds {len(node.entries)} keys", f"{wanted}: {example}")
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
            name = self._name(Name("key"), at, "a key")
            result[name] = self._one_or_more(words, entry.value, key)
            if isinstance(entry.value, LocatedList) and not entry.value.items:
                self._refuse(entry.value, f"{key} names no word", "name at least one")
        return result

    def _record(self, shape: Record, node: Located, called: str) -> dict[str, Any]:
        if not isinstance(node, LocatedMapping):
            keys = ", ".join(field.key for field in shape.fields[:4])
            self._refuse(node, f"{called} must be a mapping", f"write keys such as {keys}")
            return {}
        known = [field.key for field in shape.fields]
        for key, entry in node.entries.items():
            if key not in known:
                place = LocatedValue(key, entry.line, entry.column)
                self._refuse(place, f"unknown key {key} in {shape.name}", did_you_mean(key, known))
        result = {}
        for field in shape.fields:
            if field.key in node.entries:
                value = node.entries[field.key].value
                result[field.key] = self.read(field.shape, value, field.key)
            elif field.required:
                instead = f"add {field.key}: {field.meaning}"
                self._refuse(node, f"{field.key} is missing in {shape.name}", instead)
        if shape.some_of and not any(key in node.entries for key in shape.some_of):
            instead = "write at least one of: " + ", ".join(shape.some_of)
            self._refuse(node, f"{shape.name} says nothing", instead)
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
        self._refuse(node, f"{shape.name} has {count} of its possible keys", instead)
        return {}

    def _later(self, shape: Later, node: Located, called: str) -> Any:
        return self.read(shape.get(), node, called)


def _evened(value: Any) -> Any:
    """Plain data with runs of white space in its texts as one space."""
    if isinstance(value, str):
        return " ".join(value.split())
    if isinstance(value, list):
        return [_evened(item) for item in value]
    if isinstance(value, dict):
        return {_evened(key): _evened(item) for key, item in value.items()}
    return value


def _range(shape: Number) -> str:
    kind = "a whole number" if shape.whole else "a number"
    if shape.least is None and shape.most is None:
        return kind
    return f"{kind} from {shape.least:g} to {shape.most:g}"
