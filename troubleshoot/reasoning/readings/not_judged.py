"""Readings of which nothing was made, and what is missing to judge them.

A number says nothing by itself where its limits hang on a fact nobody stated, on a plate value, or
on a partner that was not read. What is missing is told in its shortest set: what was not given
that would judge it.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import FactsNeeded, Knowledge, LimitLine, Test
from troubleshoot.reasoning.readings.readings import Reading
from troubleshoot.reasoning.readings.values import Value, Values
from troubleshoot.reasoning.unit.places import Place

Missing = frozenset[str]
"""Facts, plate values and quantities that nobody gave."""


@frozen
class NotJudged:
    """A reading that counts and came to nothing. `missing`: what would judge it, in words.

    Nothing is missing where its number lies in none of the test's limits.
    """

    reading: Reading
    missing: tuple[str, ...]


def not_judged(readings: Sequence[Reading], values: Values) -> tuple[NotJudged, ...]:
    """Every typed reading that counts and that neither its own test nor another made use of.

    No use of it is what holds that number alone against a fixed bound: a suction over zero.
    """
    return tuple(_NotJudged(readings, values).each())


def missing_for(test: Test, values: Values) -> tuple[str, ...]:
    """What would judge a test besides its own number, in words, whatever else judges that."""
    judging = _beside_its_own(test, values)
    return judging.in_words(judging.shortest([test], None))


def quantities_missing_for(test: Test, values: Values) -> Missing:
    """The same by their ids."""
    return _beside_its_own(test, values).shortest([test], None)


def _beside_its_own(test: Test, values: Values) -> _NotJudged:
    """What is known once a test's own number is.

    Where one number that it reads is computed from another, the other alone is taken as told.
    """
    quantities = values.knowledge.quantities
    own = {one.quantity for one in test.reads}
    told = {
        (name, values.place_for(quantities[name].per, None)): Value(0.0)
        for name in own
        if not any(own & {*way.inputs} for way in quantities[name].computed)
    }
    return _NotJudged((), values.with_typed(told))


class _NotJudged:
    """What the readings of one case came to."""

    def __init__(self, readings: Sequence[Reading], values: Values) -> None:
        self.readings = readings
        self.values = values
        self.knowledge: Knowledge = values.knowledge
        self._judged = {reading.test for reading in readings if reading.seen}
        self._conditions = {
            b.quantity for limit in self.knowledge.limits.values() for b in limit.bounds
        }
        quantities = self.knowledge.quantities.values()
        self._computed_of = Counter(
            name for quantity in quantities for way in quantity.computed for name in way.inputs
        )

    def each(self) -> Iterator[NotJudged]:
        for reading in self.readings:
            if reading.valid and reading.text is not None and not reading.seen:
                test = self.knowledge.tests[reading.test]
                given = {one.quantity for one in test.reads}
                judging = self._judging(test, given)
                if given <= self._conditions or not judging:
                    continue
                further = [each for each in judging if each is test or not _named(each) <= given]
                if self._judged.isdisjoint(each.id for each in further):
                    yield NotJudged(reading, self.in_words(self.shortest(judging, reading.at)))

    def _judging(self, test: Test, given: set[str]) -> list[Test]:
        """The tests of this unit that a reading may decide: its own, and what is computed of it."""
        return [
            each
            for each in self.knowledge.tests.values()
            if self.values.unit.allows(each.exists_when)
            and any(self._rests_on(name, given, frozenset()) for name in _named(each))
        ]

    def _rests_on(self, name: str, given: set[str], pending: frozenset[str]) -> bool:
        if name in given:
            return True
        quantity = self.knowledge.quantities.get(name)
        return name not in pending and any(
            self._rests_on(each, given, pending | {name})
            for way in (quantity.computed if quantity else ())
            for each in way.inputs
        )

    def shortest(self, tests: Iterable[Test], place: Place | None) -> Missing:
        """The fewest things that would let one of the tests be judged further than it was."""
        sets = [
            missing
            for test in tests
            for outcome in test.outcomes
            if self.values.unit.allows(outcome.exists_when)
            for line in outcome.limits
            if (missing := self._of_line(line, place))
        ]
        return min(sets, key=self._trouble, default=frozenset())

    def _trouble(self, missing: Missing) -> tuple[int, int, int, list[str]]:
        """How much is asked: the fewest things; the plate, a reading, last the unit's own record.

        Of readings that of which most is computed, the return air before the mixed air.
        """
        records = self.knowledge.plate_values
        unread = sum(name in self.knowledge.quantities for name in missing)
        kept = sum(name in records and records[name].origin == "own-record" for name in missing)
        of_it = sum(self._computed_of[name] for name in missing)
        return len(missing), unread + 2 * kept, -of_it, sorted(missing)

    def _of_line(self, line: LimitLine, place: Place | None) -> Missing | None:
        """What a line of limits lacks; None where it is not meant for this unit."""
        missing = self._facts(line.when, place)
        if missing is None:
            return None
        for bound in line.bounds:
            facts = self._facts(bound.when, place)
            if facts is None:
                continue
            missing |= facts
            for name in filter(None, (bound.quantity, bound.relative_to)):
                missing |= self._of_quantity(name, place, frozenset())
        return missing

    def _facts(self, needed: FactsNeeded, place: Place | None) -> Missing | None:
        """The facts of a condition that nobody stated; None where what is stated rules it out."""
        missing: set[str] = set()
        for name, words in needed.items():
            if self.values.unit.proves({name: words}, place):
                continue
            if name in self.values.unit.facts or words == ("not-known",):
                return None
            missing.add(name)
        return frozenset(missing)

    def _of_quantity(self, name: str, place: Place | None, pending: frozenset[str]) -> Missing:
        """What has to be given that a quantity is known: itself, or the inputs of one way to it."""
        if name in self.values.unit.facts or self.values.get(name, place) is not None:
            return frozenset()
        quantity = self.knowledge.quantities.get(name)
        ways = [
            frozenset[str]().union(
                *(self._of_quantity(each, place, pending | {name}) for each in way.inputs)
            )
            for way in (quantity.computed if quantity and name not in pending else ())
        ]
        return min(ways, key=self._trouble, default=frozenset({name}))

    def in_words(self, missing: Missing) -> tuple[str, ...]:
        return tuple(self.knowledge.spoken(name) for name in sorted(missing))


def _named(test: Test) -> set[str]:
    """The quantities that a test's limits speak of."""
    bounds = [b for outcome in test.outcomes for line in outcome.limits for b in line.bounds]
    return {name for b in bounds for name in (b.quantity, b.relative_to) if name is not None}
