"""A language for tests: English in capitals. What a person types into a shell stays as it is."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace

from troubleshoot.language.catalogue_file import Entry
from troubleshoot.language.holes import Sentence, written

KEPT = re.compile(
    r"troubleshoot(?: (?:diagnose|inspect|assess|calc|visits|reopen|report|practise|rules)\b)?"
    r"(?: (?:check|explain|test|format|schema|measure|texts|new)\b)?"
    r"|--[a-z-]+|[\w/-]+\.(?:yaml|yml|json)\b"
)
"""Commands of a shell and names of files."""


def in_capitals(entries: Iterable[Entry]) -> Iterator[Entry]:
    """The same catalogue with every text told in capitals."""
    for entry in entries:
        yield replace(entry, told=_capitals(Sentence.of(entry.english)))


def _capitals(sentence: Sentence) -> str:
    pieces = [written(_of_piece(piece)) for piece in sentence.pieces]
    said = [pieces[0]]
    for hole, piece in zip(sentence.holes, pieces[1:], strict=True):
        said += f"{{{hole}}}", piece
    return "".join(said)


def _of_piece(text: str) -> str:
    said, at = "", 0
    for match in KEPT.finditer(text):
        said += text[at : match.start()].upper() + match.group()
        at = match.end()
    return said + text[at:].upper()
