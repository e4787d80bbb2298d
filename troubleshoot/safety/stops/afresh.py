"""What is wanted so that a STOP may be lifted: which finding afresh, after which steps, by whom.

That way and no other is open while a STOP stands. The finding is taken as safely as any other:
whatever it needs of the work state comes first, step by step. A finding that is a safety step is
taken when its turn comes on the way to dead work.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.reasoning.unit.places import Place, like
from troubleshoot.safety.bringing import stands
from troubleshoot.safety.declared import CONFIRMED, STEPS
from troubleshoot.safety.job import Job
from troubleshoot.safety.needs import for_dead_work, needs_of
from troubleshoot.safety.profiles import APPRENTICE, hand_over, hand_over_on_the_way
from troubleshoot.safety.reaching import is_blocked, steps_before
from troubleshoot.safety.route import steps_to, steps_to_leave, steps_to_leave_off
from troubleshoot.safety.step_guards import AWAY_FROM_LIVE, CALLED_TO_RUN, PROVED_SINCE_TESTED
from troubleshoot.safety.steps import DEAD_TEST, GAS_OPEN, GAS_SWEEP, Step
from troubleshoot.safety.stops.lifting import is_news, is_under_way, lifting_finding
from troubleshoot.safety.stops.parts import is_all_clear, not_yet_afresh
from troubleshoot.safety.stops.record import Spot
from troubleshoot.safety.transitions import after_step, refusals

LIVE: Final = "live-work"
NOT_BY_AN_APPRENTICE: Final = "hand over to the supervising technician"


@frozen
class Afresh:
    """A finding on the way to being taken once more.

    `steps`: the safety steps that come first, in their order; a finding that is a step itself is
    the last of them, if its turn comes. `reading`: what is read once there are none: the finding,
    or one of those that it is computed from.
    """

    finding: Spot
    steps: tuple[Step, ...] = ()
    reading: Spot | None = None


def way_to_lifting(
    knowledge: Knowledge, job: Job, conclusions: Conclusions, told: FiredHazard
) -> tuple[FiredHazard, Afresh] | None:
    """The STOP that the finding being taken afresh may lift, and the way; None where none may go.

    `told`: the STOP to be told of. Where it may be lifted here so may any other that stands, and
    the finding may be that of another. One that is found on the way is told first.
    """
    next_finding = lifting_finding(knowledge, job, conclusions, told)
    if next_finding is None or is_news(knowledge, job, conclusions, told):
        return None
    under_way = is_under_way(knowledge, job, conclusions, told, next_finding)
    fresh = job.fresh or (next_finding if under_way else None)
    if fresh is None:
        return None
    standing = conclusions.standing_stops
    lifted = [s for s in standing if lifting_finding(knowledge, job, conclusions, s) == fresh]
    if not lifted or taken_by(knowledge, job, fresh) is not None:
        return None
    way = way_to(knowledge, job, fresh)
    return None if way is None else (lifted[0], way)


def taken_by(knowledge: Knowledge, job: Job, finding: Spot) -> str | None:
    """To whom taking a finding afresh has to be handed over; None if to nobody.

    What was handed over is never taken back by an apprentice, whoever else is with them. On the way
    to a step the person for the next one is asked for: that of each comes with its turn.
    """
    if APPRENTICE in job.profiles and any(met.reopened for met in job.stops):
        return NOT_BY_AN_APPRENTICE
    test = knowledge.tests[finding[0]]
    if test.kind != "step":
        steps = _steps_to_reading(job, test, finding[1])
        way = hand_over_on_the_way(steps, knowledge.tests, job.profiles)
        return hand_over(test, job.profiles) or way
    steps = _before_all_clear(job, test) if is_all_clear(test) else _steps_to_step(job, finding)
    tests = (test, *(knowledge.tests[step.id] for step in steps[:1]))
    return next((phrase for each in tests if (phrase := hand_over(each, job.profiles))), None)


def way_to(knowledge: Knowledge, job: Job, finding: Spot) -> Afresh | None:
    """The way to a finding being taken afresh; None where none leads there.

    An all-clear has no turn: it is somebody's word, given with no live part open before them.
    """
    test = knowledge.tests[finding[0]]
    if is_all_clear(test):
        return Afresh(finding, _before_all_clear(job, test), reading=finding)
    if test.kind == "step":
        steps = _steps_to_step(job, finding)
        return Afresh(finding, steps) if steps else None
    missing: tuple[Test, ...] = not_yet_afresh(knowledge, job, finding, job.fresh_since)
    if not missing:
        return None
    wanted = missing[0]
    at = like(finding[1], job.unit.layout.places(wanted.per))
    if is_blocked(job, wanted, at):
        return None
    steps = _steps_to_reading(job, wanted, at)
    return Afresh(finding, steps, (wanted.id, at)) if _may_be_gone(job, wanted, steps) else None


def _steps_to_reading(job: Job, test: Test, at: Place | None) -> tuple[Step, ...]:
    """What comes before a finding that is read.

    Behind a shut cock a sweep for gas shows nothing of the joints that leaked: the cock is seen
    open first, or opened by who may, once it has been told that the place is clear.
    """
    if test.id != GAS_SWEEP or not job.at_work.burns_gas:
        return steps_before(job, test, at)
    needs = replace(needs_of(test, None, job.at_work), gas="on")
    return steps_to(job.work, needs, job.at_work)


def _may_be_gone(job: Job, test: Test, steps: tuple[Step, ...]) -> bool:
    """Whether a way may be gone: for a sweep no cock is opened onto an open tap.

    On the way to what runs a tap is plugged, or its manometer on, before the cock is opened.
    """
    opens = GAS_OPEN in {step.id for step in steps}
    return test.id != GAS_SWEEP or not (opens and job.work.taps_open)


def _before_all_clear(job: Job, test: Test) -> tuple[Step, ...]:
    """What comes before the word: off the live work, or a good roof where it is seen up there."""
    if LIVE in test.hazards:
        return _away_from_live(job)
    return steps_before(job, test, None) if needs_of(test, None, job.at_work).roof else ()


def _away_from_live(job: Job) -> tuple[Step, ...]:
    """The way to the lock, where parts are open live.

    Gloves, clothing and the second person are seen to before a panel is opened or the power is put
    back for it, never in front of it.
    """
    away = stands(AWAY_FROM_LIVE, None, job.work, job.at_work)
    return () if away else steps_to_leave_off(job.work, job.at_work)


def _steps_to_step(job: Job, finding: Spot) -> tuple[Step, ...]:
    """The way to dead work until the step's turn has come, then the step; else all of the way.

    A step at a unit that runs has its turn on the way back.
    """
    wanted, work, unit = Step(finding[0], job.done_last_at(finding)), job.work, job.at_work
    if CALLED_TO_RUN in STEPS[wanted.id].after:
        back = steps_to_leave(work, unit)
        return back[: back.index(wanted) + 1] if wanted in back else ()
    if AWAY_FROM_LIVE in STEPS[wanted.id].after:
        return (*_away_from_live(job), wanted)
    way = steps_to(work, for_dead_work(unit), unit)
    if wanted.id == DEAD_TEST and not stands(PROVED_SINCE_TESTED, None, work, unit):
        return way[:1]  # it has been taken, and counts once the meter has been proved after it
    for number, step in enumerate(way):
        if not refusals(work, wanted, unit):
            return (*way[:number], wanted)
        work = after_step(work, step, (CONFIRMED[step.id],), unit)
    return way if refusals(work, wanted, unit) else (*way, wanted)
