"""What is known in numbers: typed values, conditions, plate values, and what follows from them.

Values are looked up by quantity and place. A quantity of a circuit is looked up for its own
circuit; one of the whole unit (outdoor temperature) serves everywhere. A derived quantity carries
the uncertainty of its inputs, propagated linearly.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Derivation, FactsNeeded, Knowledge
from troubleshoot.reasoning.readings.formulas import compute
from troubleshoot.reasoning.readings.meters import NO_METERS, Meters
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.places import CAPACITOR_KINDS, Place

Key = tuple[str, Place | None]
"""A quantity at a place."""

LINE_KINDS = frozenset({"circuit", "compressor", "contactor"})


@frozen
class Value:
    """A number in its quantity's unit, its standard uncertainty, and the inputs it rests on.

    `u` is the meter's own; `rounding` that of a number typed without the digits the meter shows.
    `soft` is false where several legs decided: such a value is judged hard (worst leg).
    """

    number: float
    u: float = 0.0
    soft: bool = True
    typed: bool = True
    rounding: float = 0.0

    @property
    def whole_u(self) -> float:
        """The standard uncertainty with that of the rounding."""
        return math.hypot(self.u, self.rounding)


class Values:
    """Typed values by (quantity, place), with derived ones computed on demand.

    `meters`: by whose accuracy what is typed besides is judged.
    """

    def __init__(
        self,
        knowledge: Knowledge,
        unit: Unit,
        typed: Mapping[Key, Value],
        meters: Meters = NO_METERS,
    ) -> None:
        self.knowledge = knowledge
        self.unit = unit
        self.meters = meters
        self._typed = dict(typed)
        self._derived: dict[Key, Value | None] = {}

    def get(self, name: str, place: Place | None) -> Value | None:
        """The value at a place, or nothing. Plate values count as exact."""
        return self._known(name, place, frozenset())

    def nearest(self, name: str, place: Place | None, near: float) -> float | None:
        """What a number is compared with: of a range on the plate what lies nearest to it."""
        found = self.get(name, place)
        plate = None if found is None or found.typed else self.plate_value(name, place, near)
        return plate if plate is not None or found is None else found.number

    def proves(self, needed: FactsNeeded, place: Place | None) -> bool:
        """Whether the facts do hold; of a quantity that it is known here, or not."""
        return not needed or all(self._holds(name, words, place) for name, words in needed.items())

    def _holds(self, name: str, words: tuple[str, ...], place: Place | None) -> bool:
        if name in self.knowledge.quantities:
            return (self.get(name, place) is not None) == (words == ("known",))
        return self.unit.proves({name: words}, place)

    def with_typed(self, more: Mapping[Key, Value]) -> Values:
        """The same values with some typed ones added or replaced."""
        return Values(self.knowledge, self.unit, {**self._typed, **more}, self.meters)

    def without(self, keys: Collection[Key]) -> Values:
        """The same values as if these had not been typed."""
        typed = {key: value for key, value in self._typed.items() if key not in keys}
        return Values(self.knowledge, self.unit, typed, self.meters)

    def _known(self, name: str, place: Place | None, pending: frozenset[str]) -> Value | None:
        quantity = self.knowledge.quantities.get(name)
        kept = (name, self.place_for(quantity.per if quantity else None, place))
        if kept in self._typed:
            return self._typed[kept]
        key = (name, place)
        if key in self._derived:
            return self._derived[key]
        plate = self.plate_value(name, place)
        found = None if plate is None else Value(plate, typed=False)
        if found is None and quantity is not None and name not in pending:
            for derivation in quantity.computed:
                found = self._compute(derivation, place, pending | {name})
                if found is not None:
                    break
        if not pending:
            self._derived[key] = found
        return found

    def plate_value(self, name: str, place: Place | None, near: float = -math.inf) -> float | None:
        """A plate value seen from a place: its own, or that of what belongs to it."""
        own = self.unit.plate_value(name, place, near)
        kept = self.knowledge.plate_values.get(name) or self.knowledge.quantities.get(
            name.removeprefix("own-")
        )
        if own is not None or kept is None:
            return own
        return self.unit.plate_value(name, self.place_for(kept.per, place), near)

    def place_for(self, per: str | None, place: Place | None) -> Place | None:
        """The place under which a quantity of kind `per` is kept, seen from `place`."""
        if per is None:
            return None
        if place is not None:
            if per == place.kind or (per == "capacitor" and place.kind in CAPACITOR_KINDS):
                return place
            if per in LINE_KINDS and place.kind in LINE_KINDS:
                return Place(per, place.number)
        only = self.unit.layout.places(per)
        return only[0] if len(only) == 1 else None

    def _compute(
        self, derivation: Derivation, place: Place | None, pending: frozenset[str]
    ) -> Value | None:
        numbers: list[float | str] = []
        uncertainties: list[float] = []
        roundings: list[float] = []
        soft = True
        for name in derivation.inputs:
            if name in self.knowledge.facts:
                word = self.unit.facts.get(name)
                if word is None:
                    return None
                numbers.append(word)
                uncertainties.append(0.0)
                roundings.append(0.0)
                continue
            value = self._known(name, place, pending)
            if value is None:
                return None
            numbers.append(value.number)
            uncertainties.append(value.u)
            roundings.append(value.rounding)
            soft = soft and value.soft
        result = compute(derivation.formula, tuple(numbers))
        if result is None:
            return None
        u, rounding = (
            abs(derivation.times) * _propagated(derivation.formula, tuple(numbers), each, result)
            for each in (uncertainties, roundings)
        )
        number = derivation.times * result + derivation.plus
        return Value(number, u, soft, typed=False, rounding=rounding)


def _propagated(
    formula: str, numbers: tuple[float | str, ...], uncertainties: list[float], result: float
) -> float:
    """Standard uncertainty of a result from those of its inputs, one step of each (GUM 5.1)."""
    parts = []
    for index, (number, u) in enumerate(zip(numbers, uncertainties, strict=True)):
        if u > 0 and not isinstance(number, str):
            moved = compute(formula, (*numbers[:index], number + u, *numbers[index + 1 :]))
            if moved is not None:
                parts.append(moved - result)
    return math.sqrt(math.fsum(part * part for part in parts))
