"""What was moved on each day: by the visits to a unit, and as it was told outside a visit."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date
from pathlib import Path
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.refusal import NotUsable, in_a_line
from troubleshoot.records.history.collecting import NO_DAY, day_of
from troubleshoot.safety.steps import RECHARGE, RECOVER
from troubleshoot.visit.events import Weighed, replay
from troubleshoot.visit.kept.bytes_of import bytes_in
from troubleshoot.visit.kept.journal import JournalError
from troubleshoot.visit.kept.names import natural
from troubleshoot.visit.kept.reading import read_visit
from troubleshoot.visit.kept.understanding import understood
from troubleshoot.visit.telling.weighings import weighings_of
from troubleshoot.visit.weighing import Weighing
from troubleshoot.visit.weights import WEIGHED, cylinder_says, pounds_of, scale_of

BY_HAND: Final = ""
"""The visit of what was told outside one."""


@frozen
class Moved:
    """One weighing with its day. `pounds`: None where its weight was not told; `says`: what its
    cylinder says of it, by the scale of its day.

    `visit`: its name; of what was told outside one `number` counts, and it can be struck by that.
    """

    day: date
    weighing: Weighing
    pounds: float | None
    visit: str = BY_HAND
    number: int = 0
    says: tuple[str, ...] = ()


@frozen
class AllMoved:
    """What was moved at a unit, the earliest first; `problems`: what cannot be read, and why."""

    moved: tuple[Moved, ...] = ()
    problems: tuple[str, ...] = ()


def in_order(moved: Iterable[Moved]) -> tuple[Moved, ...]:
    """By day; on one day as the visits were made, then as it was told."""
    return tuple(
        sorted(moved, key=lambda each: (each.day, not each.visit, natural(each.visit), each.number))
    )


def moved_on_visits(knowledge: Knowledge, journals: Sequence[Path]) -> AllMoved:
    """What the visits of these journals moved, in whatever order they come."""
    moved: list[Moved] = []
    problems: list[str] = []
    marks = tuple(mark.encode() for mark in _marks(knowledge))
    for path in journals:
        try:
            if any(mark in bytes_in(path) for mark in marks):
                moved += _on_visit(knowledge, path)
        except (JournalError, NotUsable) as error:
            problems.append(str(error))
        except _NoDay:
            problems.append(f"{in_a_line(str(path))}: {NO_DAY}")
    return AllMoved(in_order(moved), tuple(problems))


class _NoDay(ValueError):
    """Nothing tells on which day a visit was."""


def _marks(knowledge: Knowledge) -> Iterable[str]:
    """What stands in every journal that moved any: most hold none, and are not replayed."""
    reading = (test.id for test in knowledge.tests.values() if _weighs(knowledge, test.id))
    return (Weighed.kind, RECOVER, RECHARGE, *reading)


def _weighs(knowledge: Knowledge, test: str) -> bool:
    return any(each.quantity == WEIGHED for each in knowledge.tests[test].reads)


def _on_visit(knowledge: Knowledge, path: Path) -> list[Moved]:
    """Raises JournalError, _NoDay."""
    events = understood(knowledge, read_visit(path).events).events
    state = replay(knowledge, events)
    scale = scale_of(state.meters)
    day = day_of(path.stem, (event.time for event in events))
    if day is None:
        raise _NoDay
    return [
        Moved(
            day,
            each,
            pounds_of(knowledge, each),
            path.stem,
            says=tuple(cylinder_says(knowledge, each, scale)),
        )
        for each in weighings_of(knowledge, state)
    ]
