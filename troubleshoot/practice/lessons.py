"""What a play can teach, in numbers: what each reading told, and when the case was decided.

Also the belief that the call invited. All of it comes from the ranking after each thing done.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.practice.played import Done
from troubleshoot.practice.reasoned import chance_of, is_reasoned
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.evidence.ranking import Cause

TELLS: Final = 0.03
"""A reading that moves the chance by less told nothing of it (common practice, no source)."""


@frozen
class Told:
    """What one test told: the chance of what is true before it and after it, from 0 to 1."""

    done: Done
    before: float
    after: float

    @property
    def much(self) -> bool:
        """Whether it moved the chance at all."""
        return abs(self.after - self.before) >= TELLS


@frozen
class Decided:
    """The thing done by which the case was decided, at which minute, and the tests after it."""

    done: Done
    minutes: float
    tests_after: int


def told_by_readings(session: Session) -> Iterator[Told]:
    """What each test of a play told, in order; safety steps are left out."""
    before, truth = session.start, session.scenario.truth.faults
    for moment in session.moments:
        if moment.done.gain is not None:
            yield Told(moment.done, chance_of(before, truth), chance_of(moment.conclusions, truth))
        before = moment.conclusions


def decided(session: Session) -> Decided | None:
    """The first moment from which what had been read separated what is true from its rivals.

    None where it never came.
    """
    reasoner, truth = session.decider.reasoner, session.scenario.truth.faults
    tests = [moment for moment in session.moments if moment.done.gain is not None]
    for number, moment in enumerate(tests, start=1):
        if is_reasoned(reasoner, session.start, moment.conclusions, truth):
            return Decided(moment.done, moment.minutes, len(tests) - number)
    return None


def invited_belief(session: Session) -> Cause | None:
    """The likeliest cause by the kind of call, where it is none of the true ones.

    What the caller said besides may speak against it: the ranking has the kind alone.
    """
    true = {fault.fault for fault in session.scenario.truth.faults}
    return next((cause for cause in session.start.causes if cause.fault.id not in true), None)
