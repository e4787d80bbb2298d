"""Which STOP stands over a visit, and what fresh finding may lift it.

A STOP stands from the moment that it is met until its finding has been taken once more and is
sound: nothing else lifts it, neither silence nor an answer that names nothing. One until made safe
may be taken once more by the people who met it. For the whole job it is handed over first, whether
it was found, complained of or reported in words, and only after a reopening with the hand-over's
result may the finding be taken, once.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Stop
from troubleshoot.reasoning.chaining.on_record import ON_RECORD
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.reasoning.readings.readings import Reading
from troubleshoot.reasoning.readings.validity import circuits
from troubleshoot.safety.declared import sound_outcomes
from troubleshoot.safety.hearing.dangers import ANY_DANGER
from troubleshoot.safety.job import Job
from troubleshoot.safety.stops.left import with_left_before
from troubleshoot.safety.stops.parts import not_yet_afresh, proved_since, shown_by
from troubleshoot.safety.stops.put_right import with_not_put_right
from troubleshoot.safety.stops.record import Spot, StopMet

MET: Final = "met"
"""The atom that stands for a STOP that the visit has met before."""

FOUND = ("possible:", "seen:")
"""How the atoms begin that stand for a finding."""


def standing_stop(knowledge: Knowledge, job: Job, conclusions: Conclusions) -> FiredHazard | None:
    """The STOP to be told of: one that has to be handed over before any that may be lifted here.

    A second danger may be found on the way to lifting the first. Of those alike the last met is
    told: the people here know of the others. Of those that may be lifted here it is one that was
    reported just now, else one that was found just now, else the first.
    """
    standing = conclusions.standing_stops
    final = [s for s in standing if lifting_finding(knowledge, job, conclusions, s) is None]
    last = [met.hazard for met in job.stops]

    def when_met(fired: FiredHazard) -> int:
        name = fired.hazard.id
        return max((i for i, each in enumerate(last) if each == name), default=len(last))

    if final:
        return max(final, key=when_met)
    said = job.stops[-1].hazard if job.stops and job.stops[-1].reported is not None else None
    just_reported = (stop for stop in standing if stop.hazard.id == said)
    news = (stop for stop in standing if is_news(knowledge, job, conclusions, stop))
    return next(iter((*just_reported, *news, *standing)), None)


def is_news(knowledge: Knowledge, job: Job, conclusions: Conclusions, fired: FiredHazard) -> bool:
    """Whether a STOP was found while another's finding is taken afresh, and has not halted yet."""
    if job.fresh is None or lifting_finding(knowledge, job, conclusions, fired) == job.fresh:
        return False
    met = _standing_met(knowledge, job, conclusions, fired)
    return met is None or _is_lifted(knowledge, job, conclusions, met)


def words_reported(
    knowledge: Knowledge, job: Job, conclusions: Conclusions, fired: FiredHazard
) -> str | None:
    """The words of a STOP's last report that nothing has lifted; None where it was only found.

    A STOP that was reported is met again without its words when another was told in between.
    """
    if any(atom.startswith(FOUND) for atom in fired.because):
        met = job.met(fired.hazard.id)
        return None if met is None else met.reported
    standing = (
        met.reported
        for met in reversed(job.stops)
        if met.hazard == fired.hazard.id and met.reported is not None
        if not _is_lifted(knowledge, job, conclusions, met)
    )
    return next(standing, None)


def conclude_visit(reasoner: Reasoner, job: Job) -> Conclusions:
    """Everything that follows from a visit: its answers, the STOPs it met, what was left off."""
    concluded = with_left_before(reasoner.knowledge, job, reasoner.conclude(job.case))
    met = with_stops_met(reasoner.knowledge, job, concluded)
    lifted = lifted_stops(reasoner.knowledge, job, met)
    return with_not_put_right(reasoner.knowledge, job, met, lifted)


