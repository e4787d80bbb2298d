"""What stopped the whole job, and was then repaired without all that was to prove it.

The fresh finding that lifts a STOP shows that the work may go on; that the repair holds is shown by
its proofs. Until they are read right what the danger keeps off stays off.
"""

from __future__ import annotations

from collections.abc import Iterator

from troubleshoot.knowledge.model import Fault, Hazard, Knowledge
from troubleshoot.visit.hearing.proof_read import unproved
from troubleshoot.visit.hearing.proofs_wanted import proofs_today
from troubleshoot.visit.state import RepairSaid, VisitState


def stopped_and_unproved(knowledge: Knowledge, state: VisitState) -> tuple[Hazard, ...]:
    """The dangers that stopped the job, and whose repair was said and is not proved."""
    last = {said.fault: said for said in state.repairs}
    faults = [
        fault
        for said in last.values()
        if (fault := knowledge.faults.get(said.fault)) is not None
        if _is_unproved(knowledge, state, fault, said)
    ]
    shown = {test for fault in faults for test in _shown_by(fault)}
    stopped = dict.fromkeys(met.hazard for met in state.stops if met.reopened)
    hazards = (hazard for name in stopped if (hazard := knowledge.hazards.get(name)) is not None)
    return tuple(h for h in hazards if h.stops_the_job and shown & {*_found_by(state, h)})


def _is_unproved(knowledge: Knowledge, state: VisitState, fault: Fault, said: RepairSaid) -> bool:
    """Whether all that can be asked was, and a reading that was to prove it is wanting.

    What has no finding of its own keeps nothing off.
    """
    asked = {what for what, _ in said.proofs}
    proofs = [proof for proof in proofs_today(knowledge, state.unit, fault) if proof.finding]
    if not said.still and any(proof.text not in asked for proof in proofs):
        return False
    lacking = unproved(knowledge, state, fault, dict(said.proofs))
    return any(proof.text in lacking for proof in proofs)


def _shown_by(fault: Fault) -> Iterator[str]:
    """The tests that show a fault, in any picture."""
    for each in (*fault.evidence, *(e for picture in fault.pictures for e in picture.evidence)):
        yield from (finding.test for finding in each.findings)


def _found_by(state: VisitState, hazard: Hazard) -> Iterator[str]:
    """What a danger was found by, and what clears it."""
    if hazard.all_clear is not None:
        yield hazard.all_clear
    for met in state.stops:
        if met.hazard == hazard.id and met.spot is not None:
            yield met.spot[0]
