"""Walks over the work state: a visit as anybody could lead it, and what the officer says to it.

Run as a program (`python -m tests.safety.work_state_walks`) it walks everywhere with all sample
tests at once, and a million steps at random, and prints the counts.
"""

from __future__ import annotations

import random
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import cache, cached_property
from typing import NamedTuple, get_args

from tests.safety import work_state_account as account
from tests.safety.work_state_account import World
from tests.safety.work_state_officer import Officer
from tests.safety.work_state_samples import (
    AT_CIRCUIT,
    AT_UNIT,
    PLAIN_UNIT,
    SAMPLES,
    UNIT,
    Sample,
    answers_to,
)
from troubleshoot.knowledge.model import Test
from troubleshoot.safety import guards, route, transitions, work_state
from troubleshoot.safety.declaration import Event
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.needs import Needs, needs_of
from troubleshoot.safety.route import LEAVING
from troubleshoot.safety.steps import Step
from troubleshoot.safety.work_state import WHOLE_UNIT, UnitAtWork, WorkState

EVENTS: tuple[Event, ...] = get_args(Event)


_ONE_OF_EACH: dict[World, World] = {}
"""Each world by the object that stands for all equal ones."""


class Happening:
    """Something that can happen, with a word for it, and what it makes of what really was so."""

    def __init__(self, word: str, account_after: Callable[[World], World]) -> None:
        self.word = word
        self.is_event = word in EVENTS
        self._account_after = account_after
        self._known: dict[World, World] = _Worked(self._after)

    def after(self, world: World) -> World:
        return self._known[world]

    def after_each(self, worlds: Iterable[World]) -> set[World]:
        return set(map(self._known.__getitem__, worlds))

    def _after(self, world: World) -> World:
        after = self._account_after(world)
        return _ONE_OF_EACH.setdefault(after, after)


class _Worked(dict[World, World]):
    """What is made of each world, worked out when it is asked for first."""

    def __init__(self, work_out: Callable[[World], World]) -> None:
        super().__init__()
        self._work_out = work_out

    def __missing__(self, world: World) -> World:
        made = self[world] = self._work_out(world)
        return made


class Asked:
    """A sample test, what it needs on the unit of the walk, and what the officer says to it."""

    def __init__(self, test: Test, place: str | None, unit: UnitAtWork) -> None:
        self.test, self.place = test, place
        self.needs = needs_of(test, place, unit)
        self.name = f"{test.id} at {place}"
        self._officer = Officer(unit)
        self._said: dict[World, str] = {}
        self._said_of_step: dict[tuple[World, str], str] = {}

    def objection_to_step(self, world: World, step: str) -> str:
        if (world, step) not in self._said_of_step:
            self._said_of_step[world, step] = self._officer.objection_to_step(world, step)
        return self._said_of_step[world, step]

    def objection(self, world: World) -> str:
        if world not in self._said:
            self._said[world] = self._officer.objection(world, self.test, self.place)
        return self._said[world]


