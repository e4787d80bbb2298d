"""The number of a proof that follows from what was read since its repair, at any prompt.

Return and supply give the split; suction, head and the lines give superheat and subcooling.
"""

from __future__ import annotations

from collections.abc import Iterable

from troubleshoot.knowledge.model import Fault, Knowledge, Proof
from troubleshoot.quantities.units import unit
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.readings.readings import take_readings
from troubleshoot.reasoning.readings.superseded import inputs_of
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.visit.state import VisitState


def computed_since(knowledge: Knowledge, state: VisitState, fault: Fault, proof: Proof) -> str:
    """The number that a proof's test is computed to since the repair of a fault, as it is typed.

    Of several places, that where it was read before the repair too. Empty where it is not known.
    """
    since = next((said.answers for said in state.repairs[::-1] if said.fault == fault.id), None)
    test = knowledge.read_by(proof)
    if since is None or test is None or not test.reads:
        return ""
    quantity = knowledge.quantities[test.reads[0].quantity]
    inputs = inputs_of(knowledge, (quantity.id,))
    _, values = take_readings(knowledge, state.case)
    before = _places(knowledge, state.answers[:since], inputs)
    after = _places(knowledge, state.answers[since:], inputs)
    there = [at for at in state.unit.layout.places(test.per) if after & {at, None}]
    for at in sorted(there, key=lambda at: at not in before):
        if (value := values.get(quantity.id, at)) is not None:
            return f"{value.number:.4g} {unit(quantity.unit).spoken}"
    return ""


def _places(
    knowledge: Knowledge, answers: Iterable[Answer], quantities: frozenset[str]
) -> frozenset[Place | None]:
    """Where answers that count tell a number of one of these quantities."""
    return frozenset(
        place
        for answer in answers
        if answer.text is not None and answer.valid is not False
        if any(one.quantity in quantities for one in knowledge.tests[answer.test].reads)
        for place in answer.places
    )
