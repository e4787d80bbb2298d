"""One unit as the register keeps it, checked as a visit would read it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field, replace
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import MOST_NAME, one_line
from troubleshoot.reasoning.unit.equipment import (
    InputRefused,
    Refusal,
    meant,
    read_unit,
    suggest,
)
from troubleshoot.records.register.columns import AT, NAME, OWN, NotTaken
from troubleshoot.visit.kept.unit_names import same_unit

_UNIT: Final = "unit."


@frozen
class Entry:
    """A unit: its name, what the register alone keeps, and what a visit knows of it.

    `own` by column; `unit`: facts and plate values as typed, by place where each has its own.
    """

    name: str
    own: Mapping[str, str] = field(default_factory=dict)
    unit: Mapping[str, object] = field(default_factory=dict)


def cells_of(entry: Entry) -> dict[str, str]:
    """A unit as a row: a plate value of one place under its column and place."""
    cells = {NAME: entry.name, **entry.own}
    for key, value in entry.unit.items():
        if isinstance(value, Mapping):
            cells |= {f"{key}{AT}{place}": str(each) for place, each in value.items()}
        else:
            cells[key] = str(value)
    return cells


def told(knowledge: Knowledge, entry: Entry, cells: Mapping[str, str]) -> Entry:
    """A unit with what these cells tell of it; an empty one tells nothing.

    Raises InputRefused with every cell that cannot be taken, by its column; then nothing is.
    """
    refusals: list[Refusal] = []
    own, unit = dict(entry.own), dict(entry.unit)
    for column, words in cells.items():
        if not words or column == NAME:
            continue
        try:
            _take(knowledge, own, unit, column, words)
        except NotTaken as error:
            refusals.append(Refusal(column, error.problem, error.instead))
    changed = replace(entry, own=own, unit=unit)
    refusals.extend(refusals_of(knowledge, changed))
    if refusals:
        raise InputRefused(tuple(refusals))
    return changed


def _take(
    knowledge: Knowledge, own: dict[str, str], unit: dict[str, object], column: str, words: str
) -> None:
    """Put one cell where it belongs. Raises NotTaken."""
    key, _, place = column.partition(AT)
    if key in OWN and not place:
        own[key] = OWN[key].read(words)
        return
    fact, plate = knowledge.facts.get(key), knowledge.plate_values.get(key)
    if fact is not None and not place:
        unit[key] = words if fact.counts else meant(fact, words) or words
    elif plate is not None and (plate.per or not place):
        before = unit.get(key)
        others = before if isinstance(before, Mapping) else {}
        unit[key] = {**others, place: words} if place else words
    else:
        names = (NAME, *OWN, *knowledge.facts, *knowledge.plate_values)
        raise NotTaken("no such column", suggest(key, names))


def refusals_of(knowledge: Knowledge, entry: Entry) -> tuple[Refusal, ...]:
    """What a visit would not take of a unit, by column."""
    try:
        read_unit(knowledge, entry.unit)
    except InputRefused as error:
        return tuple(_by_column(knowledge, refusal) for refusal in error.refusals)
    return ()


def _by_column(knowledge: Knowledge, refusal: Refusal) -> Refusal:
    """A refusal of unit.compressor-rla.compressor 2 by its column."""
    key, _, place = refusal.key.removeprefix(_UNIT).partition(".")
    return replace(refusal, key=f"{key}{AT}{place}" if place else key)


def named(typed: str, where: str) -> str:
    """A unit's name. Raises NotUsable for what is none."""
    name = one_line(typed, where, MOST_NAME)
    if not same_unit(name, name):
        raise NotUsable(where, "a unit's name has letters or digits", "type its name")
    return name
