"""Which test and place a reading that is told may be of, and why it cannot have been read."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.taking_up import protects
from troubleshoot.knowledge.model import Test
from troubleshoot.quantities.units import unit as unit_of
from troubleshoot.reasoning.unit.places import (
    Place,
    PlaceNotUnderstood,
    like,
    parse_place,
    spoken,
)
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.guards import unmet
from troubleshoot.safety.needs import BURNER_AREAS, HEAT_IS_ON, needs_of
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.safety.work_state import WorkState
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events.called import unit_as_called
from troubleshoot.visit.hearing.read_out import ReadOut

Spot = tuple[Test, Place | None]
ELECTRICAL: Final = frozenset({"voltage", "current", "resistance", "capacitance"})
"""Kinds of units that the tester shows, which is proved before it is believed."""
BY_ITSELF: Final = "it shows whether a danger is gone, and is read when it is asked for"
A_STOP_STANDS: Final = "a STOP stands"
NO_SUCH_PLACE: Final = "this unit has no such place for it"
READ_WITH_HEAT: Final = "it is read with heat called, and this call is for cooling"


class Readable:
    """Tells what can be read in one visit as the work stands."""

    def __init__(self, book: VisitBook, decider: Decider) -> None:
        self.book = book
        self.decider = decider

    def spots(self, one: ReadOut, decision: Decision) -> list[Spot]:
        """Every test and place that a reading may be of; those that can be read now, if any can.

        What is asked for is meant where it may be; where the words name no place, that of the
        question is.
        """
        spots = [
            (test, at)
            for test, kind in zip(one.tests, one.kinds, strict=True)
            if not self._is_of_heat(test)
            for at in self._places(one, test, kind, decision)
        ]
        asked = [spot for spot in spots if spot == (decision.test, decision.at)]
        now = [spot for spot in spots if not self.why_not(decision, *spot)]
        return asked or now or spots

    def _places(
        self, one: ReadOut, test: Test, kind: str | None, decision: Decision
    ) -> tuple[Place | None, ...]:
        layout = self.book.state.unit.layout
        places = tuple(p for p in layout.places(test.per) if kind is None or (p and p.kind == kind))
        if one.at is not None and test.per is not None:
            try:
                named = parse_place(one.at, test.per, layout)
            except PlaceNotUnderstood:
                return ()
            return tuple(place for place in places if place in named)
        here = like(decision.at, places) if decision.test is not None else None
        return places if here is None else (here,)

    def _is_of_heat(self, test: Test) -> bool:
        """Whether it is read with the heat on, which is not called for."""
        heats = test.area in BURNER_AREAS or test.id in HEAT_IS_ON
        called = unit_as_called(self.book.knowledge, self.book.state)
        return called.called_to_cool and heats and test.work_state.startswith("running")

    def why_not(self, decision: Decision, test: Test, at: Place | None) -> str:
        """Why nothing of that can have been read as the work stands; empty where it can."""
        if decision.stop is not None:
            return A_STOP_STANDS
        state = self.book.state
        is_asked = decision.step is None and (test, at) == (decision.test, decision.at)
        if not is_asked and self._may_lift(test):
            return BY_ITSELF
        if first := self._unmet(state.work, test, at):
            return f"first {', '.join(first)}"
        beyond = self.decider.beyond(state, test.id, spoken(at))
        if beyond is not None:
            return f"beyond you: {beyond}"
        conclusions = conclude_visit(self.decider.reasoner, state)
        return self.decider.forbidden(conclusions, test.id, spoken(at)) or ""

    def _may_lift(self, test: Test) -> bool:
        """Whether a test may show that a danger met in this visit is gone, or is a safety step."""
        state = self.book.state
        if test.id in CONFIRMED or not protects(self.book.knowledge, test):
            return test.id in CONFIRMED
        fired = conclude_visit(self.decider.reasoner, state).hazards
        return bool(state.stops) or any(each.hazard.all_clear == test.id for each in fired)

    def _unmet(self, work: WorkState, test: Test, at: Place | None) -> tuple[str, ...]:
        """What the work lacks for a reading; a gauge reads whether or not the tester is proved."""
        if test.id in CONFIRMED:
            return ()
        needs = needs_of(test, spoken(at), self.book.state.at_work)
        if not test.reads:
            return unmet(work, needs)
        electrical = unit_of(self.book.knowledge.quantities[test.reads[0].quantity].unit).kind
        return unmet(work, needs if electrical in ELECTRICAL else replace(needs, meter=False))

    def why_none(self, one: ReadOut, spots: list[Spot], decision: Decision) -> str:
        """Why nothing of a reading can be taken as the work stands; empty where it can."""
        if spots:
            return self.why_not(decision, *spots[0])
        return READ_WITH_HEAT if any(map(self._is_of_heat, one.tests)) else NO_SUCH_PLACE

    def was_readable(self, before: WorkState | None, spots: list[Spot]) -> bool:
        """Whether all that keeps a reading from being taken is what the last step has changed."""
        if before is None or not spots:
            return False
        test, at = spots[0]
        return (
            not self._may_lift(test)
            and bool(self._unmet(self.book.state.work, test, at))
            and not self._unmet(before, test, at)
            and self.decider.beyond(self.book.state, test.id, spoken(at)) is None
        )
