"""Which proofs a repair wants on this unit: in the visit of the repair, and on another day."""

from __future__ import annotations

from troubleshoot.knowledge.model import Fault, Knowledge, Proof
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.visit.state import VisitState


def proofs_on(knowledge: Knowledge, on: Unit, fault: Fault) -> tuple[Proof, ...]:
    """The proofs of a repair that there are on this unit, as far as it is known."""
    return tuple(
        proof
        for proof in fault.proof
        if on.allows(proof.exists_when)
        and (not proof.finding or on.allows(knowledge.tests[proof.finding.test].exists_when))
    )


def proofs_today(knowledge: Knowledge, on: Unit, fault: Fault) -> tuple[Proof, ...]:
    """The proofs that are read in the visit of the repair; what is read another day is not."""
    return tuple(proof for proof in proofs_on(knowledge, on, fault) if not proof.later)


def still_to_read(knowledge: Knowledge, state: VisitState) -> tuple[str, ...]:
    """What is read on another day to prove the repairs of this visit, in one line."""
    faults = dict.fromkeys(said.fault for said in state.repairs)
    texts = [
        proof.text
        for fault in faults
        if fault in knowledge.faults
        for proof in proofs_on(knowledge, state.unit, knowledge.faults[fault])
        if proof.later
    ]
    return (f"To be read on another day: {'; '.join(texts)}.",) if texts else ()
