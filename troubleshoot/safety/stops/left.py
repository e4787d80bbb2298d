"""What an earlier visit left off on the unit: it stays off until a later one has read it sound."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.safety.job import Job
from troubleshoot.safety.stops.record import LeftOn

LEFT: Final = "left-before"
"""The atom that stands for what an earlier visit has found and left off; with a test behind it, for
what takes it away: as its own finding that may be read, whatever the danger forbids."""


def with_left_before(knowledge: Knowledge, job: Job, conclusions: Conclusions) -> Conclusions:
    """The conclusions with every danger standing for which the unit was left off before.

    One that today's rules do not name any more was told of, and that is all.
    """
    hazards = {fired.hazard.id: fired for fired in conclusions.hazards}
    for left in job.left_on:
        if left.hazard in knowledge.hazards and not is_over(conclusions, left):
            hazards[left.hazard] = _standing(knowledge, hazards.get(left.hazard), left)
    return replace(conclusions, hazards=tuple(hazards.values()))


def _standing(knowledge: Knowledge, now: FiredHazard | None, left: LeftOn) -> FiredHazard:
    """A danger as it stands: where it was left, and where it is found now.

    One that stopped the whole job was lifted before its visit was closed, its repair not proved: it
    keeps off what it did, and stops nobody from reading it.
    """
    hazard = knowledge.hazards[left.hazard]
    if now is None or not now.found:
        hazard = replace(hazard, stop=None) if hazard.stops_the_job else hazard
        because = (LEFT, *(f"{LEFT}:{test}" for test in left.tests))
        return FiredHazard(hazard, left.circuits, because, found=True)
    return replace(now, circuits=tuple(sorted({*now.circuits, *left.circuits})))


def only_left(fired: FiredHazard) -> bool:
    """Whether a danger stands as an earlier visit left it, and nothing of this one shows it."""
    return fired.because[:1] == (LEFT,)


def is_over(conclusions: Conclusions, left: LeftOn) -> bool:
    """Whether it has been read sound in this visit, wherever it was."""
    tests, layout = conclusions.hypotheses.knowledge.tests, conclusions.case.unit.layout
    sound = {
        circuit
        for reading in conclusions.readings
        if reading.test in left.tests and reading.valid and reading.possible
        if reading.at_worst <= {*tests[reading.test].healthy}
        for circuit in layout.circuits_of(reading.at)
    }
    bad = any(
        fired.hazard.id == left.hazard and fired.found and {*fired.circuits} & {*left.circuits}
        for fired in conclusions.hazards
        if not only_left(fired)
    )
    return not bad and sound >= {*left.circuits} and bool(sound)
