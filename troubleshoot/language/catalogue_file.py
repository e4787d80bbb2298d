"""Catalogue files: every English text with where it is from, and what another language says for it.

The form is that of GNU gettext's PO files, which translators' tools read: the manual's chapter "The
Format of PO Files". Of it only what is needed here: no plurals, no contexts, no obsolete entries.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterable
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.outside.refusal import NotUsable

MOST_BYTES: Final = 10_000_000
"""Room for every text of the program, its rules and a site's, twice."""

HEADER: Final = "Content-Type: text/plain; charset=UTF-8\n"
_DOUBTFUL: Final = "fuzzy"
_PLAIN: Final = re.compile(r'[^"\\\x00-\x1f]*')
_KEYS: Final = ("msgid", "msgstr")


@frozen
class Entry:
    """One text. `told`: what the other language says; empty where nobody has said yet.

    `places`: where it is from. `notes`: what a translator has to know; `remarks`: what one wrote.
    `doubtful`: said by somebody who is not sure, so not used.
    """

    english: str
    told: str = ""
    places: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()
    doubtful: bool = False


def read_catalogue(text: str, name: str) -> tuple[Entry, ...]:
    """The entries of a catalogue file. Raises NotUsable with the line."""
    reader = _Reader(name)
    for number, line in enumerate(text.split("\n"), start=1):
        reader.take(number, line.strip())
    return reader.entries()


def catalogue_text(entries: Iterable[Entry]) -> str:
    """A catalogue file that holds these entries."""
    return "\n".join(_written(entry) for entry in (Entry("", HEADER), *entries))


def _written(entry: Entry) -> str:
    lines = [f"# {remark}".rstrip() for remark in entry.remarks]
    lines += [f"#. {note}" for note in entry.notes]
    lines += [f"#: {place}" for place in entry.places]
    lines += [f"#, {_DOUBTFUL}"] if entry.doubtful else []
    for key, text in zip(_KEYS, (entry.english, entry.told), strict=True):
        lines.append(f"{key} {json.dumps(text, ensure_ascii=False)}")
    return "\n".join(lines) + "\n"


class _Reader:
    """Takes a file line by line."""

    def __init__(self, name: str) -> None:
        self._name = name
        self._done: list[Entry] = []
        self._texts: dict[str, str] = {}
        self._comments: dict[str, list[str]] = {}
        self._key = ""
        self._number = 0

    def take(self, number: int, line: str) -> None:
        self._number = number
        if line.startswith("#"):
            self._comment(line)
        elif line.startswith('"'):
            self._texts[self._key_begun()] += self._unquoted(line)
        elif line:
            key, _, rest = line.partition(" ")
            if key not in _KEYS or (key == "msgstr") != (self._key == "msgid"):
                self._refuse(f"{key} is not expected here", "write msgid, then msgstr")
            if key == "msgid":
                self._finish()
            self._key = key
            self._texts[key] = self._unquoted(rest.strip())

    def entries(self) -> tuple[Entry, ...]:
        if self._key == "msgid":
            self._refuse("the file ends within an entry", "write its msgstr")
        self._finish()
        return tuple(self._done)

    def _comment(self, line: str) -> None:
        if line.startswith("#~"):
            return
        if self._key == "msgstr":
            self._finish()
        kind = line[:2] if line[1:2] in (".", ":", ",") else "#"
        self._comments.setdefault(kind, []).append(line[len(kind) :].strip())

    def _finish(self) -> None:
        if self._texts.get("msgid"):
            flags = ", ".join(self._comments.get("#,", ())).split(", ")
            self._done.append(
                Entry(
                    self._texts["msgid"], self._texts["msgstr"],
                    tuple(self._comments.get("#:", ())), tuple(self._comments.get("#.", ())),
                    tuple(self._comments.get("#", ())), _DOUBTFUL in flags,
                )
            )  # fmt: skip
        if self._texts:
            self._texts, self._comments, self._key = {}, {}, ""

    def _key_begun(self) -> str:
        if not self._key:
            self._refuse("a text without msgid or msgstr before it", "write which it is")
        return self._key

    def _unquoted(self, quoted: str) -> str:
        if len(quoted) > 1 and quoted[0] == quoted[-1] == '"' and _PLAIN.fullmatch(quoted[1:-1]):
            return quoted[1:-1]
        try:
            text = json.loads(quoted)
        except ValueError:
            text = None
        if not isinstance(text, str):
            self._refuse("no text in double quotes", r'write "...", with \" for a quote in it')
        return str(text)

    def _refuse(self, what: str, instead: str) -> None:
        raise NotUsable(f"{self._name}, line {self._number}", what, instead)
