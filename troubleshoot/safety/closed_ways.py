"""Ways that are closed: a step on them has failed, and failed again when it was offered once more.

A meter that fails its proof, with no other at hand, and somebody who stays alone change nothing by
being asked again. What is behind such a step is proposed no more; what needs no such step goes on.
The way is open again once the step is sound, or others may have changed it (an absence, a reopened
visit); a person who chooses a test is led to the step as before.
"""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.model import Test
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.bringing import stands
from troubleshoot.safety.declaration import Outcomes
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.job import Job
from troubleshoot.safety.reaching import steps_before
from troubleshoot.safety.steps import BEFORE_BLEEDING, Step
from troubleshoot.safety.work_state import UnitAtWork, WorkState

OFFERED: Final = 2
"""So often a step is offered that fails each time."""


def failures(
    before: tuple[Step, ...], step: Step, outcomes: Outcomes, work: WorkState, unit: UnitAtWork
) -> tuple[Step, ...]:
    """The steps that have failed, each as often as it did, once this one has come to `outcomes`.

    `work`: as it is after it. A step that brought about what it is for has not failed, whatever
    else came of it.
    """
    declared, same = STEPS[step.id], _plain(step)
    if outcomes == (BEFORE_BLEEDING,):
        return before
    sound = bool(outcomes) and {declared.sound, *declared.also_sound}.issuperset(outcomes)
    if sound or came_about(step, work, unit):
        return tuple(each for each in before if each != same)
    return (*before, same)


def came_about(step: Step, work: WorkState, unit: UnitAtWork) -> bool:
    """Whether what a step is for stands after it, whatever else came of it."""
    return all(stands(guard, step.place, work, unit) for guard in STEPS[step.id].brings)


def has_failed(job: Job, step: Step) -> int:
    """How often a step has failed since it was last sound."""
    return job.failed_steps.count(_plain(step))


def _plain(step: Step) -> Step:
    """A step as it is counted: the second time round is the same step."""
    return Step(step.id, step.place)


def closed(job: Job) -> tuple[str, ...]:
    """The ids of the steps behind which nothing is proposed any more, in the order of failing."""
    gone = (step for step in job.failed_steps if has_failed(job, step) >= OFFERED)
    return tuple(dict.fromkeys(step.id for step in gone))


def is_closed(job: Job, test: Test, at: Place | None) -> bool:
    """Whether a step that has failed as often as it is offered comes before a test."""
    if not job.failed_steps:
        return False
    return any(has_failed(job, step) >= OFFERED for step in steps_before(job, test, at))
