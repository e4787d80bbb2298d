"""A kept visit read for a list or a report: the journal is left as it is, to the last byte."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.outside.files import open_regular
from troubleshoot.outside.plain_data import from_json
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.visit.kept.bytes_of import MOVE_IT, bytes_of
from troubleshoot.visit.kept.journal import JournalDamaged, lines_in, may_lock
from troubleshoot.visit.kept.lines import Record

TORN: Final = "The last record was cut off while it was written; it is left out."
_STARTS: Final = b'"event": "start"'
_NAMED: Final = b'"event": "named"'
"""What the two events look like by which a unit is named."""
ELSEWHERE: Final = "The visit is open in another window; this is how far it has come."


@frozen
class KeptVisit:
    """A visit as its journal tells it. `elsewhere`: another program has it open."""

    name: str
    header: Record
    events: tuple[Record, ...]
    notice: str
    elsewhere: bool


def name_told(data: bytes) -> str:
    """The unit's name as it was given last; no sum is looked at, so that many are sorted quickly.

    For sorting alone: whoever goes by a visit reads it, and is told of damage then.
    """
    found = ""
    for line in data.split(b"\n"):
        if _STARTS not in line and _NAMED not in line:
            continue
        try:
            record = from_json(line, "the line")
        except NotUsable:
            continue
        event = record.get("event") if isinstance(record, dict) else None
        name = event.get("name") if isinstance(event, dict) else None
        found = name if isinstance(name, str) else found
    return found


def read_visit(path: Path) -> KeptVisit:
    """Read a visit's journal. Raises JournalError."""
    try:
        descriptor = open_regular(path)
    except NotUsable as error:
        raise JournalDamaged(f"{path}: {error.what}; {MOVE_IT}") from None
    try:
        elsewhere = not may_lock(descriptor, shared=True)
        lines = lines_in(path, bytes_of(descriptor, path))
    except NotUsable as error:
        raise JournalDamaged(str(error)) from None
    finally:
        os.close(descriptor)
    torn = TORN if lines.torn else ""
    notice = ELSEWHERE if elsewhere else torn  # who has it open may be writing that very record
    return KeptVisit(path.stem, lines.header, lines.events, notice, elsewhere)