class Belief:
    """What the program believes, one object for each state, and what it makes of that.

    Many worlds share one belief, and a walk comes to each by many ways: all of this is worked out
    once, and a belief is known by being the same object, since a state is slow to hash.
    """

    def __init__(self, walk: Walk, state: WorkState) -> None:
        self.walk, self.state = walk, state

    @cached_property
    def shown(self) -> tuple[Asked, ...]:
        """The sample tests that would be shown now."""
        return tuple(a for a in self.walk.asked if not guards.unmet(self.state, a.needs))

    @cached_property
    def objections(self) -> tuple[tuple[Asked, str], ...]:
        """What is wrong with the way to each sample test, whatever really was so."""
        state, unit = self.state, self.walk.unit
        return tuple((each, _about_the_way(state, each.needs, unit)) for each in self.walk.asked)

    @cached_property
    def hoses(self) -> tuple[tuple[Asked, str], ...]:
        """The steps at hoses that would be offered now, each with the test that it leads to."""
        steps = ((a, route.next_step(self.state, a.needs, self.walk.unit)) for a in self.walk.asked)
        leaving = route.next_step(self.state, LEAVING, self.walk.unit, leaving=True)
        offered = (*steps, *((each, leaving) for each in self.walk.asked[:1]))
        return tuple((a, s.id) for a, s in offered if s and s.id in ("gauges-on", "gauges-off"))

    @cached_property
    def may_be_wrong(self) -> bool:
        """Whether anything can be said against it: a test shown, hoses, or the way to one."""
        about_ways = any(words for _, words in self.objections)
        return bool(self.shown) or bool(self.hoses) or about_ways

    @cached_property
    def ways(self) -> tuple[tuple[Happening, Belief], ...]:
        """Everything that can happen next: tests, steps that are offered, what voids states."""
        return tuple(self._ways())

    def _ways(self) -> Iterator[tuple[Happening, Belief]]:
        walk, state = self.walk, self.state
        offered = {route.next_step(state, LEAVING, walk.unit, leaving=True)}
        offered |= {route.next_step(state, each.needs, walk.unit) for each in walk.asked}
        for each in self.shown:
            outcomes = ("locks-out",) if each.test.id == "ignition-trials" else ()
            after = transitions.after_test(state, each.test, each.place, outcomes, walk.unit)
            yield walk.tested(each, outcomes), walk.belief(after)
        yield from self.answered(sorted(filter(None, offered), key=repr))
        for event in EVENTS:
            if event == "reopened" and not walk.unit.burns_gas:
                continue  # nobody has turned a gas cock there: it is a break like any other
            yield voided(event), walk.belief(transitions.expire(state, event))

    @cached_property
    def careless(self) -> tuple[tuple[Happening, Belief], ...]:
        """Every safety step answered in every way, whether or not its turn has come."""
        stored = self.walk.unit.capacitors + self.walk.unit.drives
        steps = [Step(id, place) for id in CONFIRMED for place in (*stored, WHOLE_UNIT)]
        return tuple(self.answered(steps))

    def answered(self, steps: Sequence[Step]) -> Iterator[tuple[Happening, Belief]]:
        for step in steps:
            for outcomes in answers_to(step.id):
                after = transitions.after_step(self.state, step, outcomes, self.walk.unit)
                yield done(step, outcomes), self.walk.belief(after)


class Job(NamedTuple):
    """What the program believes beside what really happened."""

    belief: Belief
    world: World

    def after(self, happening: Happening, belief: Belief) -> Job:
        return Job(belief, happening.after(self.world))

    def objections(self) -> Iterator[str]:
        """What is wrong here: with a test that would be shown now, or with the way to it."""
        for each, about_the_way in self.belief.objections:
            shown = each in self.belief.shown
            words = (each.objection(self.world) if shown else "") or about_the_way
            if words:
                yield f"{each.name}: {words}"
        for each, step in self.belief.hoses:
            if words := each.objection_to_step(self.world, step):
                yield f"{step} on the way to {each.name}: {words}"


class Walk:
    """Walks on one unit, among these sample tests."""

    def __init__(self, samples: Sequence[Sample], unit: UnitAtWork) -> None:
        self.unit = unit
        self.asked = tuple(Asked(test, place, unit) for test, place in samples)
        self._beliefs: dict[WorkState, Belief] = {}
        self._tested: dict[str, Happening] = {}
        self._cautious: dict[tuple[Belief, Belief], Belief] = {}
        self.start = Job(self.belief(WorkState()), frozenset())

    def belief(self, state: WorkState) -> Belief:
        known = self._beliefs.get(state)
        return known or self._beliefs.setdefault(state, Belief(self, state))

    def undone(self, before: Job, after: Job) -> tuple[Job, Job]:
        """What undo leads to: one belief, and a world in which the hands did it or did not."""
        belief = self.cautious(before.belief, after.belief)
        return Job(belief, before.world), Job(belief, after.world)

    def cautious(self, before: Belief, after: Belief) -> Belief:
        """What is believed once it may be either."""
        both = before, after
        if both not in self._cautious:
            self._cautious[both] = self.belief(work_state.cautious(before.state, after.state))
        return self._cautious[both]

    def tested(self, asked: Asked, outcomes: tuple[str, ...]) -> Happening:
        test, place = asked.test, asked.place
        if asked.name not in self._tested:
            self._tested[asked.name] = Happening(
                asked.name, lambda world: account.after_test(world, test, place, outcomes)
            )
        return self._tested[asked.name]


