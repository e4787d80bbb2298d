"""Strict YAML: text -> a tree of values that remember their line and column.

The strictness is for authors: whatever YAML would quietly turn into something else (a second
equal key, 010, 12:30, an anchor) is refused with one sentence. The parser's events are read one
by one, so that size, depth and count are limited before anything is built from them.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Final, NoReturn

import yaml
from yaml.events import (
    AliasEvent,
    DocumentStartEvent,
    Event,
    MappingEndEvent,
    MappingStartEvent,
    ScalarEvent,
    SequenceEndEvent,
    SequenceStartEvent,
)

from troubleshoot.knowledge.nodes import (
    Entry,
    Located,
    LocatedList,
    LocatedMapping,
    LocatedValue,
)
from troubleshoot.knowledge.plain_scalars import RefusedScalar, scalar_value
from troubleshoot.knowledge.problems import Problem, RuleFileError
from troubleshoot.knowledge.syntax import explain_syntax
from troubleshoot.outside.files import MOST_BYTES
from troubleshoot.outside.plain_data import MOST_DEPTH
from troubleshoot.outside.text import first_refused, line_and_column

MOST_NODES: Final = 100_000


def read_located(source: bytes | str, path: str) -> Located:
    """Read one YAML document.

    `path` is only shown in messages. Raises RuleFileError with every problem found; after a
    fault of syntax the rest of that file is not read.
    """
    text = _checked_text(source, path)
    reader = _Reader(text, path)
    root = reader.read()
    if reader.problems or root is None:
        raise RuleFileError(reader.problems)
    return root


def _checked_text(source: bytes | str, path: str) -> str:
    def refuse(line: int, column: int, what: str, instead: str) -> NoReturn:
        raise RuleFileError([Problem(path, line, column, what, instead, "yaml")])

    if len(source) > MOST_BYTES:
        refuse(1, 1, f"the file is over {MOST_BYTES} bytes", "divide it into smaller files")
    if isinstance(source, bytes):
        try:
            text = source.decode("utf-8-sig")
        except UnicodeDecodeError as error:
            line = source.count(b"\n", 0, error.start) + 1
            refuse(line, 1, "this line is not UTF-8 text", "save the file as UTF-8")
    else:
        text = source
    text = text.replace("\r\n", "\n")
    refused = first_refused(text)
    if refused is not None:
        line, column = line_and_column(text, refused.index)
        refuse(line, column, f"{refused.name} in the text", "delete it")
    return text


@dataclass(slots=True)
class _Open:
    """A list or mapping whose end has not come yet."""

    line: int
    column: int
    is_mapping: bool
    items: list[Located] = field(default_factory=list)
    entries: dict[str, Entry] = field(default_factory=dict)
    key: LocatedValue | None = None
    key_awaited: bool = True


class _Reader:
    """Builds the tree from the parser's events, collecting problems as it goes."""

    def __init__(self, text: str, path: str) -> None:
        self.problems: list[Problem] = []
        self._path = path
        self._text = text
        self._lines = text.split("\n")
        self._stack: list[_Open] = []
        self._root: Located | None = None
        self._documents = 0

    def read(self) -> Located | None:
        nodes = 0
        try:
            for event in self._events():
                nodes += 1
                if nodes > MOST_NODES:
                    self._refuse(event, "the file holds too many values", "divide it")
                    return None
                if not self._take(event):
                    return None
        except yaml.YAMLError as error:
            self.problems.append(explain_syntax(error, self._lines, self._path))
            return None
        if self._root is None and not self.problems:
            what = "the file is empty"
            self.problems.append(Problem(self._path, 1, 1, what, "begin with format: 1", "yaml"))
        return self._root

    def _events(self) -> Iterator[Event]:
        loader = yaml.CBaseLoader if yaml.__with_libyaml__ else yaml.BaseLoader
        return yaml.parse(self._text, Loader=loader)

    def _take(self, event: Event) -> bool:
        """Add one event to the tree; False where reading cannot go on."""
        if isinstance(event, ScalarEvent):
            self._refuse_decorations(event)
            self._add(self._scalar(event))
        elif isinstance(event, MappingStartEvent | SequenceStartEvent):
            self._refuse_decorations(event)
            return self._open(event)
        elif isinstance(event, MappingEndEvent | SequenceEndEvent):
            self._close()
        elif isinstance(event, AliasEvent):
            self._refuse(event, f"an alias, *{event.anchor}", "write the value out again")
            self._add(LocatedValue(None, *_place(event)))
        elif isinstance(event, DocumentStartEvent):
            return self._document(event)
        return True

    def _document(self, event: DocumentStartEvent) -> bool:
        self._documents += 1
        if event.version is not None or event.tags:
            self._refuse(event, "a % directive", "leave it out")
        if self._documents > 1:
            self._refuse(event, "a second document in one file", "keep one document a file")
            return False
        return True

    def _refuse_decorations(
        self, event: ScalarEvent | MappingStartEvent | SequenceStartEvent
    ) -> None:
        if event.anchor is not None:
            self._refuse(event, f"an anchor, &{event.anchor}", "write the value out each time")
        if event.tag is not None:
            self._refuse(event, f"a tag, {event.tag}", "leave it out")

    def _scalar(self, event: ScalarEvent) -> LocatedValue:
        line, column = _place(event)
        text = event.value
        if not event.implicit[0]:  # in quotes, where an escape may bring in any character
            refused = first_refused(text)
            if refused is not None:
                self._refuse(event, f"{refused.name} in the text", "delete it")
            return LocatedValue(text, line, column)
        try:
            value = scalar_value(text)
        except RefusedScalar as error:
            self._refuse(event, str(error), error.instead)
            value = text
        if isinstance(value, str):
            self._refuse_cut_off(event)
        return LocatedValue(value, line, column)

    def _refuse_cut_off(self, event: ScalarEvent) -> None:
        end = event.end_mark
        if end is None or end.line >= len(self._lines):
            return
        rest = self._lines[end.line][end.column :]
        if rest[:1] in (" ", "\t") and rest.lstrip().startswith("#"):
            self._refuse(
                event,
                "the text is cut off at ' #'",
                "put the text in quotes, or the comment on a line of its own",
            )

    def _open(self, event: MappingStartEvent | SequenceStartEvent) -> bool:
        if len(self._stack) >= MOST_DEPTH:
            self._refuse(event, f"more than {MOST_DEPTH} levels inside each other", "flatten it")
            return False
        line, column = _place(event)
        self._stack.append(_Open(line, column, isinstance(event, MappingStartEvent)))
        return True

    def _close(self) -> None:
        done = self._stack.pop()
        if done.is_mapping:
            self._add(LocatedMapping(done.entries, done.line, done.column))
        else:
            self._add(LocatedList(tuple(done.items), done.line, done.column))

    def _add(self, node: Located) -> None:
        if not self._stack:
            self._root = node
            return
        parent = self._stack[-1]
        if not parent.is_mapping:
            parent.items.append(node)
        elif parent.key_awaited:
            parent.key, parent.key_awaited = self._checked_key(node), False
        else:
            parent.key_awaited = True
            if parent.key is not None:
                self._add_entry(parent, parent.key, node)

    def _checked_key(self, node: Located) -> LocatedValue | None:
        if isinstance(node, LocatedValue) and isinstance(node.value, str):
            return node
        what = "a key that is no word"
        if isinstance(node, LocatedValue) and node.value is not None:
            what = f"the key {str(node.value).lower()} is no word"
        self.problems.append(
            Problem(self._path, node.line, node.column, what, "put the key in quotes", "yaml")
        )
        return None

    def _add_entry(self, parent: _Open, key: LocatedValue, node: Located) -> None:
        word = str(key.value)
        first = parent.entries.get(word)
        if first is None:
            parent.entries[word] = Entry(node, key.line, key.column)
            return
        what = f"{word} stands twice, on line {first.line} and on line {key.line}"
        self.problems.append(
            Problem(self._path, key.line, key.column, what, "keep one of them", "yaml")
        )

    def _refuse(self, event: Event, what: str, instead: str) -> None:
        line, column = _place(event)
        self.problems.append(Problem(self._path, line, column, what, instead, "yaml"))


def _place(event: Event) -> tuple[int, int]:
    """Line and column of an event, counted from 1."""
    mark = event.start_mark
    return (mark.line + 1, mark.column + 1) if mark is not None else (1, 1)
