"""The unit of a play as it stands: what can be done on it, and what each test would take and tell.

The visit inside is a visit like any other: the same events, work state, cautions and reasoning. So
a scenario played with the expert's choices comes to what the engine's own visit comes to.
"""

from __future__ import annotations

from collections.abc import Iterator

from troubleshoot.dialogue.book import Forgotten, VisitBook
from troubleshoot.dialogue.driven import at_once
from troubleshoot.knowledge.model import Test
from troubleshoot.practice.answering import AnsweringUnit
from troubleshoot.practice.expert import start_of
from troubleshoot.practice.played import like
from troubleshoot.practice.scenario import Scenario
from troubleshoot.reasoning.choosing.asking import Asking
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.unit.places import Place, spoken
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.guards import allowed
from troubleshoot.safety.steps import BLEED_DRIVE, FIRE_PANEL_BACK, TELL_FIRE_PANEL
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Event
from troubleshoot.visit.state import VisitState


class AsItStands:
    """The unit and the visit to it, event by event, with what follows from them."""

    def __init__(self, reasoner: Reasoner, scenario: Scenario) -> None:
        self.knowledge = reasoner.knowledge
        self.scenario = scenario
        self.decider = Decider(reasoner.knowledge, reasoner)
        self.unit = AnsweringUnit(reasoner, scenario)
        self.book = VisitBook(self.knowledge, scenario.id, Forgotten(), at_once)
        self.add(start_of(scenario))
        self.start = self.conclusions

    def add(self, event: Event) -> None:
        """Take an event, and draw the conclusions afresh."""
        self.book.add(event)
        self.conclusions: Conclusions = conclude_visit(self.decider.reasoner, self.state)

    @property
    def state(self) -> VisitState:
        return self.book.state

    def tests(self) -> tuple[Test, ...]:
        """Every test this unit offers, in the order of the rules; safety steps are apart."""
        return tuple(
            test
            for test in self.conclusions.hypotheses.tests.values()
            if (test.kind != "step" or test.id not in CONFIRMED) and not self._follows(test)
        )

    def _follows(self, test: Test) -> bool:
        """Inputs that nobody reads off a meter, since they follow from others."""
        read = test.reads[0].quantity if test.reads else ""
        return test.kind == "input" and bool(self.knowledge.quantities[read].computed)

    def steps(self) -> tuple[Test, ...]:
        """Every safety step there is on this unit."""
        at_work = self.state.at_work
        idle = set() if at_work.drives else {BLEED_DRIVE}
        if not at_work.fire_panel:
            idle |= {TELL_FIRE_PANEL, FIRE_PANEL_BACK}
        found = (self.knowledge.tests[name] for name in CONFIRMED if name not in idle)
        return tuple(test for test in found if self.scenario.unit.allows(test.exists_when))

    def places(self, test: Test) -> tuple[Place | None, ...]:
        return self.scenario.unit.layout.places(test.per) or (None,)

    def asked_for(self, test: Test, at: Place | None) -> Iterator[tuple[Test, Place | None]]:
        """The test itself, or the inputs that a computed one still lacks, with their places."""
        if test.kind != "computed" or self.unit.listed(test.id, at):
            yield test, at
            return
        asking = Asking(self.knowledge, self.state.unit, self.conclusions.hypotheses.tests.values())
        for wanted in asking.asks(test, at, self.conclusions.values):
            places = self.places(wanted)
            yield wanted, at if at in places else like(at, places)

    def needs(self, test: Test, at: Place | None) -> tuple[str, ...]:
        """What is still lacking for a test as the unit stands, in the order of work."""
        work, unit = self.state.work, self.state.at_work
        asked = self.asked_for(test, at)
        found = (each for wanted, to in asked for each in allowed(work, wanted, spoken(to), unit))
        return tuple(dict.fromkeys(found))

    def gain(self, test: Test, at: Place | None) -> float:
        """Bits the test can be expected to tell now; for an input, what hangs on it."""
        found = self.conclusions
        if test.kind != "input":
            return found.chooser.gain(found.ranking, test.id, at, found.seen)
        gains = [
            found.chooser.gain(found.ranking, other.id, place, found.seen)
            for other in self.tests()
            if other.kind == "computed"
            for place in self.places(other)
            if test in [wanted for wanted, _ in self.asked_for(other, place)]
        ]
        return max(gains, default=0.0)
