"""Which tests have to be asked so that a test becomes known: itself, or a computed one's inputs.

Where an input has been skipped, another derivation may do without it: without mixed air the split
is taken from the return. Where none does, the test is not asked for.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from functools import cached_property

from troubleshoot.knowledge.model import Bound, Knowledge, Test
from troubleshoot.reasoning.readings.values import Values
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.places import Place


class Asking:
    """Knows, for one unit, which test gives which quantity."""

    def __init__(
        self,
        knowledge: Knowledge,
        unit: Unit,
        tests: Collection[Test],
        skipped: Collection[str] = (),
    ) -> None:
        self.knowledge = knowledge
        self.unit = unit
        self.skipped = skipped
        self._tests = tests

    @cached_property
    def _givers(self) -> dict[str, Test]:
        """The test that gives a quantity; most that is asked for is not computed and needs none."""
        givers: dict[str, Test] = {}
        for test in self._tests:
            if test.kind in ("input", "measurement"):
                for one in test.reads:
                    givers.setdefault(one.quantity, test)
        return givers

    @cached_property
    def _before_skips(self) -> Asking | None:
        skipped = self.skipped
        return Asking(self.knowledge, self.unit, self._givers.values()) if skipped else None

    def asks(self, test: Test, place: Place | None, values: Values) -> tuple[Test, ...]:
        """The tests still to be asked for `test`; empty where it cannot be known on this unit."""
        if test.kind != "computed":
            return (test,)
        return self._inputs(test, place, values) or self._itself(test, place, values)

    def _inputs(self, test: Test, place: Place | None, values: Values) -> tuple[Test, ...]:
        """What the limits of a computed test still need; nothing where they cannot be judged."""
        needed: dict[str, Test] = {}
        judged = False
        for bounds in self._lines(test, place):
            for bound in bounds:
                if not self._collect(bound.quantity, place, values, needed, frozenset()):
                    return ()
            trial = dict(needed)
            references = [b.relative_to for b in bounds if b.relative_to is not None]
            if all(self._collect(r, place, values, trial, frozenset()) for r in references):
                needed, judged = trial, True
        return tuple(needed.values()) if judged else ()

    def _itself(self, test: Test, place: Place | None, values: Values) -> tuple[Test, ...]:
        """A computed test that may be typed, unless it would be known but for a skipped input."""
        if not test.reads:
            return ()
        wanted = self._before_skips.asks(test, place, values) if self._before_skips else ()
        return () if any(each.id in self.skipped for each in wanted) else (test,)

    def ways(self, test: Test, place: Place | None, values: Values) -> Iterator[tuple[Test, ...]]:
        """Each set of tests that together give what a measurement reads: the two ends of a drop."""
        for one in test.reads if test.kind == "measurement" else ():
            for needed in self._derived(one.quantity, place, values, {}, frozenset()):
                yield tuple(needed.values())

    def _lines(self, test: Test, place: Place | None) -> Iterator[list[Bound]]:
        """The bounds of every limit line that counts on this unit."""
        for outcome in test.outcomes:
            for line in outcome.limits:
                if self.unit.proves(line.when, place):
                    yield [b for b in line.bounds if self.unit.proves(b.when, place)]

    def _collect(
        self,
        name: str,
        place: Place | None,
        values: Values,
        needed: dict[str, Test],
        pending: frozenset[str],
    ) -> bool:
        """Add the tests that make a quantity known; False where nothing can."""
        if name in pending:
            return False
        if name in self.knowledge.facts:
            return name in self.unit.facts
        if values.get(name, place) is not None:
            return True
        for trial in self._derived(name, place, values, needed, pending):
            needed.update(trial)
            return True
        giver = self._givers.get(name)
        if giver is None or giver.id in self.skipped:
            return False
        needed[giver.id] = giver
        return True

    def _derived(
        self,
        name: str,
        place: Place | None,
        values: Values,
        needed: dict[str, Test],
        pending: frozenset[str],
    ) -> Iterator[dict[str, Test]]:
        """For each derivation of a quantity that can be followed, the tests needed with it."""
        quantity = self.knowledge.quantities.get(name)
        for derivation in quantity.computed if quantity else ():
            trial = dict(needed)
            if all(
                self._collect(i, place, values, trial, pending | {name}) for i in derivation.inputs
            ):
                yield trial


def read_for(knowledge: Knowledge, unit: Unit, test: Test, place: Place | None) -> tuple[Test, ...]:
    """What a test is known by where nothing is read yet: itself, or what it is computed from."""
    asking = Asking(knowledge, unit, knowledge.tests.values())
    return asking.asks(test, place, Values(knowledge, unit, {}))
