"""The tag on a stopped unit, as sentences: what was found, how it stands, who may remove it."""

from __future__ import annotations

from collections.abc import Sequence

from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.outside.text import begun
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.reasoning.unit.places import with_place
from troubleshoot.safety.hearing.roles import ROLES
from troubleshoot.safety.job import Job
from troubleshoot.safety.profiles import spoken
from troubleshoot.safety.stops.lifting import finding_of, words_reported
from troubleshoot.safety.stops.reopening import fitting_roles
from troubleshoot.safety.stops.standing import beside
from troubleshoot.safety.work_state import untested_plugs

HUNG_BY = "Hung by: ____________, on ______ at ______."
NOT_TOLD = "Told: ____________ at ______."


def tag_lines(
    knowledge: Knowledge, job: Job, conclusions: Conclusions, fired: FiredHazard, part: str = ""
) -> tuple[str, ...]:
    """What to write on the tag, a sentence a line; `part`: what is left off, but for the unit."""
    hazard = fired.hazard
    met = job.met(hazard.id)
    told = NOT_TOLD
    if met is not None and met.told:
        told = f"Told: {met.told}, {met.told_at}."
    danger = hazard.tag or hazard.what_to_do
    do_not = f"Do not start{' ' + job.name if job.name else ''}. {danger}"
    if part:
        do_not = f"Do not start {part}{' of ' + job.name if job.name else ''}. {danger}"
    lines = [
        do_not,
        found_words(knowledge, job, conclusions, fired),
        _stopped_for(beside(conclusions, fired)),
        _gas_cock(job),
        *_plugs(job),
        told,
        _made_safe(job, hazard),
        f"Only {removers(hazard)} may remove this tag.",
        HUNG_BY,
    ]
    return tuple(line for line in lines if line)


def found_words(
    knowledge: Knowledge, job: Job, conclusions: Conclusions, fired: FiredHazard
) -> str:
    """The finding that called the STOP up, with its reading; or the words it was reported in."""
    reported = words_reported(knowledge, job, conclusions, fired)
    if reported is not None:
        return f'Reported: "{reported}".' if reported else "Reported as a danger."
    if any(atom.startswith("complaint:") for atom in fired.because):
        return f'Reported by the caller: "{job.words or job.complaint or ""}".'
    spot = finding_of(knowledge, job, conclusions, fired)
    reading = next((r for r in conclusions.readings if spot == (r.test, r.at)), None)
    if reading is None:
        return ""
    test = knowledge.tests[reading.test]
    if reading.possible <= {*test.healthy}:
        return ""  # it shows that all is well, so it is not what stopped the job
    means = [o.means or o.id for o in test.outcomes if o.id in reading.possible]
    where = job.unit.layout.shown(test.per, reading.at)
    read = f" ({reading.text})" if reading.text else ""
    return f"Found: {with_place(test.name, where)}: {'; '.join(means)}{read}."


def _made_safe(job: Job, hazard: Hazard) -> str:
    """By whom it was said to be made safe, though it stands, or stands again."""
    results = [met.result for met in job.stops if met.hazard == hazard.id and met.result]
    if not results:
        return ""
    return f"Said to be made safe by {results[-1].by_whom}, {results[-1].when}."


def _stopped_for(others: Sequence[Hazard]) -> str:
    """What else the unit is stopped for."""
    names = ", ".join(hazard.spoken for hazard in others)
    return f"Stopped for this too: {names}." if names else ""


def _gas_cock(job: Job) -> str:
    if job.unit.facts.get("heat", "gas") != "gas":
        return ""
    return f"Gas cock: {'shut' if job.work.gas == 'shut' else 'not known to be shut'}."


def _plugs(job: Job) -> tuple[str, ...]:
    plugs = untested_plugs(job.work.plugs_untested)
    return tuple(f"{begun(plug)}." for plug in plugs)


def gas_tag(job: Job) -> tuple[str, ...]:
    """What to write on the tag of a gas cock that stays shut for a plug, a sentence a line."""
    plugs = _plugs(job)
    if not plugs:
        return ()
    return (
        f"Do not open the gas cock{' of ' + job.name if job.name else ''}.",
        *plugs,
        f"Only {spoken(('gas',))} may remove this tag, to test it.",
        HUNG_BY,
    )


def removers(hazard: Hazard) -> str:
    """Who may remove the tag of a hazard, in words."""
    return _roles(fitting_roles(hazard))


def _roles(names: tuple[str, ...]) -> str:
    said = [ROLES[name] for name in names]
    return said[0] if len(said) == 1 else f"{', '.join(said[:-1])} or {said[-1]}"
