"""What cannot be so: readings that break what always holds between them, and numbers no load fits.

`rules/relations.yaml` says what always holds. A scenario's readings are tried as they stand; those
of a visit only beyond what their meters may be off, and by those relations alone that no fault can
break, or that say which can.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.bounds import bound_holds
from troubleshoot.knowledge.model import Bound, Knowledge, LimitLine, Relation
from troubleshoot.reasoning.readings.limits import bounds_truth, reference
from troubleshoot.reasoning.readings.values import Value, Values
from troubleshoot.reasoning.unit.places import Place

SURE: Final = 2.5
"""Standard uncertainties that no meter is off by: the root of 3 from one to the limit of error, and
of 2 for what is reckoned from two readings, both at theirs."""


@frozen
class Broken:
    """A relation that readings break at a place, and what they are, by quantity."""

    relation: Relation
    at: Place | None
    read: tuple[str, ...]


def broken_relations(
    knowledge: Knowledge, values: Values, *, beyond_meters: bool = False
) -> Iterator[Broken]:
    """Each relation that these values break, at each place.

    `beyond_meters`: of those that hold on visits, and only where no meter's accuracy explains it.
    """
    for relation in knowledge.relations.values():
        if beyond_meters and not relation.on_visits:
            continue
        for place in values.unit.layout.places(_kind(knowledge, relation)):
            if _is_broken(relation, place, values, beyond_meters):
                yield Broken(relation, place, _read(knowledge, relation, place, values))


def _kind(knowledge: Knowledge, relation: Relation) -> str | None:
    """The kind of place at which the relation holds: that of the first quantity that has one."""
    kinds = (knowledge.quantities[bound.quantity].per for bound in _bounds(relation))
    return next((kind for kind in kinds if kind is not None), None)


def _bounds(relation: Relation) -> Iterator[Bound]:
    for line in relation.must:
        yield from line.bounds


def _is_broken(
    relation: Relation, place: Place | None, values: Values, beyond_meters: bool
) -> bool:
    """Whether lines that can be judged here all fail, in readings that the relation is about."""
    if relation.where and bounds_truth(relation.where, place, values) is not True:
        return False
    truths = [bounds_truth(line.bounds, place, values) for line in relation.must]
    if beyond_meters:
        failing = zip(relation.must, truths, strict=True)
        truths = [truth or _may_hold(line, place, values) for line, truth in failing]
    return False in truths and True not in truths


def _may_hold(line: LimitLine, place: Place | None, values: Values) -> bool | None:
    """Whether a line may hold by what the meters may be off; nothing where it is not known."""
    if bounds_truth(line.bounds, place, values) is None:
        return None
    return all(
        _bound_may_hold(bound, place, values)
        for bound in line.bounds
        if values.unit.proves(bound.when, place)
    )


def _bound_may_hold(bound: Bound, place: Place | None, values: Values) -> bool:
    value = values.get(bound.quantity, place)
    other = None if bound.relative_to is None else values.get(bound.relative_to, place)
    assert value is not None
    off = _most_off(value) + (0.0 if other is None else _most_off(other))
    return any(
        bound_holds(bound, number, reference(bound, place, values, number))
        for number in (value.number - off, value.number, value.number + off)
    )


def _most_off(value: Value) -> float:
    return SURE * value.whole_u


def _read(
    knowledge: Knowledge, relation: Relation, place: Place | None, values: Values
) -> tuple[str, ...]:
    """The quantities that the relation speaks of, down to those others were reckoned from."""
    found: dict[str, None] = {}
    for bound in _bounds(relation):
        for name in (bound.quantity, bound.relative_to):
            found.update(dict.fromkeys(_read_from(knowledge, name, place, values) if name else ()))
    return tuple(found)


def _read_from(
    knowledge: Knowledge, name: str, place: Place | None, values: Values
) -> tuple[str, ...]:
    """What a quantity follows from here; itself, where it was read as it is."""
    quantity = knowledge.quantities.get(name)
    known = values.get(name, place)
    if known is not None and known.typed:
        return (name,)
    for way in quantity.computed if quantity else ():
        if all(each in values.unit.facts or values.get(each, place) for each in way.inputs):
            every = (_read_from(knowledge, each, place, values) for each in way.inputs)
            return tuple(dict.fromkeys(each for part in every for each in part))
    return (name,)
