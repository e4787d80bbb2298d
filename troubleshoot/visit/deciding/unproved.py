"""What was repaired without all that was to prove it, and stays off until that is read.

The fresh finding that lifts a STOP shows that the work may go on; that the repair holds is shown by
its proofs. Until they are read right what the danger keeps off stays off. Nor is a burner left lit
whose valve nobody saw close, or whose flue nobody read, once its gas side was worked on.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from troubleshoot.knowledge.model import Fault, Hazard, Knowledge, Proof
from troubleshoot.safety.needs import BURNER_AREAS
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


def unread_of_burners(
    knowledge: Knowledge, state: VisitState
) -> tuple[tuple[Hazard, tuple[str, ...]], ...]:
    """What keeps the heat off for want of proofs of a repair at the burners, and what reads each.

    Each is the danger that a bad reading would have found, the gravest first, with what is not
    proved said for it: it stops nothing, and was not found. Nothing before the complaint was asked
    about, when all that can be read has been.
    """
    if not state.at_work.burns_gas:
        return ()
    found: dict[str, tuple[Hazard, tuple[str, ...]]] = {}
    for said in {said.fault: said for said in state.repairs}.values():
        fault = knowledge.faults.get(said.fault)
        if fault is not None and fault.subsystem in BURNER_AREAS and said is not state.repair_begun:
            lacking = [*_keep_the_heat_off(knowledge, state, fault, said)]
            what = "; ".join(proof.text for proof, _ in lacking)
            for proof, danger in lacking:
                assert proof.finding is not None
                unread = _unread(danger, f"repaired and not proved, {fault.name}: {what}")
                found.setdefault(danger.id, (unread, (proof.finding.test,)))
    return tuple(
        sorted(found.values(), key=lambda each: not knowledge.hazards[each[0].id].stops_the_job)
    )


def _keep_the_heat_off(
    knowledge: Knowledge, state: VisitState, fault: Fault, said: RepairSaid
) -> Iterator[tuple[Proof, Hazard]]:
    """The proofs that are wanting, each with the danger that a bad reading of it finds."""
    lacking = unproved(knowledge, state, fault, dict(said.proofs))
    for proof in proofs_today(knowledge, state.unit, fault):
        danger = _read_bad(knowledge, proof) if proof.text in lacking else None
        if danger is not None:
            yield proof, danger


def _read_bad(knowledge: Knowledge, proof: Proof) -> Hazard | None:
    """The danger that a bad reading of a proof finds, and that keeps the heat off: the gravest."""
    test = proof.finding.test if proof.finding is not None else ""
    keep = [
        hazard
        for hazard in knowledge.hazards.values()
        if hazard.keeps_off == "heat" and any(each.test == test for each in hazard.findings)
    ]
    return min(keep, key=lambda hazard: not hazard.stops_the_job, default=None)


def _unread(hazard: Hazard, what: str) -> Hazard:
    """A danger that nobody found, as what is told of it: what was not read."""
    return replace(hazard, stop=None, spoken=what, tag=f"It was {what}.")


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
