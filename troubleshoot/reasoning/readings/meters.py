"""By which accuracy a reading is judged: of the instrument that is listed, else of its kind.

Where a STOP wider than one step may hang on a reading, or a safety step is confirmed by it, a list
makes nothing more accurate than its kind: a typing error in it would be met with a hand.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.quantities.instruments import INSTRUMENTS, Instrument, default_instrument

_ONE_STEP: Final = "this-step"


@frozen
class Listed:
    """An instrument that is on hand: its kind, and how far it errs, as `Instrument` has it."""

    name: str
    kind: str
    percent: float = 0.0
    counts: float = 0.0
    fixed: float = 0.0


@frozen
class Meters:
    """The instruments of a visit. `held_to_kind`: tests that no list makes more accurate."""

    listed: tuple[Listed, ...] = ()
    held_to_kind: frozenset[str] = frozenset()

    def judging(self, test: Test, unit: str) -> Instrument | None:
        """The instrument by which a reading in a unit is judged; None where none is known.

        Of several of one kind the worst: nobody says which of them is in hand.
        """
        kind = kind_of(test, unit)
        own = () if kind is None else self.of_kind(kind.id)
        if kind is None or not own:
            return kind
        return at_worst(kind, own, and_its_kind=test.id in self.held_to_kind)

    def named(self, test: Test, unit: str) -> str:
        """What a reading in a unit is taken with, by its name; empty where nothing is listed."""
        kind = kind_of(test, unit)
        own = () if kind is None else self.of_kind(kind.id)
        return " or ".join(each.name for each in own)

    def of_kind(self, kind: str) -> tuple[Listed, ...]:
        """Those of a kind that are listed."""
        return tuple(each for each in self.listed if each.kind == kind)


NO_METERS: Final = Meters()


def kind_of(test: Test, unit: str) -> Instrument | None:
    """The kind of instrument that a test is read with; None where that is left open."""
    return INSTRUMENTS[test.meter] if test.meter else default_instrument(unit)


def at_worst(kind: Instrument, own: Iterable[Listed], *, and_its_kind: bool) -> Instrument:
    """A kind of instrument with the worst accuracy of these, and of the kind where so said."""
    every: list[Listed | Instrument] = [*own, *((kind,) if and_its_kind else ())]
    return replace(
        kind,
        percent=max(each.percent for each in every),
        counts=max(each.counts for each in every),
        fixed=max(each.fixed for each in every),
    )


def meters_of(knowledge: Knowledge, listed: tuple[Listed, ...]) -> Meters:
    """The instruments of a visit under these rules."""
    return Meters(listed, _held_to_kind(knowledge) if listed else frozenset())


def _held_to_kind(knowledge: Knowledge) -> frozenset[str]:
    """The tests that read what a wider STOP or a step is judged by, or is computed from."""
    hazards = (h for h in knowledge.hazards.values() if h.stop and h.stop.scope != _ONE_STEP)
    stops = {finding.test for hazard in hazards for finding in hazard.findings}
    steps = {test.id for test in knowledge.tests.values() if test.kind == "step"}
    found = {name for test in stops | steps for name in _judging(knowledge.tests[test])}
    left = [*found]
    while left:
        quantity = knowledge.quantities.get(left.pop())
        inputs = {name for each in quantity.computed for name in each.inputs} if quantity else set()
        left += inputs - found
        found |= inputs
    return frozenset(
        test.id
        for test in knowledge.tests.values()
        if not found.isdisjoint(each.quantity for each in test.reads)
    )


def _judging(test: Test) -> set[str]:
    """The quantities that a test reads, and those that it is judged by."""
    bounds = [b for outcome in test.outcomes for line in outcome.limits for b in line.bounds]
    return {
        *(each.quantity for each in test.reads),
        *(bound.quantity for bound in bounds),
        *(bound.relative_to or "" for bound in bounds),
    }
