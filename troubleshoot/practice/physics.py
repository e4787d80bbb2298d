"""What no machine does: a liquid line colder than the air that cools it, amps that fit no load.

`rules/relations.yaml` says what always holds; here it is tried on the readings of one case.
"""

from __future__ import annotations

from collections.abc import Iterator

from troubleshoot.knowledge.model import Bound, Knowledge, Relation
from troubleshoot.practice.texts import typed
from troubleshoot.reasoning.readings.limits import bounds_truth
from troubleshoot.reasoning.readings.values import Values
from troubleshoot.reasoning.unit.places import Place


def physical_problems(knowledge: Knowledge, values: Values) -> Iterator[str]:
    """What cannot be so, one sentence each, with the numbers that say it."""
    for relation in knowledge.relations.values():
        for place in values.unit.layout.places(_kind(knowledge, relation)):
            if _broken(relation, place, values):
                where = "" if place is None else f"{place}: "
                yield f"{where}{relation.says} ({_numbers(knowledge, relation, place, values)})"


def _kind(knowledge: Knowledge, relation: Relation) -> str | None:
    """The kind of place at which the relation holds: that of the first quantity that has one."""
    kinds = (knowledge.quantities[bound.quantity].per for bound in _bounds(relation))
    return next((kind for kind in kinds if kind is not None), None)


def _bounds(relation: Relation) -> Iterator[Bound]:
    for line in relation.must:
        yield from line.bounds


def _broken(relation: Relation, place: Place | None, values: Values) -> bool:
    """Whether lines that can be judged here all fail, in readings that the relation is about."""
    if relation.where and bounds_truth(relation.where, place, values) is not True:
        return False
    truths = [bounds_truth(line.bounds, place, values) for line in relation.must]
    return False in truths and True not in truths


def _numbers(knowledge: Knowledge, relation: Relation, place: Place | None, values: Values) -> str:
    """The readings that the relation speaks of, down to those that others were reckoned from."""
    found: dict[str, None] = {}
    for bound in _bounds(relation):
        for name in (bound.quantity, bound.relative_to):
            found.update(dict.fromkeys(_read_from(knowledge, name, place, values) if name else ()))
    return ", ".join(_number(knowledge, name, place, values) for name in found)


def _read_from(
    knowledge: Knowledge, name: str, place: Place | None, values: Values
) -> tuple[str, ...]:
    """What a quantity follows from here; itself, where it was read as it is."""
    quantity = knowledge.quantities.get(name)
    for way in quantity.computed if quantity else ():
        if all(values.get(each, place) is not None for each in way.inputs):
            return way.inputs
    return (name,)


def _number(knowledge: Knowledge, name: str, place: Place | None, values: Values) -> str:
    value = values.get(name, place)
    known = knowledge.quantities.get(name) or knowledge.plate_values[name]
    return f"{name} {'not known' if value is None else typed(value.number, known.unit)}"
