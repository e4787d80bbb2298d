"""The refrigerant of one unit: gathered from its visits and its own file, a circuit an account."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.equipment import Unit, read_unit
from troubleshoot.reasoning.unit.places import PlaceNotUnderstood, parse_place
from troubleshoot.records.refrigerant.account import CircuitAccount, account_of
from troubleshoot.records.refrigerant.kept import FOLDER, told_by_hand
from troubleshoot.records.refrigerant.moved import in_order, moved_on_visits
from troubleshoot.records.register.entry import Entry
from troubleshoot.visit.kept.names import natural


@frozen
class OfUnit:
    """A unit's circuits, in order, and what of its record cannot be read."""

    accounts: tuple[CircuitAccount, ...]
    problems: tuple[str, ...]

    @property
    def is_empty(self) -> bool:
        """Whether nothing was moved."""
        return not any(account.moved for account in self.accounts)


def refrigerant_of(
    knowledge: Knowledge, data: Path, entry: Entry, journals: Sequence[Path]
) -> OfUnit:
    """What was added to a unit and recovered from it. `data`: the folder of all that is kept."""
    by_hand = told_by_hand(knowledge, data / FOLDER, entry.name)
    visits = moved_on_visits(knowledge, journals)
    moved = in_order((*by_hand.moved, *visits.moved))
    unit = read_unit(knowledge, entry.unit)
    known = (str(place) for place in unit.layout.places("circuit"))
    circuits = sorted({*known, *(each.weighing.circuit for each in moved)}, key=natural)
    return OfUnit(
        tuple(account_of(each, moved, _charge(unit, each)) for each in circuits),
        (*visits.problems, *by_hand.problems),
    )


def _charge(unit: Unit, circuit: str) -> float | None:
    """The full charge of a circuit in pounds; None where it is not on record."""
    try:
        (place, *_) = parse_place(circuit, "circuit", unit.layout)
    except PlaceNotUnderstood:
        return None
    return unit.plate_value("charge", place)
