"""What a proof of a repair is judged by and was not read: asked for where the unit lets it be read.

A repair changes the unit, so that a wet bulb of before it judges nothing after it; and what is read
with the panels on cannot be told behind an open one. So it is read before the panel comes off,
or else once the unit is back and runs: then it judges what was read before it.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import EquipmentFact, Knowledge, Proof, Test
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.not_judged import quantities_missing_for
from troubleshoot.reasoning.readings.readings import take_readings
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.reaching import beyond, is_blocked, steps_before
from troubleshoot.safety.stops.standing import Forbidden
from troubleshoot.visit.deciding.decision import Decision, to_ask, to_do
from troubleshoot.visit.hearing.proof_read import NOT_RIGHT, unproved
from troubleshoot.visit.hearing.proofs_wanted import proofs_today
from troubleshoot.visit.state import RepairSaid, VisitState

_WITH_THE_PANELS_ON: Final = frozenset({"any", "running"})


def read_to_judge(
    knowledge: Knowledge, state: VisitState, conclusions: Conclusions, *, is_back: bool = False
) -> Decision | None:
    """The next reading that judges a proof of the repair begun; None where there is none.

    It takes no step, but where the unit `is_back` and runs: what is read then is led to.
    """
    forbidden = Forbidden(conclusions)
    for test, at in judged_by(knowledge, state):
        if forbidden.even_if_chosen(test, at):
            continue
        steps = steps_before(state, test, at)
        if not steps and not is_blocked(state, test, at):
            return to_ask(knowledge, state, test, at)
        if steps and is_back and test.work_state in _WITH_THE_PANELS_ON:
            return to_do(knowledge, state, steps[0])
    return None


def judged_by(
    knowledge: Knowledge, state: VisitState, only: str = ""
) -> tuple[tuple[Test, Place | None], ...]:
    """What judges the proofs of the repair begun, is not known, and this person may read.

    Not what was gone on without. `only`: of one proof, by its text.
    """
    said = state.repair_begun
    if said is None or said.fault not in knowledge.faults:
        return ()
    _, values = take_readings(knowledge, state.case)
    found: dict[tuple[str, Place | None], tuple[Test, Place | None]] = {}
    for proof in _not_judged(knowledge, state, said):
        test = knowledge.read_by(proof)
        if test is None or only not in ("", proof.text):
            continue
        for name in sorted(quantities_missing_for(test, values)):
            for reads in _inputs(knowledge, state, name):
                at = state.unit.layout.places(reads.per)[0]
                skipped = (reads.id, at) in state.skipped
                if not skipped and beyond(knowledge, state, (reads,), at) is None:
                    found.setdefault((reads.id, at), (reads, at))
    return tuple(found.values())


def facts_to_judge(
    knowledge: Knowledge, state: VisitState, test: Test | None
) -> tuple[EquipmentFact, ...]:
    """The facts of the unit without which no number of a proof's test is judged."""
    if test is None or not test.reads:
        return ()
    _, values = take_readings(knowledge, state.case)
    missing = quantities_missing_for(test, values) - state.not_known
    return tuple(fact for fact in knowledge.facts.values() if fact.id in missing)


def _not_judged(knowledge: Knowledge, state: VisitState, said: RepairSaid) -> Iterator[Proof]:
    """The proofs read in numbers that are still to be taken, or were read and came to nothing."""
    told, fault = dict(said.proofs), knowledge.faults[said.fault]
    lacking = unproved(knowledge, state, fault, told)
    for proof in proofs_today(knowledge, state.unit, fault):
        test = knowledge.read_by(proof)
        is_open = lacking.get(proof.text, NOT_RIGHT) != NOT_RIGHT and told.get(proof.text) != ""
        if is_open and test is not None and test.reads:
            yield proof


def _inputs(knowledge: Knowledge, state: VisitState, quantity: str) -> Iterator[Test]:
    """The input of this unit that reads a quantity and nothing else."""
    for test in knowledge.tests.values():
        reads_it = [one.quantity for one in test.reads] == [quantity]
        if test.kind == "input" and reads_it and state.unit.allows(test.exists_when):
            yield test
