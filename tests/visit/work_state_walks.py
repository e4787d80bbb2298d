"""Walks over the work state: a visit as anybody could lead it, and what the officer says to it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple, get_args

import work_state_account as account
from work_state_account import World
from work_state_officer import Officer
from work_state_samples import Sample, answers_to

from troubleshoot.visit.guards import unmet
from troubleshoot.visit.needs import needs_of
from troubleshoot.visit.route import LEAVING, next_step
from troubleshoot.visit.transitions import Event, after_step, after_test, expire
from troubleshoot.visit.work_state import UnitAtWork, WorkState, cautious

EVENTS: tuple[Event, ...] = get_args(Event)


class Job(NamedTuple):
    """What the program believes beside what really happened."""

    state: WorkState
    world: World


START = Job(WorkState(), frozenset())


def followers(job: Job, samples: Sequence[Sample], unit: UnitAtWork) -> Iterator[tuple[str, Job]]:
    """Everything that can happen next, with a word for it: tests, steps and what voids states."""
    offered = {next_step(job.state, LEAVING, unit, leaving=True)}
    for test, place in samples:
        needs = needs_of(test, place, unit)
        offered.add(next_step(job.state, needs, unit))
        if not unmet(job.state, needs):
            state = after_test(job.state, test, place, (), unit)
            yield (
                f"{test.id} at {place}",
                Job(state, account.after_test(job.world, test, place)),
            )
    for step in sorted(filter(None, offered), key=repr):
        for outcomes in answers_to(step.id):
            yield (
                f"{step}: {outcomes}",
                Job(
                    after_step(job.state, step, outcomes, unit),
                    account.after_step(job.world, step, outcomes),
                ),
            )
    for event in EVENTS:
        yield event, Job(expire(job.state, event), account.after_event(job.world, event))


def undone(before: Job, after: Job) -> tuple[Job, Job]:
    """What undo leads to: one belief, and a world in which the hands did it or did not."""
    state = cautious(before.state, after.state)
    return Job(state, before.world), Job(state, after.world)


def objections(job: Job, samples: Sequence[Sample], unit: UnitAtWork) -> Iterator[str]:
    """What the officer says to the tests that would be shown now."""
    officer = Officer(unit)
    for test, place in samples:
        if not unmet(job.state, needs_of(test, place, unit)):
            words = officer.objection(job.world, test, place)
            if words:
                yield f"{test.id} at {place}: {words}"


def walk_everywhere(
    samples: Sequence[Sample], unit: UnitAtWork, undo: bool = False
) -> tuple[int, list[str]]:
    """Breadth first over every sequence of events: jobs met, and the officer's objections."""
    seen, ahead, found = {START}, [START], []
    while ahead:
        here, ahead = ahead, []
        for job in here:
            for word, after in followers(job, samples, unit):
                taken_back = undone(job, after) if undo and word not in EVENTS else ()
                for new in (after, *taken_back):
                    if new not in seen:
                        seen.add(new)
                        ahead.append(new)
                        found += [f"{said} after {word}" for said in objections(new, samples, unit)]
    return len(seen), found
