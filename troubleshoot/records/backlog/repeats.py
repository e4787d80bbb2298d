"""Faults that were put right twice on a unit within a year: the cause behind them was not found."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date, timedelta
from pathlib import Path
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Fault, Knowledge
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.visit.events import replay
from troubleshoot.visit.kept.bytes_of import bytes_in
from troubleshoot.visit.kept.journal import JournalError
from troubleshoot.visit.kept.reading import read_visit
from troubleshoot.visit.kept.understanding import understood

WITHIN: Final = timedelta(days=365)
"""Twice within this time is no chance (common practice, no source)."""
_REPAIRED: Final = b'"repaired"'


@frozen
class Repeat:
    """A fault, and the days of the visits on which it was put right, the earliest first."""

    fault: Fault
    days: tuple[date, ...]


def repeats_of(knowledge: Knowledge, journals: Sequence[Path], today: date) -> tuple[Repeat, ...]:
    """The faults that came back on a unit within a year, what came back last first.

    None that has held for a year since. `journals`: those of the unit; one that cannot be read, or
    tells no day, tells of no repair.
    """
    found: dict[str, set[date]] = {}
    for path in journals:
        for fault, day in _repairs(knowledge, path):
            found.setdefault(fault, set()).add(day)
    repeats = [
        Repeat(knowledge.faults[fault], kept)
        for fault, days in found.items()
        if fault in knowledge.faults and today - max(days) <= WITHIN
        if (kept := _close_together(sorted(days)))
    ]
    return tuple(sorted(repeats, key=lambda each: (-each.days[-1].toordinal(), each.fault.id)))


def _close_together(days: Sequence[date]) -> tuple[date, ...]:
    """The days that have another one within a year."""
    return tuple(
        day for day in days if any(other != day and abs(other - day) <= WITHIN for other in days)
    )


def _repairs(knowledge: Knowledge, path: Path) -> Iterator[tuple[str, date]]:
    """Each fault that a visit says was put right on it, with its day."""
    try:
        if _REPAIRED not in bytes_in(path):
            return
        state = replay(knowledge, understood(knowledge, read_visit(path).events).events)
    except (NotUsable, JournalError):
        return
    for said in state.repairs:
        for told in (said.time, path.stem):
            try:
                yield said.fault, date.fromisoformat(told[:10])
            except ValueError:
                continue
            break
