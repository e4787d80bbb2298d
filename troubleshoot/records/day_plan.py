"""A day on one roof: which due units, in which order, what goes together, and what to take up.

Below first, for all of them, so that nobody climbs twice; then unit by unit, each walked once: what
it shows running, what one lock-out lets be reached, what is read live behind the same panels.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.refusal import NotUsable, in_a_line
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.records.due_rounds import DueRound
from troubleshoot.records.reckoned_round import (
    BELOW,
    LEGS,
    Reckoned,
    reckoned_round,
    weather_gates,
)
from troubleshoot.records.register.entry import Entry
from troubleshoot.visit.kept.names import natural
from troubleshoot.visit.round.season import Season
from troubleshoot.visit.telling.wording import counted

RECKONED: Final = (
    "Reckoned from the minutes of the rules' tests and safety steps: your own pace stands above it."
)
BY_NAME: Final = "In the order of their names: where they stand, the register does not know."


@frozen
class Stop:
    """One unit on the way, and what its round takes."""

    entry: Entry
    reckoned: Reckoned


@frozen
class DayPlan:
    """The units that a day holds, in walking order; those left for another day; what may be lost.

    `gates`: what weather may make worthless, and on how many of the units.
    """

    roof: str
    stops: tuple[Stop, ...]
    left: tuple[Entry, ...]
    gates: tuple[tuple[str, int], ...]

    @property
    def minutes(self) -> float:
        """Minutes of all of it."""
        return sum(sum(stop.reckoned.minutes.values()) for stop in self.stops)


def on_roof(due: Sequence[DueRound], words: str) -> tuple[str, tuple[DueRound, ...]]:
    """The roof that words name, and the due units on it. Raises NotUsable where it is not one."""
    roofs: dict[str, list[DueRound]] = {}
    for each in due:
        roofs.setdefault(_roof(each.entry), []).append(each)
    said = words.casefold().split()
    meant = [roof for roof in roofs if all(word in roof.casefold() for word in said)]
    if len(meant) != 1:
        among = "; ".join(meant or roofs)
        found = "more than one roof" if meant else "no roof on which a unit is due"
        raise NotUsable(words, f"it names {found}", f"name one of: {in_a_line(among)}")
    return meant[0], tuple(roofs[meant[0]])


def _roof(entry: Entry) -> str:
    """Site and roof of a unit, as it is said."""
    return ", ".join(entry.own[key] for key in ("site", "roof") if key in entry.own) or "no roof"


def planned(
    knowledge: Knowledge, roof: str, due: Sequence[DueRound], season: Season, hours: int | None
) -> DayPlan:
    """The plan of a day. `due`: what matters most first; `hours`: of work, as many as it takes.

    What matters most fills the day; the first unit is in it, however long it takes.
    """
    left_minutes = float("inf") if hours is None else 60.0 * hours
    stops: list[Stop] = []
    left: list[Entry] = []
    for each in due:
        reckoned = reckoned_round(knowledge, read_unit(knowledge, each.entry.unit), season)
        whole = sum(reckoned.minutes.values())
        if stops and whole > left_minutes:
            left.append(each.entry)
            continue
        left_minutes -= whole
        stops.append(Stop(each.entry, reckoned))
    stops.sort(key=lambda stop: natural(stop.entry.name))
    return DayPlan(roof, tuple(stops), tuple(left), tuple(_gates(knowledge, stops)))


def _gates(knowledge: Knowledge, stops: Sequence[Stop]) -> Iterator[tuple[str, int]]:
    """What weather may make worthless, and on how many units."""
    units: dict[str, int] = {}
    for stop in stops:
        for reason, _ in weather_gates(knowledge, stop.reckoned.tests):
            units[reason] = units.get(reason, 0) + 1
    yield from units.items()


def plan_lines(plan: DayPlan) -> Iterator[tuple[str, int]]:
    """The plan, a sentence with its indent: weather, below, then unit by unit."""
    for reason, units in plan.gates:
        yield f"Weather, on {counted(units, 'unit', 'units')}: {reason}", 0
    below = sum(stop.reckoned.minutes[BELOW] for stop in plan.stops)
    yield f"First below, for all of them, about {spent(below)}:", 0
    for stop in plan.stops:
        yield f"{stop.entry.name}: {stop.entry.own.get('serves', 'its rooms')}", 2
    yield f"Then up once. {BY_NAME}", 0
    for stop in plan.stops:
        yield _stop_line(stop), 2
    if plan.left:
        yield f"Left for another day: {', '.join(entry.name for entry in plan.left)}.", 0
    yield RECKONED, 0


def _stop_line(stop: Stop) -> str:
    """A unit with the parts of its round on the roof."""
    reckoned = stop.reckoned
    legs = (f"{reckoned.minutes[leg]:.0f} min {leg}" for leg in LEGS[1:] if reckoned.minutes[leg])
    locks = counted(reckoned.lock_outs, "lock-out", "lock-outs")
    about = spent(reckoned.on_the_roof)
    return f"{stop.entry.name}: about {about}, {locks}: {', '.join(legs)}"


def spent(minutes: float) -> str:
    """A time as people say it: 45 min, 6 h 10 min."""
    hours, rest = divmod(round(minutes), 60)
    return f"{hours} h {rest} min" if hours else f"{rest} min"
