"""Whole visits to drawn units: the product's own, from the call to what it first comes to."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Final

from troubleshoot.dialogue.on_round import WHAT_NOW
from troubleshoot.dialogue.prompts import Choose, Prompt
from troubleshoot.dialogue.scripted import start_event
from troubleshoot.dialogue.talk import Reply
from troubleshoot.frozen import frozen
from troubleshoot.measure.led import LedVisit
from troubleshoot.measure.physics.cases import Examined, case_of, plain_case
from troubleshoot.measure.physics.judged import Judged, judged
from troubleshoot.measure.physics.sound_parts import SOUND
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.places import Place, like, spoken
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.events import Aimed, Answered, Event, RoundBegun, Skipped

LOOK_FOR_IT: Final = "2"
"""What is not sound on a round has its cause looked for at once."""


@frozen
class Visited:
    """A whole visit: what is said at its end, and what it took. `stopped`: a STOP ended it.

    `on_round`: it was a routine round, as far as its first finding and what that led to, or to its
    end where nothing was found.
    """

    said: Judged
    minutes: float
    tests: int
    on_round: bool
    stopped: bool


class PhysicalVisit(LedVisit):
    """The engine's own visit to a unit whose instruments read as physics has it.

    Steps go well. A part that no fault here touches reads sound; what physics does not reckon is
    not known. Whoever reads again reads the same: the meter is the same.
    """

    def __init__(self, reasoner: Reasoner, unit: Examined) -> None:
        case = case_of(reasoner.knowledge, unit, unit.rows)
        self.readings: Mapping[tuple[str, Place | None], Answer] = {
            (answer.test, place): replace(answer, places=(place,), shared=False)
            for answer in case.answers
            for place in answer.places
        }
        self.sound = SOUND[unit.drawn.mode]
        self.known = {test for test, _ in self.readings} | self.sound
        self.truth = unit.drawn.cards
        super().__init__(reasoner, start_event(case, plain_case(unit, ())))
        if case.routine:
            self.book.add(RoundBegun("spring" if unit.drawn.mode == "cooling" else "fall"))

    def visit(self) -> Visited:
        """Drive the visit; what it came to."""
        self.drive()
        state = self.state
        said = judged(self.truth, self.concluded())
        return Visited(said, state.minutes, self.tests, state.round is not None, self.stopped)

    def holds(self, test: str) -> bool:
        """Nobody goes to what cannot be known."""
        return test in self.known

    def reply(self, prompt: Prompt) -> Reply | None:
        """What the unit shows, or that the cause of what a round found is looked for at once."""
        if isinstance(prompt, Choose) and prompt.options == WHAT_NOW:
            return LOOK_FOR_IT
        return super().reply(prompt)

    def _shown(self, decision: Decision) -> Event:
        """The reading, or the way to the readings that give it, or that it is not known."""
        assert decision.test is not None
        test, at = decision.test.id, decision.at
        answer = self._answer(test, at)
        if answer is not None:
            self.tests += 1
            return Answered.by(answer)
        conclusions = self.concluded()
        asking = self.decider.asking(self.state, conclusions)
        for way in asking.ways(self.knowledge.tests[test], at, conclusions.values):
            if all(one.id in self.known for one in way):
                return Aimed(way[0].id, spoken(like(at, self.state.unit.layout.places(way[0].per))))
        return Skipped.over(test, at)

    def _answer(self, test: str, at: Place | None) -> Answer | None:
        read = self.readings.get((test, at))
        if read is not None or test not in self.sound:
            return read
        here = self.concluded().hypotheses.outcomes(test)
        sound = next(o for o in self.knowledge.tests[test].healthy if o in here)
        return Answer(test, (sound,), places=(at,))
