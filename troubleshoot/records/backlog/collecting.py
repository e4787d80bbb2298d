"""What waits on each unit, gathered from the register and the visits, what matters most first."""

from __future__ import annotations

from datetime import date

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.records.backlog.repeats import Repeat, repeats_of
from troubleshoot.records.backlog.worst import Worst, worst_of
from troubleshoot.records.due_rounds import due_rounds
from troubleshoot.records.history.collecting import history_of
from troubleshoot.records.register.columns import MATTERS
from troubleshoot.records.register.entry import Entry
from troubleshoot.records.register.files import Register
from troubleshoot.records.stands import Stands, Visited
from troubleshoot.visit.kept.names import natural


@frozen
class Waiting:
    """One unit with what waits on it. `is_due`: its round of the season is not walked yet."""

    entry: Entry
    stands: Stands
    repeats: tuple[Repeat, ...]
    worst: Worst | None
    is_due: bool

    @property
    def is_open(self) -> bool:
        """Whether something was left off, or left undone."""
        stands = self.stands
        return bool(stands.left_off or stands.open_visits or stands.open_items)

    @property
    def waits(self) -> bool:
        """Whether anything waits but the round."""
        return bool(self.stands.stops or self.is_open or self.repeats or self.worst)


@frozen
class Backlog:
    """Every unit, what matters most first; `problems`: visits that cannot be read, and why."""

    units: tuple[Waiting, ...]
    problems: tuple[str, ...]


def backlog_of(knowledge: Knowledge, register: Register, visited: Visited, today: date) -> Backlog:
    """What waits on the units of a register."""
    due = {each.entry.name for each in due_rounds(register, visited, today)}
    units: list[Waiting] = []
    problems: list[str] = []
    for entry in register.entries:
        journals = visited.of(entry.name)
        history = history_of(knowledge, journals, entry.unit)
        problems += history.problems
        units.append(
            Waiting(
                entry,
                visited.stands(entry.name),
                repeats_of(knowledge, journals, today),
                worst_of(knowledge, history.series, today),
                entry.name in due,
            )
        )
    return Backlog(tuple(sorted(units, key=_what_first)), tuple(problems))


def _what_first(waiting: Waiting) -> tuple[object, ...]:
    """A STOP, then what is off or undone, then what came back, then what reaches its limit first.

    Among those alike what matters most.
    """
    worst = waiting.worst
    kind = (
        0 if waiting.stands.stops
        else 1 if waiting.is_open
        else 2 if waiting.repeats
        else 3 if worst is not None
        else 4
    )  # fmt: skip
    reached = date.max if worst is None or worst.due is None else worst.due.day
    past = worst is None or not worst.is_past
    matters = MATTERS.index(waiting.entry.own.get("matters", "usual"))
    return kind, matters, past, reached, natural(waiting.entry.name)
