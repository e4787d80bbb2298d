"""What a STOP came from, once its danger has gone: the part is put right before anything runs.

A can that swelled and is bled burns nobody any more, and bursts at the next call. What its hazard
names under `put-right` is read sound after the STOP, wherever it was met; until then all stays
off that the hazard keeps off, and nothing is read live.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Final

from troubleshoot.knowledge.model import Ban, Finding, Hazard, Knowledge
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.reasoning.readings.validity import circuits
from troubleshoot.safety.job import Job
from troubleshoot.safety.stops.parts import not_yet_afresh
from troubleshoot.safety.stops.record import Spot, StopMet

NOT_PUT_RIGHT: Final = "not-put-right"
"""The atom that stands for a danger that has gone, with its part not yet seen put right."""

SEE_IT_FIRST: Final = (
    "The danger at hand has gone; what it came from has not been seen put right. Nothing here is "
    "switched on or called before it has been replaced or repaired, and was read sound, locked out."
)

NOTHING_LIVE: Final = (Ban(work_states=("running", "running-open", "energised-open")),)


def with_not_put_right(
    knowledge: Knowledge, job: Job, conclusions: Conclusions, lifted: Iterable[StopMet]
) -> Conclusions:
    """The conclusions with every hazard standing whose STOP is lifted and whose part is not seen.

    One that still stops the visit says more, and stays as it is.
    """
    now = {fired.hazard.id for fired in conclusions.standing_stops}
    left = {
        met.hazard: _keeps_off(knowledge.hazards[met.hazard], job)
        for met in lifted
        if met.hazard not in now and any(_unseen(knowledge, job, conclusions, met))
    }
    others = (fired for fired in conclusions.hazards if fired.hazard.id not in left)
    return replace(conclusions, hazards=(*others, *left.values()))


def to_see_put_right(knowledge: Knowledge, job: Job, conclusions: Conclusions) -> Iterator[Spot]:
    """What is still to be read sound of the parts that stopped the work."""
    waiting = {f.hazard.id for f in conclusions.hazards if f.because == (NOT_PUT_RIGHT,)}
    spots = (
        spot
        for met in job.stops
        if met.hazard in waiting
        for spot in _unseen(knowledge, job, conclusions, met)
    )
    yield from dict.fromkeys(spots)


def _keeps_off(hazard: Hazard, job: Job) -> FiredHazard:
    """A hazard whose danger has gone: it stops nobody, and still keeps off what it did."""
    quiet = replace(hazard, what_to_do=SEE_IT_FIRST, stop=None, forbids=NOTHING_LIVE)
    return FiredHazard(quiet, circuits(job.unit.layout, None), (NOT_PUT_RIGHT,), found=True)


def _unseen(
    knowledge: Knowledge, job: Job, conclusions: Conclusions, met: StopMet
) -> Iterator[Spot]:
    """Where a part has not been read sound since its STOP: at its place, else at all there are."""
    for wanted in knowledge.hazards[met.hazard].put_right:
        if wanted.test not in conclusions.hypotheses.tests:
            continue
        places = job.unit.layout.places(knowledge.tests[wanted.test].per)
        at = None if met.spot is None else met.spot[1]
        for place in (at,) if at in places else places:
            spot = (wanted.test, place)
            fresh = not not_yet_afresh(knowledge, job, spot, met.answers)
            if not (fresh and _is_right(conclusions, wanted, spot)):
                yield spot


def _is_right(conclusions: Conclusions, wanted: Finding, spot: Spot) -> bool:
    """Whether a part was last read to be what it has to be, and nothing worse is possible."""
    readings = [r for r in conclusions.readings if (r.test, r.at) == spot and r.valid]
    return any(r.possible and r.at_worst <= {*wanted.outcomes} for r in readings)
