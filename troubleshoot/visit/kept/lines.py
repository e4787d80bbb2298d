"""The lines of a journal: one event each, with its number and a sum over it and all before it.

    {"event": {"event": "note", "text": "..."}, "n": 3, "sum": "1c291ca3"}

The first line is the header. It keeps this shape in every format, so that any version can tell
which one wrote the rest. A line without its end was cut off while it was written, and was never
acknowledged; any whole line that does not fit its sum is damage.
"""

from __future__ import annotations

import json
import zlib
from collections.abc import Mapping
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.outside.plain_data import from_json
from troubleshoot.outside.refusal import NotUsable

FORMAT: Final = 2
"""Counts up whenever an older program would misread what a newer one writes. A kind of event or a
key that it does not know it sets aside."""

ENDINGS: Final = ("closed", "stopped")
"""What the record of an end may say; another is damage, and ends nothing."""

OPENING: Final = b'{"event": {'
"""How every line begins."""

WEIGHTS_OF: Final = "refrigerant"
"""The key of a header under which stands the unit whose refrigerant is kept in it: no visit."""

OF_WEIGHTS: Final = f'"{WEIGHTS_OF}": "'.encode()
"""How that looks."""

READABLE: Final = frozenset({1, FORMAT})

Record = Mapping[str, object]
"""An event as it stands in a journal, or the header."""


class LinesDamaged(ValueError):
    """A line is not as it was written, or not even one was; `number` counts from 1."""

    def __init__(self, number: int, written: bool = True) -> None:
        super().__init__(f"record {number}")
        self.number = number
        self.written = written


class NewerFormat(ValueError):
    """The journal is of a format that this version does not know; `program` wrote it."""

    def __init__(self, program: str) -> None:
        super().__init__(program)
        self.program = program


@frozen
class Lines:
    """What a journal's bytes hold; `whole` of them are whole lines, and the rest is `torn`."""

    header: Record
    events: tuple[Record, ...]
    checksum: int
    whole: int
    torn: bool


def line_of(number: int, before: int, event: object) -> tuple[bytes, int]:
    """A line's bytes, and the sum over it and all before it; `number` counts from 0."""
    body = json.dumps(event, ensure_ascii=True, sort_keys=True, separators=(",", ":"))
    checksum = zlib.crc32(f"{number}:{body}".encode(), before)
    text = json.dumps({"n": number, "event": event, "sum": f"{checksum:08x}"}, sort_keys=True)
    return text.encode() + b"\n", checksum


def read_lines(data: bytes, most: int) -> Lines:
    """Every event of a journal; of one with more than `most`, one more than that.

    Raises LinesDamaged, and NewerFormat before it reads beyond the header.
    """
    *lines, tail = data.split(b"\n")
    if not lines:
        raise LinesDamaged(1, written=False)
    records: list[Record] = []
    checksum = 0
    for line in lines[: most + 2]:
        event, checksum = _checked(line, len(records), checksum)
        if not records and event.get("format") not in READABLE:
            raise NewerFormat(str(event.get("program")))
        records.append(event)
    if tail and _is_whole(tail[:-1], len(records), checksum):
        raise LinesDamaged(len(records) + 1)  # only the end of the line is not as it was written
    return Lines(records[0], tuple(records[1:]), checksum, len(data) - len(tail), bool(tail))


def _checked(line: bytes, number: int, before: int) -> tuple[Record, int]:
    """The event of a line as it was written, and the sum up to it. Raises LinesDamaged.

    What is whole and no event at all is kept as one that nobody understands.
    """
    try:
        record = from_json(line, "the line")
    except NotUsable:
        raise LinesDamaged(number + 1) from None
    event = record.get("event") if isinstance(record, dict) else None
    again, checksum = line_of(number, before, event)
    if again.rstrip(b"\n") != line:
        raise LinesDamaged(number + 1)
    return event if isinstance(event, dict) else {"event": None, "held": event}, checksum


def _is_whole(line: bytes, number: int, before: int) -> bool:
    try:
        _checked(line, number, before)
    except LinesDamaged:
        return False
    return True
