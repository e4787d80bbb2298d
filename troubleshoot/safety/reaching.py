"""Reaching a test on a job: which steps come before it, what still refuses it, and for whom."""

from __future__ import annotations

from collections.abc import Iterable

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.unit.places import Place, spoken
from troubleshoot.safety.guards import unmet
from troubleshoot.safety.job import Job
from troubleshoot.safety.needs import Needs, needs_of
from troubleshoot.safety.profiles import hand_over, hand_over_on_the_way
from troubleshoot.safety.route import steps_to
from troubleshoot.safety.steps import LOCK_OFF, Step


def steps_before(job: Job, test: Test, at: Place | None) -> tuple[Step, ...]:
    """The safety steps that lead to a test, in their order."""
    return steps_to(job.work, needs_of(test, spoken(at), job.at_work), job.at_work)


def is_blocked(job: Job, test: Test, at: Place | None) -> bool:
    """Whether no step leads nearer to a test and the guards still refuse it.

    The guards have the last word over the planner.
    """
    return leads_nowhere(job, needs_of(test, spoken(at), job.at_work))


def leads_nowhere(job: Job, needs: Needs) -> bool:
    """The same of whatever needs this."""
    return not steps_to(job.work, needs, job.at_work) and bool(unmet(job.work, needs))


def is_own_lock(job: Job, step: Step) -> bool:
    """Whether a step takes a lock off that was hung under the same profiles.

    29 CFR 1910.147(e)(3): who applied it removes it. Who hung one and may not take it off leaves
    the building without air, and his lock to somebody else.
    """
    return step.id == LOCK_OFF and bool(job.lock_by) and job.lock_by == job.profiles


def beyond(knowledge: Knowledge, job: Job, tests: Iterable[Test], at: Place | None) -> str | None:
    """To whom tests, or a step on the way to one, have to be handed over; None if to nobody."""
    for test in tests:
        phrase = hand_over(test, job.profiles) or hand_over_on_the_way(
            (step for step in steps_before(job, test, at) if not is_own_lock(job, step)),
            knowledge.tests,
            job.profiles,
        )
        if phrase is not None:
            return phrase
    return None
