"""What a sound unit would read: a healthy number for each quantity, in keeping with what is known.

`rules/sound-unit.yaml` says it, by quantity. The numbers hang together: the liquid line is as much
cooler than the condensing temperature as a good charge makes it, whatever head pressure the
scenario states.
"""

from __future__ import annotations

from troubleshoot.knowledge.model import Derivation, SoundWay
from troubleshoot.reasoning.readings.formulas import compute
from troubleshoot.reasoning.readings.limits import bounds_truth
from troubleshoot.reasoning.readings.values import Values
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.places import Place


class SoundUnit:
    """Healthy numbers of one unit on one day. What `values` knows stands before what is typical.

    `day`: the quantities stated as conditions, which read as stated.
    """

    def __init__(self, unit: Unit, values: Values, day: frozenset[str] = frozenset()) -> None:
        self.unit = unit
        self.values = values
        self.day = day
        self._readings = values.knowledge.sound

    def number(self, quantity: str, place: Place | None) -> float | None:
        """A healthy number in the quantity's own unit; None where none can be said.

        What is stated of the day, or follows from readings, stands: no other number agrees with it.
        """
        reading = self._readings.get(quantity)
        if reading is None or not reading.ways:
            return None
        kept = self.values.knowledge.quantities.get(quantity)
        settled = quantity in self.day or (kept is not None and bool(kept.computed))
        known = self.values.get(quantity, place) if settled else None
        return self._sound(quantity, place, frozenset()) if known is None else known.number

    def shown(self, quantity: str, place: Place | None) -> SoundWay | None:
        """The way that says how the meter shows it, where that is no plain number."""
        reading = self._readings.get(quantity)
        ways = () if reading is None else reading.ways
        way = next((way for way in ways if self._serves(way, place)), None)
        return way if way is not None and way.shown else None

    def three_legs(self, quantity: str) -> bool:
        """Whether the meter goes to three legs or poles here."""
        reading = self._readings.get(quantity)
        return (
            reading is not None
            and bool(reading.three_legs)
            and (self.unit.proves(reading.three_legs))
        )

    def _sound(self, quantity: str, place: Place | None, pending: frozenset[str]) -> float | None:
        reading = self._readings.get(quantity)
        for way in () if reading is None or quantity in pending else reading.ways:
            if way.number is not None and self._serves(way, place):
                number = self._reckoned(way.number, place, pending | {quantity})
                if number is not None:
                    return _within(number, way.at_least, way.at_most)
        return None

    def _serves(self, way: SoundWay, place: Place | None) -> bool:
        if not self.unit.proves(way.when, place):
            return False
        return not way.where or bounds_truth(way.where, place, self.values) is True

    def _reckoned(
        self, way: Derivation, place: Place | None, pending: frozenset[str]
    ) -> float | None:
        """The number by a formula; None where an input cannot be said."""
        inputs: list[float | str] = []
        for name in way.inputs:
            value = self._input(name, place, pending)
            if value is None:
                return None
            inputs.append(value)
        result = compute(way.formula, tuple(inputs))
        return None if result is None else way.times * result + way.plus

    def _input(self, name: str, place: Place | None, pending: frozenset[str]) -> float | str | None:
        """A fact's word, or what is known of a quantity or plate value, or else what is healthy."""
        if name in self.values.knowledge.facts:
            return self.unit.facts.get(name)
        value = self.values.get(name, place)
        return self._sound(name, place, pending) if value is None else value.number


def _within(number: float, least: float | None, most: float | None) -> float:
    if least is not None:
        number = max(least, number)
    return number if most is None else min(most, number)
