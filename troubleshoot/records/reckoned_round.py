"""What a unit's round takes, by the minutes of its tests and of the safety steps between them.

Reckoned, not measured: each step is taken as confirmed, each test as read at the first try, once
for all that is computed from it; what is waited for in one state of work is waited for once.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.choosing.asking import read_for
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.places import Place, spoken
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.needs import left_on, needs_of, with_needs
from troubleshoot.safety.route import steps_to, steps_to_leave
from troubleshoot.safety.steps import LOCKOUT, minutes_of
from troubleshoot.safety.stops.record import Spot
from troubleshoot.safety.transitions import after_step
from troubleshoot.safety.unit_at_work import unit_at_work
from troubleshoot.safety.work_state import WorkState
from troubleshoot.visit.deciding.on_round import HOOKED
from troubleshoot.visit.round.points import in_walking_order, points_here
from troubleshoot.visit.round.season import Season

BELOW: Final = "below"
RUNNING: Final = "running with its panels on"
LOCKED: Final = "locked out"
LIVE: Final = "live and open"
BACK: Final = "to put it back"
LEGS: Final = (BELOW, RUNNING, LOCKED, LIVE, BACK)
"""The parts of a round in their order."""
_LEG: Final = {
    "any": RUNNING, "running": RUNNING, "locked-closed": LOCKED, "locked-out": LOCKED,
    "energised-open": LIVE, "running-open": LIVE,
}  # fmt: skip


@frozen
class Reckoned:
    """A unit's round: the minutes of each of its parts, and how often it is locked out for it.

    `tests`: those of its points, by their ids.
    """

    minutes: Mapping[str, float]
    lock_outs: int
    tests: frozenset[str]

    @property
    def on_the_roof(self) -> float:
        """Minutes at the unit, from the first look to the last panel."""
        return sum(self.minutes.values()) - self.minutes[BELOW]


def reckoned_round(knowledge: Knowledge, unit: Unit, season: Season) -> Reckoned:
    """What the round of a season takes on a unit."""
    at_work = unit_at_work(unit)
    minutes, waited = dict.fromkeys(LEGS, 0.0), dict.fromkeys(LEGS, 0.0)
    lock_outs, work = 0, WorkState()
    walk = in_walking_order(knowledge, points_here(knowledge, unit, season), at_work)
    spots = list({s: None for (name, at), _ in walk for s in _read(knowledge, unit, name, at)})
    for number, (name, at) in enumerate(spots):
        test = _hooked_up_once(knowledge, knowledge.tests[name], spots[number:], work)
        needs = needs_of(test, spoken(at), at_work)
        steps = steps_to(work, needs, at_work)
        for step in steps:
            work = after_step(work, step, (CONFIRMED[step.id],), at_work)
            lock_outs += step.id == LOCKOUT
        leg = _LEG[needs.energy] if needs.roof else BELOW
        minutes[leg] += test.minutes + minutes_of(steps, knowledge.tests)
        waited[leg] = max(waited[leg], test.wait_minutes)
    minutes[BACK] = minutes_of(steps_to_leave(work, at_work), knowledge.tests)
    tests = frozenset(name for (name, _), _ in walk)
    return Reckoned({leg: minutes[leg] + waited[leg] for leg in LEGS}, lock_outs, tests)


def _read(knowledge: Knowledge, unit: Unit, name: str, at: Place | None) -> Iterator[Spot]:
    """What is read for a test of a round: a computed one by what it is computed from."""
    test = knowledge.tests[name]
    if test.kind != "computed":
        yield name, at
        return
    for each in read_for(knowledge, unit, test, at):
        yield each.id, at if each.per == test.per else unit.layout.places(each.per)[0]


def _hooked_up_once(
    knowledge: Knowledge, test: Test, left: Iterable[Spot], work: WorkState
) -> Test:
    """A test as a round needs it: what is hooked up dead goes on together, and stays on."""
    if not {*test.needs_state} & {*HOOKED}:
        return test
    tests = (knowledge.tests[name] for name, _ in left)
    beside = (each for each in tests if each.per is None and each.work_state == test.work_state)
    wanted = {*left_on(work), *(need for each in beside for need in each.needs_state)}
    return with_needs(test, (need for need in HOOKED if need in wanted))


def weather_gates(knowledge: Knowledge, tests: frozenset[str]) -> Iterator[tuple[str, int]]:
    """What the weather may make worthless of these tests: why, and how many of them."""
    for rule in knowledge.procedures.values():
        limit = knowledge.limits.get(rule.when.name) if rule.when.op == "state" else None
        if rule.void is None or limit is None:
            continue
        weather = (knowledge.quantities[bound.quantity].weather for bound in limit.bounds)
        held = tests & frozenset(rule.void.tests)
        if held and all(weather):
            yield rule.reason, len(held)