def lifted_stops(knowledge: Knowledge, job: Job, conclusions: Conclusions) -> tuple[StopMet, ...]:
    """The STOPs that the visit has met and whose finding was taken afresh and is sound."""
    known = (met for met in job.stops if met.hazard in knowledge.hazards)
    return tuple(met for met in known if _is_lifted(knowledge, job, conclusions, met))


def with_stops_met(knowledge: Knowledge, job: Job, conclusions: Conclusions) -> Conclusions:
    """The conclusions with every STOP standing that the visit has met and nothing has lifted."""
    now = {fired.hazard.id for fired in conclusions.standing_stops}
    met = {
        met.hazard: _as_fired(knowledge, job, met)
        for met in job.stops
        if met.hazard not in now and not _is_lifted(knowledge, job, conclusions, met)
    }
    others = (fired for fired in conclusions.hazards if fired.hazard.id not in met)
    return replace(conclusions, hazards=_each_by_its_name(knowledge, job, (*others, *met.values())))


def _each_by_its_name(
    knowledge: Knowledge, job: Job, hazards: tuple[FiredHazard, ...]
) -> tuple[FiredHazard, ...]:
    """The hazards without the one that names none, where another that stands says which it is.

    An all-clear that is not given calls up the danger it was asked for, and no second one.
    """
    refused = {test for each in hazards if each.hazard.id == ANY_DANGER for test in _tests_of(each)}
    if not refused or job.met(ANY_DANGER) is not None:
        return hazards
    called = knowledge.complaints.get(job.complaint or "")
    asked_for = {met.spot[0] for met in job.stops if met.spot is not None}
    for fired in hazards:
        if fired.stops and fired.hazard.id != ANY_DANGER:
            asked_for |= {fired.hazard.all_clear or ""}
            by_call = any(atom.startswith("complaint:") for atom in fired.because)
            asked_for |= {called.all_clear or ""} if called is not None and by_call else set()
    if not refused <= asked_for:
        return hazards
    return tuple(fired for fired in hazards if fired.hazard.id != ANY_DANGER)


def _tests_of(fired: FiredHazard) -> set[str]:
    """The tests whose findings called a hazard up."""
    return {atom.split(":")[1] for atom in fired.because if atom.startswith(FOUND)}


def _as_fired(knowledge: Knowledge, job: Job, met: StopMet) -> FiredHazard:
    """A STOP that was met as one that stands: reported in words, it halts until made safe."""
    hazard = knowledge.hazards[met.hazard]
    if hazard.stop is None or hazard.stop.scope == "this-step":
        covers = hazard.spoken if hazard.stop is None else hazard.stop.covers
        hazard = replace(hazard, stop=Stop("until-made-safe", covers))
    return FiredHazard(hazard, circuits(job.unit.layout, None), (MET,), found=True)


def finding_of(
    knowledge: Knowledge, job: Job, conclusions: Conclusions, fired: FiredHazard
) -> Spot | None:
    """The finding that called a STOP up, or the all-clear of the complaint or hazard."""
    if ON_RECORD in fired.because:
        return None
    found = [atom.split(":")[1:] for atom in fired.because if atom.startswith(FOUND)]
    for test, outcome in found:
        for reading in conclusions.readings:
            if reading.test == test and outcome in reading.possible:
                return test, reading.at
    met = _standing_met(knowledge, job, conclusions, fired)
    if met is not None and met.spot is not None:
        return met.spot
    complaint = knowledge.complaints.get(job.complaint or "")
    if not found and complaint is not None and complaint.all_clear is not None:
        return complaint.all_clear, None
    return None if fired.hazard.all_clear is None else (fired.hazard.all_clear, None)


