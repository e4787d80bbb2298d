"""Simulated visits: the product itself, led to a unit with one fault, and a checklist beside it.

Both pay for every safety step and every change of work state, and stop where a STOP stands.
"""

from __future__ import annotations

import math
import random
from collections.abc import Iterator, Mapping

from troubleshoot.dialogue.prompts import AskTest, DoStep, Prompt, Settled
from troubleshoot.dialogue.talk import Reply
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Complaint, Test
from troubleshoot.measure.faulty_unit import FaultyUnit
from troubleshoot.measure.led import LedVisit
from troubleshoot.reasoning.choosing.next_test import NAMED, minutes_to_know
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.evidence.hypotheses import Hypothesis
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.reasoning.unit.places import Place, spoken
from troubleshoot.safety.stops.record import Spot
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.events import Aimed, Answered, Event, Skipped, Started
from troubleshoot.visit.telling.account import listed_causes


@frozen
class Visit:
    """One simulated visit: the true fault, the first call, its chance, and what it cost.

    `among_faults`: the chance of the call given that one of the rules' faults is there, as it
    always is in a simulated visit; it is what calibration is judged by. `stopped`: a STOP ended
    it, so that nothing was called. `listed`: the faults that the screen lists at its end, the
    likeliest first.
    """

    truth: str
    call: str
    chance: float
    among_faults: float
    minutes: float
    tests: int
    stopped: bool = False
    listed: tuple[str, ...] = ()

    @property
    def right(self) -> bool:
        return self.truth == self.call

    @property
    def named(self) -> bool:
        """Whether the call is said to be sure, so that its repair is told."""
        return self.chance >= NAMED


class SimulatedVisit(LedVisit):
    """The engine's own visit to a unit that has this fault."""

    def __init__(
        self,
        reasoner: Reasoner,
        facts: Mapping[str, object],
        truth: Hypothesis,
        complaint: Complaint,
        dice: random.Random,
    ) -> None:
        start = Started(complaint=complaint.id, unit=dict(facts))
        super().__init__(reasoner, start)
        hypotheses, _ = reasoner.hypotheses(self.state.unit)
        self.faulty = FaultyUnit(hypotheses, truth, dice)
        self.truth = truth
        self._inputs_minutes = 0.0

    def visit(self) -> Visit:
        """Drive the visit; what it came to."""
        self.drive()
        found = self.concluded()
        causes, listed = found.causes, listed_causes(found)
        top, faults = causes[0], math.fsum(c.probability for c in causes)
        return Visit(
            self.truth.fault.id,
            top.fault.id,
            top.probability,
            top.probability / faults,
            self.state.minutes + self._inputs_minutes,
            self.tests,
            self.stopped,
            tuple(dict.fromkeys(cause.fault.id for cause in listed)),
        )

    def _shown(self, decision: Decision) -> Event:
        """The unit answers what is aimed at, once everything that it is computed from is paid."""
        assert decision.test is not None
        name, at = decision.aim or (decision.test.id, decision.at)
        test = self.knowledge.tests[name]
        if test.kind in ("step", "input") or not test.outcomes:
            return Skipped.over(test.id, at)
        self.tests += 1
        self._inputs_minutes += self._beyond_its_own(test, at)
        return Answered.by(Answer(test.id, self.faulty.report(test, at), places=(at,)))

    def _beyond_its_own(self, test: Test, at: Place | None) -> float:
        """What it takes to know a test, as the choice reckons it, beyond its own minutes.

        A computed test is answered here in place of its inputs, and the record has its own.
        """
        found = self.concluded()
        asked = self.decider.asking(self.state, found).asks(test, at, found.values)
        return minutes_to_know(asked) - test.minutes if asked else 0.0


class CheckedVisit(SimulatedVisit):
    """A fixed list: the complaint's first tests, then each listed fault's, until one is named."""

    def __init__(
        self,
        reasoner: Reasoner,
        facts: Mapping[str, object],
        truth: Hypothesis,
        complaint: Complaint,
        dice: random.Random,
    ) -> None:
        super().__init__(reasoner, facts, truth, complaint, dice)
        self._waiting = list(_listed(reasoner, facts, complaint))
        self._tried: set[Spot] = set()

    def reply(self, prompt: Prompt) -> Reply | None:
        """The next test of the list is chosen, whatever would be next by itself."""
        if not isinstance(prompt, DoStep | AskTest | Settled):
            return super().reply(prompt)
        wanted = self._wanted()
        if wanted is None:
            return None
        if not isinstance(prompt, Settled) and self._leads_to(prompt.decision, wanted):
            return super().reply(prompt)
        if wanted in self._tried:  # no way leads there
            self._waiting.remove(wanted)
            return self.reply(prompt)
        self._tried.add(wanted)
        return Aimed(wanted[0], spoken(wanted[1]), chosen=True)

    def _leads_to(self, decision: Decision, wanted: Spot) -> bool:
        """Whether this comes before what is wanted: a step to it, or what rules put before others.

        The walk round the unit is no sign that no way leads to what was chosen.
        """
        rules = self.knowledge.procedures.values()
        before = {t for r in rules for t in (*r.first_on_the_roof, *r.save_before_power_cut)}
        on_the_way = decision.aim is not None and decision.aim[0] in before
        return decision.aim == wanted or (on_the_way and self.state.aim == wanted)

    def _wanted(self) -> Spot | None:
        found = self.concluded()
        if found.causes[0].probability >= NAMED:
            return None
        done = {(r.test, r.at) for r in found.readings} | self.state.skipped
        return next((spot for spot in self._waiting if spot not in done), None)


def _listed(
    reasoner: Reasoner, facts: Mapping[str, object], complaint: Complaint
) -> Iterator[Spot]:
    unit = read_unit(reasoner.knowledge, facts)
    hypotheses, _ = reasoner.hypotheses(unit)
    names = list(complaint.first_tests)
    for fault in complaint.faults:
        for item in reasoner.knowledge.faults[fault].evidence:
            if item.grade in ("almost-always", "often"):
                names += [finding.test for finding in item.findings]
    for name in dict.fromkeys(names):
        test = hypotheses.tests.get(name)
        if test is not None and test.kind not in ("step", "input") and test.outcomes:
            yield from ((test.id, place) for place in unit.layout.places(test.per))
