"""Judging one row of logged readings: STOPs first, then what is wrong with the unit by the row.

A row is judged by itself, by a function of the row, the rules, the register and what stands over
its unit alone: rows may come in any order, and be shared out among any number of machines.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.table import Row
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.answers import Case
from troubleshoot.reasoning.readings.readings import Reading
from troubleshoot.records.logged.heading import UNIT, Heading
from troubleshoot.records.logged.row import RowRefused, case_of
from troubleshoot.records.register.columns import AT
from troubleshoot.records.register.entry import Entry
from troubleshoot.safety.stops.standing import standing_hazards
from troubleshoot.visit.cases.assessment import assessed
from troubleshoot.visit.cases.told_all_the_same import dangers_all_the_same
from troubleshoot.visit.kept.unit_names import in_plain
from troubleshoot.visit.telling.account import (
    NOT_EXAMINED,
    Plain,
    cause_account,
    ending_of,
    listed_causes,
    place_shown,
)

NOT_TAKEN: Final = "not-taken"
"""The ending of a row that is not understood."""
STOPPED: Final = "stopped"
MOST_NAMED: Final = 3
"""Causes that a row names."""


@frozen
class Judged:
    """What a row comes to. `moment`: its date and time as they stood there.

    `standing`: the STOPs that visits left over its unit; `stops`: those that its own readings call
    up, by id; `dangers`: what is to be done, a sentence each; `bad`: what of it is not understood.
    """

    row: int
    unit: str
    moment: Mapping[str, str]
    standing: tuple[str, ...] = ()
    stops: tuple[str, ...] = ()
    dangers: tuple[str, ...] = ()
    ending: str = NOT_TAKEN
    causes: tuple[Plain, ...] = ()
    effects: tuple[Plain, ...] = ()
    nothing_wrong: float | None = None
    outside: float | None = None
    unexplained: tuple[str, ...] = ()
    not_judged: tuple[str, ...] = ()
    bad: tuple[str, ...] = ()


class Judge:
    """Judges the rows of one table. `units`, `standing`: by their names in plain letters."""

    def __init__(
        self,
        knowledge: Knowledge,
        heading: Heading,
        units: Mapping[str, Entry],
        standing: Mapping[str, tuple[str, ...]],
    ) -> None:
        self._reasoner = Reasoner(knowledge)
        self._knowledge = knowledge
        self._heading = heading
        self._units = units
        self._standing = standing

    def judged(self, row: Row) -> Judged:
        """What a row comes to; one that is not understood says so, and what danger it tells."""
        name = row.cells.get(UNIT, "")
        entry = self._units.get(in_plain(name))
        moment = {key: row.cells.get(key, "") for key in self._heading.moment}
        standing = self._standing.get(in_plain(name), ())
        try:
            case = case_of(self._knowledge, self._heading, row, entry)
        except RowRefused as refused:
            return Judged(
                row.line,
                name,
                moment,
                standing,
                dangers=dangers_all_the_same(self._knowledge, refused.data),
                bad=tuple(map(str, refused.bad)),
            )
        known = name if entry is None else entry.name
        return self._of_case(Judged(row.line, known, moment, standing), case)

    def _of_case(self, blank: Judged, case: Case) -> Judged:
        conclusions = assessed(self._reasoner, case)
        found = {fired.hazard.id for fired in conclusions.hazards if fired.found}
        told = [
            each for each in standing_hazards(conclusions) if each.stops or each.hazard.id in found
        ]
        stops = tuple(each.hazard.id for each in told if each.stops)
        causes = listed_causes(conclusions)[:MOST_NAMED]
        return replace(
            blank,
            stops=stops,
            dangers=tuple(line for each in told for line in each.lines),
            ending=_ending(conclusions, is_stopped=bool(blank.standing or stops)),
            causes=tuple(cause_account(conclusions, cause) for cause in causes),
            effects=tuple(cause_account(conclusions, effect) for effect in conclusions.effects),
            nothing_wrong=round(conclusions.ranking.nothing_wrong, 4),
            outside=round(conclusions.ranking.outside, 4),
            unexplained=_columns(conclusions, conclusions.unexplained),
            not_judged=_columns(conclusions, (each.reading for each in conclusions.not_judged)),
        )


def _ending(conclusions: Conclusions, is_stopped: bool) -> str:
    """How a row ends: nothing is called sound over a STOP that stands, nor of what nobody read."""
    if is_stopped and (ending_of(conclusions) == "nothing-wrong" or not conclusions.readings):
        return STOPPED
    return ending_of(conclusions) if conclusions.readings or is_stopped else NOT_EXAMINED


def _columns(conclusions: Conclusions, readings: Iterable[Reading]) -> tuple[str, ...]:
    """Readings by the columns they are of; a place is named where there are several."""
    tests = conclusions.hypotheses.knowledge.tests
    spots = ((r.test, place_shown(conclusions, tests[r.test].per, r.at)) for r in readings)
    return tuple(f"{test}{AT}{place}" if place else test for test, place in spots)
