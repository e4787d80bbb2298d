"""Whether what called a hazard up stands: a finding does, a complaint until its all-clear.

So does an effect that is named, where the hazard forbids to run what it happened to.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable

from troubleshoot.knowledge.model import Fault, Hazard, Knowledge
from troubleshoot.reasoning.chaining.chains import likely
from troubleshoot.reasoning.readings.answers import Case
from troubleshoot.reasoning.readings.readings import Reading


def was_found(because: Iterable[str], cleared: bool) -> bool:
    """Whether a finding called a hazard up, or the complaint and it has not been cleared."""
    kinds = {atom.partition(":")[0] for atom in because}
    return bool(kinds & {"possible", "seen"}) or ("complaint" in kinds and not cleared)


def is_of_a_repair(because: Iterable[str]) -> bool:
    """Whether a likely fault called a hazard up, and no finding: it warns whoever repairs that."""
    return any(atom.startswith(likely("")) for atom in because)


def has_happened(
    hazard: Hazard, because: Iterable[str], effects: Iterable[Fault], repaired: Collection[str]
) -> bool:
    """Whether a named effect called a hazard up that forbids to run what it happened to.

    What is said to be empty is called for by nobody; until it, or what lies behind it, is repaired.
    """
    if not any("running" in ban.work_states for ban in hazard.forbids):
        return False
    standing = (e for e in effects if not {e.id, *e.behind} & {*repaired})
    return not {likely(effect.id) for effect in standing}.isdisjoint(because)


def cleared_complaint(knowledge: Knowledge, case: Case, readings: tuple[Reading, ...]) -> bool:
    """Whether the all-clear that the complaint asks for has been given, and can be relied on."""
    complaint = knowledge.complaints.get(case.complaint or "")
    if complaint is None or complaint.all_clear is None:
        return False
    healthy = knowledge.tests[complaint.all_clear].healthy
    given = [r for r in readings if r.test == complaint.all_clear and r.possible]
    return any(r.valid for r in given) and all(r.possible <= set(healthy) for r in given)
