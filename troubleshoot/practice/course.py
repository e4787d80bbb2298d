"""The course: six weeks of cases, each opened by the one before.

A case is done once it was called right, by reasoning and without a grave slip, on whichever play
after its week had opened: the first play is what counts for the record, but nobody is shut out by
it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from troubleshoot.frozen import frozen
from troubleshoot.practice.form import WEEKS
from troubleshoot.practice.scenario import Scenario
from troubleshoot.practice.scores import Play


@frozen
class Week:
    """One week as it stands for somebody: its cases, those done, and whether it is open."""

    number: int
    cases: tuple[Scenario, ...]
    done: frozenset[str]
    is_open: bool

    @property
    def left(self) -> tuple[Scenario, ...]:
        """The cases that are still to do, the plainest first."""
        found = (case for case in self.cases if case.id not in self.done)
        return tuple(sorted(found, key=lambda case: (case.difficulty, case.id)))


def weeks_of(plays: Iterable[Play], scenarios: Sequence[Scenario]) -> tuple[Week, ...]:
    """The weeks in their order; the first is open, any other once the one before is done.

    `plays`: in the order they were played. One before its week had opened does nothing for it.
    """
    week_of = {scenario.id: scenario.week for scenario in scenarios if scenario.week}
    done: set[str] = set()
    for play in plays:
        week = week_of.get(play.scenario, 0)
        opened = all(name in done for name, number in week_of.items() if number < week)
        if opened and play.verdict == "right" and play.reasoned and not play.failed:
            done.add(play.scenario)
    return _weeks(frozenset(done), scenarios)


def _weeks(done: frozenset[str], scenarios: Sequence[Scenario]) -> tuple[Week, ...]:
    weeks: list[Week] = []
    for number in range(1, WEEKS + 1):
        cases = tuple(scenario for scenario in scenarios if scenario.week == number)
        before = weeks[-1] if weeks else None
        is_open = before is None or (before.is_open and not before.left)
        weeks.append(Week(number, cases, done & {case.id for case in cases}, is_open))
    return tuple(weeks)


def next_case(weeks: Sequence[Week]) -> Scenario | None:
    """The case to play next; None once the course is done."""
    return next((week.left[0] for week in weeks if week.is_open and week.left), None)
