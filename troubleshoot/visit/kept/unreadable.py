"""A journal that cannot be read whole: what its intact lines still tell, and what that means.

Damage never lifts a STOP. Whoever begins is told of every such visit that was not closed, and where
it has the marks of a STOP its unit counts as stopped.
"""

from __future__ import annotations

from pathlib import Path
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.outside.plain_data import from_json
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.visit.kept.lines import OPENING, Record, line_of
from troubleshoot.visit.kept.names import SUFFIX

MARKS: Final = (b'"event": "stop"', b'"event": "danger"', b'"hazard": ', b'"ending": "stopped"')
"""What stands in the journal of a visit that a STOP has halted. No one damage takes them all."""
_MET: Final = MARKS[:2]
_WAY_OUT: Final = b'"event": "closing"'

NOTHING: Final = b"\0"
"""What a disk gives back of a part that was never written; no journal holds one."""

DO_NOT_START: Final = (
    "Do not start on its unit before whoever was there has said what stopped it and the supervisor "
    "has released it."
)
CUT_OFF: Final = "Its last record was cut off, and it may have been that of a STOP"


@frozen
class Unreadable:
    """A visit whose journal cannot be read. `unit`: its name, where an intact line holds it.

    `halted`: it has the marks of a STOP. `why`: one sentence of what is wrong and what to do.
    `lost`: part of it is gone, and what was in that part nobody can tell. `danger`, `what_to_do`:
    of the STOP that the call or a finding calls up that can still be read.
    """

    path: Path
    unit: str
    halted: bool
    why: str
    lost: bool = False
    danger: str = ""
    what_to_do: str = ""

    @property
    def may_stop(self) -> bool:
        """Whether a STOP was met in it, or may have been for all that can be read."""
        return bool(self.halted or self.lost or self.danger or not self.unit)

    @property
    def visit(self) -> str:
        """Its name; of a file that is not named as a visit the file's."""
        return self.path.stem if self.path.suffix == SUFFIX else self.path.name

    @property
    def reason(self) -> str:
        """What stops its unit, in a few words."""
        was = "was" if self.halted or self.danger else "may have been"
        return f"visit {self.visit} cannot be read, and a STOP {was} met in it{self._by}"

    @property
    def _by(self) -> str:
        return f", by what it still tells: {self.danger}" if self.danger else ""

    @property
    def lines(self) -> tuple[str, ...]:
        """What to tell whoever begins, a sentence a line."""
        to_unit = f" to {self.unit}" if self.unit else ""
        may = "a STOP was met in it and may stand" if self.halted else "a STOP may stand over it"
        told = (
            f"Visit {self.visit}{to_unit} cannot be read: {may}{self._by}.",
            DO_NOT_START,
            self.what_to_do,
            f"{self.why}.",
        )
        return tuple(line for line in told if line)


def unreadable(path: Path, data: bytes, why: str, cut_short: bool = False) -> Unreadable:
    """What can be told of a journal with these bytes; `cut_short`: there are more, or others."""
    lost = cut_short or NOTHING in data or _has_gap(data)
    return Unreadable(path, name_in(data), was_halted(data), why, lost)


def still_told(data: bytes) -> tuple[Record, ...]:
    """The events of every line behind the first that can be read, whether or not its sum fits."""
    events = (_event(_record(line)) for line in data.split(b"\n")[1:])
    return tuple(event for event in events if event)


def _has_gap(data: bytes) -> bool:
    """Whether a whole line is gone, or is no record any more: it may have been that of a STOP."""
    lines = data.split(b"\n")[:-1]
    return any(_record(line).get("n") != number for number, line in enumerate(lines))


def was_halted(data: bytes) -> bool:
    """Whether the bytes of a journal bear a mark of a STOP."""
    return any(mark in data for mark in MARKS)


def hides_a_stop(tail: bytes) -> bool:
    """Whether what was cut off at the end was, or may have been, the record of a STOP."""
    return was_halted(tail) or not _opens(tail)


def _opens(line: bytes) -> bool:
    """Whether a line, cut off anywhere, begins as a record does."""
    return line.startswith(OPENING) or OPENING.startswith(line)


def was_closed(data: bytes) -> bool:
    """Whether the last whole line closes a visit over which no STOP can stand.

    Where a STOP was met the way out has begun behind it: an end that only says so is no proof.
    """
    last = _event(_record(data.rpartition(b"\n")[0].rpartition(b"\n")[2]))
    if last.get("event") != "end" or last.get("ending") != "closed":
        return False
    return data.rfind(_WAY_OUT) >= max(map(data.rfind, _MET))


def name_in(data: bytes) -> str:
    """The unit's name as it was given last, by a line that fits its sum; empty without one."""
    found, before = "", 0
    for line in data.split(b"\n"):
        record = _record(line)
        event, number, stated = _event(record), record.get("n"), _sum(record)
        if event.get("event") in ("start", "named") and isinstance(number, int):
            name, fits = event.get("name"), line_of(number, before, event)[1] == stated
            found = name if fits and isinstance(name, str) else found
        before = stated
    return found


def _record(line: bytes) -> Record:
    try:
        record = from_json(line, "the line")
    except NotUsable:
        return {}
    return record if isinstance(record, dict) else {}


def _event(record: Record) -> Record:
    event = record.get("event")
    return event if isinstance(event, dict) else {}


def _sum(record: Record) -> int:
    """The sum that a line states, which the next one goes on from; 0 where there is none."""
    try:
        return int(str(record.get("sum")), 16)
    except ValueError:
        return 0