@cache
def done(step: Step, outcomes: tuple[str, ...]) -> Happening:
    """A step that was answered, which every walk shares."""
    return Happening(f"{step}: {outcomes}", lambda world: account.after_step(world, step, outcomes))


@cache
def voided(event: Event) -> Happening:
    """An event, which every walk shares."""
    return Happening(event, lambda world: account.after_event(world, event))


def _about_the_way(state: WorkState, needs: Needs, unit: UnitAtWork) -> str:
    step = route.next_step(state, needs, unit)
    if step is None:
        return "; ".join(f"no step leads to {words}" for words in guards.unmet(state, needs))
    refused = transitions.refusals(state, step, unit)
    return "; ".join(f"{step.id} is offered before {words}" for words in refused)


def walk_everywhere(
    samples: Sequence[Sample], unit: UnitAtWork, undo: bool = False
) -> tuple[int, list[str]]:
    """Breadth first over every sequence of events: jobs met, and what is wrong on them.

    All worlds of a belief that were met meanwhile go on from it together.
    """
    walk = Walk(samples, unit)
    seen: dict[Belief, set[World]] = defaultdict(set)
    ahead: dict[Belief, set[World]] = {}
    found: list[str] = []

    def meet(belief: Belief, worlds: set[World], after: str) -> None:
        new = worlds - seen[belief]
        if not new:
            return
        seen[belief] |= new
        ahead[belief] = ahead.get(belief, set()) | new
        for world in sorted(new, key=sorted) if belief.may_be_wrong else ():
            found.extend(f"{said} after {after}" for said in Job(belief, world).objections())

    meet(walk.start.belief, {walk.start.world}, "the start")
    while ahead:
        before = next(iter(ahead))
        worlds = ahead.pop(before)
        for happening, belief in before.ways:
            after = happening.after_each(worlds)
            meet(belief, after, happening.word)
            if undo and not happening.is_event:
                meet(walk.cautious(before, belief), worlds | after, f"{happening.word}, undone")
    return sum(map(len, seen.values())), found


def walk_along(choices: Sequence[int], walk: Walk, heedless: bool = False) -> list[str]:
    """One visit, led by numbers; every seventh choice takes the last thing back."""
    job, found = walk.start, []
    for choice in choices:
        ways = job.belief.ways
        if heedless:
            ways += job.belief.careless
        happening, belief = ways[choice % len(ways)]
        after = job.after(happening, belief)
        if choice % 7 == 0 and not happening.is_event:
            after = walk.undone(job, after)[choice % 2]
        found += [f"{said} after {happening.word}" for said in after.objections()]
        job = after
    return found


def _long_walks() -> None:
    for samples, unit in ((AT_UNIT, PLAIN_UNIT), (AT_CIRCUIT, UNIT)):
        count, found = walk_everywhere(samples, unit)
        print(f"everywhere: {count} jobs, {len(found)} objections")
    choose = random.Random(5)
    found = []
    walk = Walk(SAMPLES, UNIT)
    for _ in range(10_000):
        found += walk_along([choose.randrange(10**6) for _ in range(100)], walk)
    print(f"at random: 1,000,000 steps, {len(found)} objections")


if __name__ == "__main__":
    _long_walks()
