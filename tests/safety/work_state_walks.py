"""Walks over the work state: a visit as anybody could lead it, and what the officer says to it.

Run as a program (`python -m tests.safety.work_state_walks`) it walks everywhere with all sample
tests at once, and a million steps at random, and prints the counts.
"""

from __future__ import annotations

import random
from collections.abc import Iterator, Sequence
from functools import cache
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
from troubleshoot.safety.transitions import after_test, expire
from troubleshoot.safety.work_state import WHOLE_UNIT, UnitAtWork, WorkState

EVENTS: tuple[Event, ...] = get_args(Event)


class Job(NamedTuple):
    """What the program believes beside what really happened."""

    state: WorkState
    world: World


class Asked(NamedTuple):
    """A sample test, and what it needs on the unit of the walk."""

    test: Test
    place: str | None
    needs: Needs


START = Job(WorkState(), frozenset())
Next = tuple[str, Job]

# Many worlds share one belief: what the program makes of it is worked out once.
next_step = cache(route.next_step)
unmet = cache(guards.unmet)
refusals = cache(transitions.refusals)
after_step = cache(transitions.after_step)
cautious = cache(work_state.cautious)


def asked_of(samples: Sequence[Sample], unit: UnitAtWork) -> tuple[Asked, ...]:
    """The sample tests with their needs."""
    return tuple(Asked(test, place, needs_of(test, place, unit)) for test, place in samples)


def followers(job: Job, asked: Sequence[Asked], unit: UnitAtWork) -> Iterator[Next]:
    """Everything that can happen next, with a word for it: tests, steps, what voids states."""
    offered = {next_step(job.state, LEAVING, unit, leaving=True)}
    for test, place, needs in asked:
        offered.add(next_step(job.state, needs, unit))
        if not unmet(job.state, needs):
            outcomes = ("locks-out",) if test.id == "ignition-trials" else ()
            state = after_test(job.state, test, place, outcomes, unit)
            world = account.after_test(job.world, test, place, outcomes)
            yield f"{test.id} at {place}", Job(state, world)
    yield from _answered(job, sorted(filter(None, offered), key=repr), unit)
    for event in EVENTS:
        if event == "reopened" and not unit.burns_gas:
            continue  # nobody has turned a gas cock there: it is a break like any other
        yield event, Job(expire(job.state, event), account.after_event(job.world, event))


def careless(job: Job, unit: UnitAtWork) -> Iterator[Next]:
    """Every safety step answered in every way, whether or not its turn has come."""
    stored = unit.capacitors + unit.drives
    steps = [Step(id, place) for id in CONFIRMED for place in (*stored, WHOLE_UNIT)]
    yield from _answered(job, steps, unit)


def _answered(job: Job, steps: Sequence[Step], unit: UnitAtWork) -> Iterator[Next]:
    for step in steps:
        for outcomes in answers_to(step.id):
            state = after_step(job.state, step, outcomes, unit)
            yield f"{step}: {outcomes}", Job(state, account.after_step(job.world, step, outcomes))


def undone(before: Job, after: Job) -> tuple[Job, Job]:
    """What undo leads to: one belief, and a world in which the hands did it or did not."""
    state = cautious(before.state, after.state)
    return Job(state, before.world), Job(state, after.world)


def objections(job: Job, asked: Sequence[Asked], unit: UnitAtWork) -> Iterator[str]:
    """What is wrong here: with a test that would be shown now, or with the way to it."""
    officer = Officer(unit)
    for test, place, needs in asked:
        words = "" if unmet(job.state, needs) else officer.objection(job.world, test, place)
        words = words or _about_the_way(job.state, needs, unit)
        if words:
            yield f"{test.id} at {place}: {words}"


@cache
def _about_the_way(state: WorkState, needs: Needs, unit: UnitAtWork) -> str:
    step = next_step(state, needs, unit)
    if step is None:
        return "; ".join(f"no step leads to {words}" for words in unmet(state, needs))
    return "; ".join(
        f"{step.id} is offered before {words}" for words in refusals(state, step, unit)
    )


def walk_everywhere(
    samples: Sequence[Sample], unit: UnitAtWork, undo: bool = False
) -> tuple[int, list[str]]:
    """Breadth first over every sequence of events: jobs met, and what is wrong on them."""
    asked = asked_of(samples, unit)
    seen, ahead, found = {START}, [START], list(objections(START, asked, unit))
    while ahead:
        here, ahead = ahead, []
        for job in here:
            for word, after in followers(job, asked, unit):
                taken_back = undone(job, after) if undo and word not in EVENTS else ()
                for new in {after, *taken_back} - seen:
                    seen.add(new)
                    ahead.append(new)
                    found += [f"{said} after {word}" for said in objections(new, asked, unit)]
    return len(seen), found


def walk_along(
    choices: Sequence[int], samples: Sequence[Sample], unit: UnitAtWork, heedless: bool = False
) -> list[str]:
    """One visit, led by numbers; every seventh choice takes the last thing back."""
    asked = asked_of(samples, unit)
    job, found = START, []
    for choice in choices:
        ways = list(followers(job, asked, unit))
        if heedless:
            ways += careless(job, unit)
        word, after = ways[choice % len(ways)]
        if choice % 7 == 0 and word not in EVENTS:
            after = undone(job, after)[choice % 2]
        found += [f"{said} after {word}" for said in objections(after, asked, unit)]
        job = after
    return found


def _long_walks() -> None:
    for samples, unit in ((AT_UNIT, PLAIN_UNIT), (AT_CIRCUIT, UNIT)):
        count, found = walk_everywhere(samples, unit)
        print(f"everywhere: {count} jobs, {len(found)} objections")
    choose = random.Random(5)
    found = []
    for _ in range(10_000):
        found += walk_along([choose.randrange(10**6) for _ in range(100)], SAMPLES, UNIT)
    print(f"at random: 1,000,000 steps, {len(found)} objections")


if __name__ == "__main__":
    _long_walks()
