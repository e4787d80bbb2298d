"""A reading that turned out to be wrong once another one was taken."""

from __future__ import annotations

from dataclasses import field, replace
from typing import ClassVar

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.readings.withdrawal import SAID_WRONG
from troubleshoot.visit.events.answers import SaysNothing
from troubleshoot.visit.events.event import ALWAYS, Event
from troubleshoot.visit.events.places import At, places_from
from troubleshoot.visit.state import VisitState


@frozen
class ReadingWithdrawn(Event):
    """The last reading of a test that counts there stays on record, and counts for nothing.

    What it may mean for safety still stands, as with any reading that does not count.
    """

    kind: ClassVar[str] = "withdrawn"

    test: str
    at: At = field(default=None, metadata=ALWAYS)

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        """Raises SaysNothing where there is no such reading."""
        places = places_from(self.at, knowledge.tests[self.test].per, state.unit)
        for number in reversed(range(len(state.answers))):
            answer = state.answers[number]
            is_it = answer.test == self.test and answer.places == places and answer.text
            if is_it and answer.valid is not False:
                wrong = replace(answer, valid=False, why_invalid=SAID_WRONG)
                return replace(
                    state, answers=(*state.answers[:number], wrong, *state.answers[number + 1 :])
                )
        raise SaysNothing(f"no reading of {self.test} counts there")
