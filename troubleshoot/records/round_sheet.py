"""The inspection sheet of a round: this season's points in order, with blanks for what is read."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import DriftAlarm, Knowledge, RoundPoint, Test
from troubleshoot.quantities.units import unit as unit_of
from troubleshoot.reasoning.unit.places import SPOKEN_KINDS
from troubleshoot.visit.round.season import Season

NO_VISIT: Final = (
    "A sheet to fill in, not the way to do it: the safe order and the cautions of each test come "
    "with: troubleshoot inspect"
)

Before = Callable[[str], Iterable[str]]
"""What a test, by its id, has read before, a line a place."""


@frozen
class Line:
    """One paragraph of the sheet. `head`: it begins a point."""

    text: str
    indent: int = 0
    head: bool = False


def sheet(knowledge: Knowledge, season: Season, before: Before = lambda test: ()) -> Iterator[Line]:
    """The points of a season's round: tests with blanks, how often, the limit, what to watch.

    `before`: what a test has read on earlier visits, a line a place, which stands under its blank.
    What drifts stands at the first point that reads it; what no point of any season does, at the
    end.
    """
    yield Line(NO_VISIT)
    points = [p for p in knowledge.round_points.values() if season in p.season]
    left = dict(knowledge.drift_alarms)
    for point in sorted(points, key=lambda p: p.number):
        read = _read_at(knowledge, point)
        here = [alarm for alarm in left.values() if alarm.quantity in read]
        for alarm in here:
            del left[alarm.id]
        yield Line("")
        yield from _point(knowledge, point, here, before)
    some_season = {q for p in knowledge.round_points.values() for q in _read_at(knowledge, p)}
    counted = [alarm for alarm in left.values() if alarm.quantity not in some_season]
    if counted:
        yield Line("")
        yield Line("From this unit's own record", head=True)
        yield from (Line(_drift(alarm), 2) for alarm in counted)


def _read_at(knowledge: Knowledge, point: RoundPoint) -> set[str]:
    return {q for name in point.tests for q in quantities_of(knowledge.tests[name])}


def _point(
    knowledge: Knowledge, point: RoundPoint, drifts: list[DriftAlarm], before: Before
) -> Iterator[Line]:
    yield Line(f"{point.number} {point.point}", head=True)
    for name in point.tests:
        yield Line(_blank(knowledge, knowledge.tests[name]), 2)
        yield from (Line(line, 4) for line in before(name))
    for what, said in (
        ("How often", point.how_often),
        ("Limit", point.limit),
        ("Watch", point.trend),
    ):
        if said:
            yield Line(f"{what}: {said}", 2)
    yield from (Line(_drift(alarm), 2) for alarm in drifts)
    yield Line(f"Source: {point.source}", 2)


def _blank(knowledge: Knowledge, test: Test) -> str:
    """A test with a blank for its reading in the unit it is typed in, or a box to tick."""
    where = f", each {SPOKEN_KINDS.get(test.per, test.per)}" if test.per else ""
    quantities = quantities_of(test)
    if not quantities:
        return f"[ ] {test.name}{where}"
    typed = test.reads[0].unit if test.reads else None
    unit = typed or knowledge.quantities[quantities[0]].unit
    return f"____ {unit.removesuffix('-diff')}  {test.name}{where}"


def quantities_of(test: Test) -> tuple[str, ...]:
    """What a test reads, or is judged by where it is computed, each once."""
    read = [one.quantity for one in test.reads]
    bounds = (b for o in test.outcomes for line in o.limits for b in line.bounds)
    return tuple(dict.fromkeys((*read, *(bound.quantity for bound in bounds))))


def _drift(alarm: DriftAlarm) -> str:
    """A change against the unit's own record that deserves a look, with its number and source.

    What is counted has its number in the words.
    """
    number = ""
    if alarm.change is not None and alarm.unit not in (None, "count"):
        unit = unit_of(alarm.unit).spoken
        number = f" ({alarm.change:+g} {unit})"
    return f"Drift: {alarm.text}{number}; {alarm.source}"
