"""What has to be read afresh, and be sound, before a STOP goes: its finding, and what goes with it.

A break on the way from one of them to the next makes the first too old: others may have been there.
"""

from __future__ import annotations

from dataclasses import replace

from troubleshoot.knowledge.model import Hazard, Knowledge, Test
from troubleshoot.reasoning.choosing.asking import read_for
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.job import Job
from troubleshoot.safety.steps import DEAD_TEST, METER_PROOF
from troubleshoot.safety.stops.record import Spot, StopMet


def is_all_clear(test: Test) -> bool:
    """Whether a test is the word of whoever cleared the place, and no step of ours."""
    return test.kind == "step" and test.id not in STEPS


def shown_by(knowledge: Knowledge, job: Job, hazard: Hazard, spot: Spot) -> tuple[Spot, ...]:
    """All that has to be sound afresh before a STOP goes, in its order: its finding, at least.

    A look, a word or a number read elsewhere does not show by itself that nothing is in the air
    where people are: of a STOP for the whole job whose all-clear is metered that is read too,
    before anything else is looked at or read, after a word was given.
    """
    test, own = knowledge.tests[spot[0]], knowledge.tests.get(hazard.all_clear or "")
    if own is None or own.id == test.id or not hazard.stops_the_job or own.kind != "measurement":
        return (spot,)
    if not job.unit.allows(own.exists_when):
        return (spot,)
    metered = (own.id, None)
    return (spot, metered) if is_all_clear(test) else (metered, spot)


def by_number_alone(hazard: Hazard, test: Test) -> bool:
    """Whether no word of a test lifts the STOP of a hazard, but the number on its instrument.

    Of a danger for the whole job that an instrument shows, a word says no more than a look does.
    """
    return hazard.stops_the_job and test.kind == "measurement" and bool(test.reads)


def not_yet_afresh(knowledge: Knowledge, job: Job, spot: Spot, since: int) -> tuple[Test, ...]:
    """The tests that have to be asked for a finding and have not been since so many answers.

    A computed finding is taken afresh by reading everything it is computed from.
    """
    test = knowledge.tests[spot[0]]
    asked: tuple[Test, ...] = (test,)
    if not any(answer.test == test.id for answer in job.answers):
        asked = read_for(knowledge, job.unit, test, spot[1]) or (test,)
    since_then = job.answers[since:]
    return tuple(
        each
        for each in asked
        if not any(a.test == each.id and _serves(a.places, spot[1]) for a in since_then)
    )


def proved_since(job: Job, spot: Spot, since: int) -> bool:
    """Whether a finding taken since so many answers counts: a test for dead once the meter has been
    proved after it (NFPA 70E 120.5), any other at once."""
    said = [answer.test for answer in job.answers[since:]]
    if spot[0] != DEAD_TEST or DEAD_TEST not in said:
        return True
    return METER_PROOF in said[said.index(DEAD_TEST) :]


def after_a_break(knowledge: Knowledge, job: Job) -> tuple[StopMet, ...]:
    """The STOPs that were met: what was read sound for one in part only has to be read anew."""
    now = len(job.answers)
    return tuple(
        replace(met, answers=now) if _is_read_in_part(knowledge, job, met) else met
        for met in job.stops
    )


def _is_read_in_part(knowledge: Knowledge, job: Job, met: StopMet) -> bool:
    hazard = knowledge.hazards.get(met.hazard)
    if hazard is None or met.spot is None or not met.reopened:
        return False
    unread = [
        not_yet_afresh(knowledge, job, each, met.answers)
        for each in shown_by(knowledge, job, hazard, met.spot)
    ]
    return any(unread) and not all(unread)


def _serves(places: tuple[Place | None, ...], at: Place | None) -> bool:
    return at is None or at in places or None in places