def lifting_finding(
    knowledge: Knowledge, job: Job, conclusions: Conclusions, fired: FiredHazard
) -> Spot | None:
    """The finding that may be taken afresh to lift a STOP; none where the job is handed over."""
    spot = finding_of(knowledge, job, conclusions, fired)
    if spot is None or not _is_final(fired):
        return spot
    met = _standing_met(knowledge, job, conclusions, fired)
    if met is None or not met.reopened:
        return None
    for each in shown_by(knowledge, job, fired.hazard, spot):
        if not_yet_afresh(knowledge, job, each, met.answers):
            return each
        if not _is_sound(knowledge, conclusions, each):
            return each if _is_doubtful(knowledge, conclusions, each) else None
    return None


def is_under_way(
    knowledge: Knowledge, job: Job, conclusions: Conclusions, fired: FiredHazard, wanted: Spot
) -> bool:
    """Whether part of what lifts a STOP was just read sound: a break ends the way to the rest.

    `wanted`: the finding that may be taken afresh now.
    """
    spot = finding_of(knowledge, job, conclusions, fired) if job.fresh_read else None
    if spot is None or not _was_begun(knowledge, job, fired, spot):
        return False
    if _is_final(fired):
        return wanted != shown_by(knowledge, job, fired.hazard, spot)[0]
    met = _standing_met(knowledge, job, conclusions, fired)
    if met is None or not _is_sound(knowledge, conclusions, spot):
        return False
    return not proved_since(job, spot, met.answers)


def _was_begun(knowledge: Knowledge, job: Job, fired: FiredHazard, spot: Spot) -> bool:
    """Whether any of what lifts a STOP has been read since a finding was last gone for."""
    parts = shown_by(knowledge, job, fired.hazard, spot)
    return any(not not_yet_afresh(knowledge, job, each, job.fresh_since) for each in parts)


def _standing_met(
    knowledge: Knowledge, job: Job, conclusions: Conclusions, fired: FiredHazard
) -> StopMet | None:
    """Of the times that a hazard's STOP was met, the last that nothing has lifted.

    It may have been found and reported too: then each needs its own fresh finding.
    """
    times = [met for met in reversed(job.stops) if met.hazard == fired.hazard.id]
    standing = (m for m in times if not _is_lifted(knowledge, job, conclusions, m))
    return next(standing, times[0] if times else None)


def _is_final(fired: FiredHazard) -> bool:
    """Whether a STOP is for the whole job, so that others have to lift it."""
    return fired.hazard.stops_the_job


def _is_lifted(knowledge: Knowledge, job: Job, conclusions: Conclusions, met: StopMet) -> bool:
    """Whether the finding of a STOP has been taken afresh since it was met, and is sound."""
    stop = knowledge.hazards[met.hazard].stop
    if met.spot is None or (stop is not None and stop.scope == "whole-job" and not met.reopened):
        return False
    needed = shown_by(knowledge, job, knowledge.hazards[met.hazard], met.spot)
    if any(not_yet_afresh(knowledge, job, each, met.answers) for each in needed):
        return False
    return proved_since(job, met.spot, met.answers) and all(
        _is_sound(knowledge, conclusions, each) for each in needed
    )


def _is_sound(knowledge: Knowledge, conclusions: Conclusions, spot: Spot) -> bool:
    """Whether a finding is sound as it was read last, everywhere where it is of no one place.

    At its worse end by the meter's accuracy, too.
    """
    sound = sound_outcomes(knowledge.tests[spot[0]])
    readings = _readings_of(conclusions, spot)
    return bool(readings) and all(r.valid and r.possible and r.at_worst <= sound for r in readings)


def _is_doubtful(knowledge: Knowledge, conclusions: Conclusions, spot: Spot) -> bool:
    """Whether a finding reads sound, but not at its worse end: it is read once more."""
    sound = sound_outcomes(knowledge.tests[spot[0]])
    readings = _readings_of(conclusions, spot)
    seen = all(r.valid and r.seen and sound.issuperset(r.seen) for r in readings)
    return bool(readings) and seen


def _readings_of(conclusions: Conclusions, spot: Spot) -> list[Reading]:
    return [r for r in conclusions.readings if r.test == spot[0] and spot[1] in (None, r.at)]
