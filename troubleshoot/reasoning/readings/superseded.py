"""What was typed for a computed test, and is computed from readings taken after it.

Of two accounts of one thing the later counts. The typed one is kept, weighs nothing, and what it
may mean for safety still stands.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.readings.between_repairs import Stretch
from troubleshoot.reasoning.readings.classify import classify
from troubleshoot.reasoning.readings.values import Key, Values
from troubleshoot.reasoning.unit.places import Place

COMPUTED_SINCE = "computed since from readings taken after it"


def superseded(
    knowledge: Knowledge, answers: Iterable[Answer], told: Stretch
) -> Iterator[tuple[Key, frozenset[Key]]]:
    """Each test and place whose typed answer is older than what it can be computed from.

    With the quantities and places that it gave. `answers`: those of the whole case, in order;
    `told`: what was typed between two repairs.
    """
    counting = [
        (number, answer)
        for number, answer in enumerate(answers)
        if answer.text is not None and answer.valid is not False and not answer.shared
        if answer.repairs <= told.repairs
    ]
    last = {(answer.test, at): number for number, answer in counting for at in answer.places}
    for number, answer in counting:
        test = knowledge.tests[answer.test]
        inputs = inputs_of(knowledge, {one.quantity for one in test.reads})
        for place in answer.places if inputs else ():
            if last[(test.id, place)] != number:
                continue
            keys = {(name, _place_of(knowledge, told.values, name, place)) for name in inputs}
            if any(told.told_at.get(key, number) > number for key in keys):
                gone = _keys(knowledge, told.values, test, place)
                if classify(test, place, told.values.without(gone)) is not None:
                    yield (test.id, place), gone


def rests_on(knowledge: Knowledge, test: Test, place: Place | None, told: Stretch) -> bool:
    """Whether what judges a computed test rests on something that was typed in this stretch."""
    judged = {b.quantity for o in test.outcomes for line in o.limits for b in line.bounds}
    names = judged | inputs_of(knowledge, judged)
    keys = {(name, _place_of(knowledge, told.values, name, place)) for name in names}
    return any(key in told.told_at for key in keys)


def inputs_of(knowledge: Knowledge, names: Iterable[str]) -> frozenset[str]:
    """Every quantity from which these can be computed."""
    found: set[str] = set()
    waiting = list(names)
    while waiting:
        quantity = knowledge.quantities.get(waiting.pop())
        for derivation in quantity.computed if quantity is not None else ():
            new = set(derivation.inputs) - found
            found |= new
            waiting += new
    return frozenset(found)


def _keys(knowledge: Knowledge, values: Values, test: Test, place: Place | None) -> frozenset[Key]:
    return frozenset(
        (one.quantity, _place_of(knowledge, values, one.quantity, place)) for one in test.reads
    )


def _place_of(knowledge: Knowledge, values: Values, name: str, place: Place | None) -> Place | None:
    quantity = knowledge.quantities.get(name)
    return values.place_for(quantity.per if quantity else None, place)
