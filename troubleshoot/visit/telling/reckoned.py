"""A number that was typed, and another that follows from the rest: both, in a sentence.

Told where they differ by more than the meters may be off, and come to one outcome; where they come
to two, that is told of the outcomes (`contradicting`).
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Quantity, Test
from troubleshoot.quantities.units import unit as unit_of
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.relations import SURE
from troubleshoot.reasoning.readings.values import Value, Values
from troubleshoot.reasoning.unit.places import Place, with_place
from troubleshoot.visit.telling.as_read import as_computed
from troubleshoot.visit.telling.contradicting import counting

TYPED_COUNTS: Final = "What was typed counts."


def reckoned_otherwise(before: Conclusions, after: Conclusions) -> Iterator[str]:
    """A sentence for each number typed now that others make another, or made another by others."""
    knowledge = after.hypotheses.knowledge
    told = _outcomes_changed(before, after)
    for test in knowledge.tests.values():
        quantity = knowledge.quantities[test.reads[0].quantity] if test.reads else None
        if quantity is None or not quantity.computed:
            continue
        for place in after.case.unit.layout.places(test.per):
            if (test.id, place) not in told:
                sentence = _sentence(knowledge, test, quantity, place, before, after)
                if sentence:
                    yield sentence


def _outcomes_changed(
    before: Conclusions, after: Conclusions
) -> frozenset[tuple[str, Place | None]]:
    once, now = counting(before), counting(after)
    return frozenset(
        key for key in once.keys() & now.keys() if not {*once[key].seen} & {*now[key].seen}
    )


def _sentence(
    knowledge: Knowledge,
    test: Test,
    quantity: Quantity,
    place: Place | None,
    before: Conclusions,
    after: Conclusions,
) -> str:
    was, now = before.values.get(quantity.id, place), after.values.get(quantity.id, place)
    if now is None:
        return ""
    name = with_place(quantity.spoken, after.case.unit.layout.shown(test.per, place))
    if now.typed:
        reckoned = _reckoned(after.values, quantity, place)
        was_so = was is not None and was.typed and _reckoned(before.values, quantity, place)
        if reckoned is None or was_so or not _differ(now, reckoned):
            return ""
        return (
            f"{_first(name)} was typed as {_said(quantity, now)}, and the other readings make it "
            f"{_said(quantity, reckoned)}. {TYPED_COUNTS}"
        )
    if was is None or not was.typed or not _differ(was, now):
        return ""
    return (
        f"{_first(name)} was typed as {_said(quantity, was)}, and the readings since make it "
        f"{_said(quantity, now)}. The later one counts."
    )


def _reckoned(values: Values, quantity: Quantity, place: Place | None) -> Value | None:
    """What a quantity comes to by others alone."""
    kept = (quantity.id, values.place_for(quantity.per, place))
    return values.without({kept}).get(quantity.id, place)


def _differ(one: Value, other: Value) -> bool:
    return abs(one.number - other.number) > SURE * (one.whole_u + other.whole_u)


def _said(quantity: Quantity, value: Value) -> str:
    number = f"{value.number:g}" if value.typed else as_computed(value.number)
    return f"{number} {unit_of(quantity.unit).spoken}"


def _first(name: str) -> str:
    return name[:1].upper() + name[1:]
