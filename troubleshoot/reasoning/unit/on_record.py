"""A unit as its record and those who stand before it tell it together."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.equipment import Unit, read_unit
from troubleshoot.reasoning.unit.places import Layout, PlaceNotUnderstood, parse_place


@frozen
class OnRecord:
    """Facts and plate values that are kept of a unit, as typed.

    `trusted` are taken as they stand; `afresh` are looked at again, and only compared.
    """

    trusted: Mapping[str, object] = field(default_factory=dict)
    afresh: Mapping[str, object] = field(default_factory=dict)


def unit_told(
    knowledge: Knowledge,
    record: OnRecord,
    told: Mapping[str, object],
    own_record: Mapping[str, object] | None = None,
    at_least: Mapping[str, int] | None = None,
) -> Unit:
    """The unit by its record and by what is told, which stands above it.

    A value on record of a place that the unit is not known to have is left out: how many there are
    is looked at afresh. Raises InputRefused.
    """
    if not record.trusted:
        return read_unit(knowledge, told, own_record, at_least)
    facts = {key: value for key, value in record.trusted.items() if key in knowledge.facts}
    layout = read_unit(knowledge, {**facts, **told}, own_record, at_least).layout
    plates = {
        key: _at_its_places(knowledge, layout, key, value)
        for key, value in record.trusted.items()
        if key in knowledge.plate_values
    }
    kept = {key: value for key, value in plates.items() if value != {}}
    return read_unit(knowledge, {**kept, **facts, **told}, own_record, at_least)


def _at_its_places(knowledge: Knowledge, layout: Layout, key: str, value: object) -> object:
    """A plate value with only those of its places that the layout has."""
    if not isinstance(value, Mapping):
        return value
    per = knowledge.plate_values[key].per
    return {place: each for place, each in value.items() if _is_there(place, per, layout)}


def _is_there(place: str, per: str | None, layout: Layout) -> bool:
    try:
        return bool(parse_place(place, per, layout))
    except PlaceNotUnderstood:
        return False
