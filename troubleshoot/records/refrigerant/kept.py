"""What was told outside a visit, a file for each unit, kept as a visit's journal is.

Nothing is changed in it: an entry that was wrong is struck by a record of its own.
"""

from __future__ import annotations

import os
from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.refusal import in_a_line
from troubleshoot.records.past_visits import NOON
from troubleshoot.records.refrigerant.moved import AllMoved, Moved, in_order
from troubleshoot.visit.events import Weighed
from troubleshoot.visit.events.codec import NotAnEvent, event_of, record_of
from troubleshoot.visit.events.known import Unknown, check_known
from troubleshoot.visit.kept.journal import Journal, JournalError
from troubleshoot.visit.kept.lines import WEIGHTS_OF, Record
from troubleshoot.visit.kept.names import SUFFIX
from troubleshoot.visit.kept.reading import read_visit
from troubleshoot.visit.kept.unit_names import in_plain
from troubleshoot.visit.weighing import Weighing
from troubleshoot.visit.weights import cylinder_says, pounds_of

FOLDER: Final = "refrigerant"
"""The folder of what was told outside a visit, beside that of the visits."""
_STRUCK: Final = "struck"


def keep_weighings(
    folder: Path, unit: str, program: str, told: Sequence[tuple[date, Weighing]]
) -> None:
    """Keep these of a unit, all or none; they are on the disk when this returns.

    Raises JournalError.
    """
    _append(folder, unit, program, [record_of(Weighed(w, time=f"{day}{NOON}")) for day, w in told])


def strike(folder: Path, unit: str, program: str, number: int) -> None:
    """Strike an entry; it stays in the file and counts for nothing. Raises JournalError."""
    _append(folder, unit, program, [{"event": _STRUCK, "number": number}])


def _append(folder: Path, unit: str, program: str, records: Sequence[Record]) -> None:
    path = folder / f"{in_plain(unit)}{SUFFIX}"
    header = {"program": program, WEIGHTS_OF: unit}
    is_there = os.path.lexists(path)
    journal = Journal.open(path) if is_there else Journal.create(folder, path.stem, header)
    with journal:
        journal.append(*records)


def told_by_hand(knowledge: Knowledge, folder: Path, unit: str) -> AllMoved:
    """What was told of a unit outside a visit, and what of its file is not understood."""
    path = folder / f"{in_plain(unit)}{SUFFIX}"
    if not in_plain(unit) or not os.path.lexists(path):
        return AllMoved()
    try:
        records = read_visit(path).events
    except JournalError as error:
        return AllMoved(problems=(str(error),))
    moved: dict[int, Moved] = {}
    problems: list[str] = []
    for number, record in enumerate(records, start=1):
        if record.get("event") == _STRUCK:
            moved = {key: each for key, each in moved.items() if key != record.get("number")}
            continue
        try:
            moved[number] = _moved(knowledge, record, number)
        except (NotAnEvent, Unknown, ValueError) as error:
            problems.append(f"{in_a_line(str(path))}: entry {number}: {error}")
    return AllMoved(in_order(moved.values()), tuple(problems))


def _moved(knowledge: Knowledge, record: Record, number: int) -> Moved:
    """Raises NotAnEvent, Unknown, ValueError where its day is none."""
    event = event_of(record)
    if not isinstance(event, Weighed):
        raise NotAnEvent(f"{event.kind} is no weighing")
    check_known(knowledge, event)
    day = date.fromisoformat(event.time[:10])
    says = tuple(cylinder_says(knowledge, event.weighing))
    return Moved(
        day, event.weighing, pounds_of(knowledge, event.weighing), number=number, says=says
    )
