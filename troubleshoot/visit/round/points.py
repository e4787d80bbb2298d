"""The points of a season on one unit, and the order in which a mechanic comes to their tests.

One state of work at a time: what is seen and asked below, what a running unit shows with its panels
on, the filters and what else hands do locked out, and live what is read behind panels that were
opened dead, so that none is opened live. What is hooked up goes on under that lock and is read
first: nothing else is, with it on. What has to be closed again with it on comes last. Each test of
several points is taken once.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from types import MappingProxyType
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge, RoundPoint, Test
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.safety.needs import OPEN_LIVE, Needs, needs_of
from troubleshoot.safety.stops.record import Spot
from troubleshoot.safety.work_state import UnitAtWork
from troubleshoot.visit.round.facts import points_of
from troubleshoot.visit.round.season import Season

_TURN: Final[Mapping[str, int]] = MappingProxyType(
    {"any": 1, "running": 2, "locked-closed": 3, "locked-out": 4}
    | {"energised-open": 7, "running-open": 8}
)
"""States of work in the order in which a round goes through them."""
_GAS_SHUT, _HOOKED_UP_OPEN, _GAUGES_OPEN, _GAUGES, _HOOKED_UP = 5, 6, 9, 10, 11


@frozen
class PointHere:
    """A point on this unit: its number among those that suit it, and its tests at their places."""

    number: int
    point: RoundPoint
    spots: tuple[Spot, ...]


def points_here(knowledge: Knowledge, unit: Unit, season: Season) -> tuple[PointHere, ...]:
    """The points of a season that suit a unit, in the order of the rules.

    What nobody has told of the unit rules nothing out.
    """
    found = []
    for point in (p for p in points_of(knowledge, season) if unit.allows(p.exists_when)):
        spots = tuple(
            (test.id, at)
            for test in (knowledge.tests[name] for name in point.tests)
            if unit.allows(test.exists_when)
            for at in unit.layout.places(test.per)
        )
        if spots:
            found.append((point, spots))
    return tuple(PointHere(n, point, spots) for n, (point, spots) in enumerate(found, start=1))


def in_walking_order(
    knowledge: Knowledge, points: tuple[PointHere, ...], unit: UnitAtWork
) -> tuple[tuple[Spot, PointHere], ...]:
    """Every test of the points at its place, once, with the first point that has it."""
    first: dict[Spot, PointHere] = {}
    for here in points:
        for spot in here.spots:
            first.setdefault(spot, here)
    turns = {spot: _turn(knowledge.tests[spot[0]], unit) for spot in first}
    return tuple(sorted(first.items(), key=lambda item: turns[item[0]]))


def _turn(test: Test, unit: UnitAtWork) -> int:
    """Where in the order of work a test comes."""
    return _turn_of(needs_of(test, None, unit))


@lru_cache(maxsize=512)
def _turn_of(needs: Needs) -> int:
    if needs.taps or needs.hook_ups:
        return _HOOKED_UP if needs.energy == "running" else _HOOKED_UP_OPEN
    if needs.energy == "locked-out":
        return _GAS_SHUT if needs.gas == "shut" else _TURN["locked-out"]
    if needs.circuits:
        return _GAUGES_OPEN if needs.energy in OPEN_LIVE else _GAUGES
    return _TURN[needs.energy] if needs.roof else 0
