"""The numbers that were typed, apart for each stretch of a visit between two repairs.

A repair changes the unit, so that nothing is computed from readings on both sides of it: a new head
pressure says nothing beside the liquid line of before. The weather is nobody's to repair.
"""

from __future__ import annotations

from collections.abc import Mapping

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.readings.measuring import quantities_of, read_text, stated_conditions
from troubleshoot.reasoning.readings.values import Key, Value, Values
from troubleshoot.reasoning.unit.places import Place


@frozen
class Stretch:
    """What was typed between two repairs, and the weather told before.

    `repairs`: how many were done before it; `values`: what is known in numbers; `told_at`: which
    answer of the case gave a number of this stretch last.
    """

    repairs: int
    values: Values
    told_at: Mapping[Key, int]


def told_between_repairs(knowledge: Knowledge, case: Case) -> tuple[Stretch, ...]:
    """The stretches in which something was answered, in their order; one where nothing was.

    What does not count gives no number.
    """
    bare = Values(knowledge, case.unit, {}, case.meters)
    typed = stated_conditions(knowledge, case.unit, case.conditions)
    kept = {*case.conditions, *(q.id for q in knowledge.quantities.values() if q.weather)}
    found = []
    for repairs in sorted({answer.repairs for answer in case.answers}) or [0]:
        typed = {key: value for key, value in typed.items() if key[0] in kept}
        told_at: dict[Key, int] = {}
        for number, answer in enumerate(case.answers):
            if answer.repairs == repairs and answer.text is not None and answer.valid is not False:
                own = _told_by(knowledge, answer, bare)
                typed |= own
                told_at |= dict.fromkeys(own, number)
        found.append(Stretch(repairs, Values(knowledge, case.unit, typed, case.meters), told_at))
    return tuple(found)


def own_values(
    knowledge: Knowledge, test: Test, answer: Answer, place: Place | None, values: Values
) -> dict[Key, Value]:
    """The numbers that one answer gives at a place; none where its text is no reading."""
    try:
        typed = read_text(test, answer.text or "", knowledge)
    except NotUnderstood:
        return {}
    own = quantities_of(test, typed, knowledge, values, place)
    return {
        (name, values.place_for(knowledge.quantities[name].per, place)): value
        for name, value in own.items()
    }


def _told_by(knowledge: Knowledge, answer: Answer, bare: Values) -> dict[Key, Value]:
    """The numbers that one answer gives at all its places."""
    test, told = knowledge.tests[answer.test], dict[Key, Value]()
    for place in answer.places if not answer.shared else (None,):
        told |= own_values(knowledge, test, answer, place, bare)
    return told
