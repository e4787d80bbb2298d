"""Simulated visits from the rule base's own tables: minutes, wrong calls, calibration.

A fault is drawn by how common it is, its outcomes from its rows with report errors, and the visit
is led by the engine's own choice of tests, or by a fixed checklist for comparison. The tables judge
themselves here: the figures say how well the search uses what the rules know, not whether the rules
are right.
"""

from __future__ import annotations

import math
import random
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from troubleshoot.knowledge.model import Complaint, Test
from troubleshoot.reasoning.answers import Answer, Case
from troubleshoot.reasoning.asking import Asking
from troubleshoot.reasoning.choosing import choose
from troubleshoot.reasoning.conclude import Conclusions, Reasoner
from troubleshoot.reasoning.equipment import Unit
from troubleshoot.reasoning.hypotheses import Hypotheses, Hypothesis
from troubleshoot.reasoning.look_again import worth_repeating
from troubleshoot.reasoning.next_test import NAMED
from troubleshoot.reasoning.places import Place
from troubleshoot.reasoning.readings import report_error
from troubleshoot.reasoning.rows import NONE_OF_THEM, Row, pattern_row
from troubleshoot.reasoning.weighing import complaint_weight

LONGEST = 40
"""Tests after which a simulated visit is called off."""
SWITCH = {"any": 0.0, "running": 5.0, "running-open": 8.0, "energised-open": 10.0}
TO_LOCKED_OUT = 20.0
"""Minutes to change into a work state from another one (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Visit:
    """One simulated visit: the true fault, the first call, its chance, and what it cost.

    `among_faults`: the chance of the call given that one of the rules' faults is there, as it
    always is in a simulated visit; it is what calibration is judged by.
    """

    truth: str
    call: str
    chance: float
    among_faults: float
    minutes: float
    tests: int

    @property
    def right(self) -> bool:
        return self.truth == self.call


Next = Callable[[Conclusions, str], tuple[Test, Place | None, float] | None]
"""Chooses the next test from what is concluded and the work state, with its minutes."""


def switch_cost(now: str, wanted: str) -> float:
    """Minutes from one work state to another."""
    if wanted in ("any", now):
        return 0.0
    return SWITCH.get(wanted, TO_LOCKED_OUT)


class FaultyUnit:
    """A unit with one fault, whose outcomes are thrown from the rule base's own rows."""

    def __init__(self, hypotheses: Hypotheses, truth: Hypothesis, dice: random.Random) -> None:
        self.hypotheses = hypotheses
        self.truth = truth
        self.dice = dice
        self._thrown: dict[tuple[str, Place | None], str] = {}

    def report(self, test: Test, place: Place | None) -> tuple[str, ...]:
        """What a person reports: as thrown, but wrong with the chance of a report error."""
        row = self._row(test, place)
        names = list(row)
        if (test.id, place) not in self._thrown:
            thrown = self.dice.choices(names, [row[name] for name in names])[0]
            self._thrown[test.id, place] = thrown
        outcome = self._thrown[test.id, place]
        if self.dice.random() < report_error(test) and len(names) > 1:
            outcome = self.dice.choice([name for name in names if name != outcome])
        if outcome == NONE_OF_THEM:
            return test.healthy[:1]
        return (outcome,)

    def _row(self, test: Test, place: Place | None) -> Row:
        """The row of the fault where it speaks, given what it has shown; else the background."""
        if not self._speaks(place):
            return pattern_row(self.hypotheses.background(test.id))
        group = self.truth.picture.grouped(test.id)
        if group is None:
            return pattern_row(self.hypotheses.row(self.truth.picture, test.id))
        others = {t: {outcome: 1.0} for (t, at), outcome in self._thrown.items()
                  if t in group.tests and t != test.id and self._speaks(at)}  # fmt: skip
        return group.row_given(test.id, others)

    def _speaks(self, place: Place | None) -> bool:
        return self.hypotheses.unit.layout.speaks_about(place, self.truth.at)


def simulate(
    reasoner: Reasoner,
    unit: Unit,
    truth: Hypothesis,
    complaint: Complaint | None,
    dice: random.Random,
    next_of: Next,
) -> Visit:
    """One visit to a unit that has this fault."""
    faulty = FaultyUnit(reasoner.hypotheses(unit)[0], truth, dice)
    case = Case(unit, complaint.id if complaint else None)
    minutes, state = 0.0, "any"
    while len(case.answers) < LONGEST:
        found = reasoner.conclude(case)
        chosen = next_of(found, state)
        if chosen is None:
            break
        test, place, cost = chosen
        minutes += cost + switch_cost(state, test.work_state)
        state = state if test.work_state == "any" else test.work_state
        answer = Answer(test.id, faulty.report(test, place), places=(place,))
        case = replace(case, answers=(*case.answers, answer))
    causes = reasoner.conclude(case).causes
    top, faults = causes[0], math.fsum(c.probability for c in causes)
    return Visit(
        truth.fault.id,
        top.fault.id,
        top.probability,
        top.probability / faults,
        minutes,
        len(case.answers),
    )


def engine_choice(reasoner: Reasoner, unit: Unit) -> Next:
    """The engine's own choice of the next test."""
    hypotheses, _ = reasoner.hypotheses(unit)
    asking = Asking(reasoner.knowledge, unit, hypotheses.tests.values())

    def next_of(found: Conclusions, state: str) -> tuple[Test, Place | None, float] | None:
        def switch(test: Test, place: Place | None) -> float:
            return switch_cost(state, test.work_state)

        done = frozenset((r.test, r.at) for r in found.readings)
        offered = found.candidates(
            done,
            lambda test, place: asking.asks(test, place, found.values),
            switch,
        )
        chosen = choose(offered, found.ranking, found.first_tests)
        if chosen is None:
            again = worth_repeating(found.hypotheses, found.ranking, found.seen, switch)
            chosen = again[0] if again else None
        return None if chosen is None else (chosen.test, chosen.at, chosen.minutes)

    return next_of


def checklist(reasoner: Reasoner, unit: Unit, complaint: Complaint) -> Next:
    """A fixed list: the complaint's first tests, then each listed fault's, until one is named."""
    waiting = _listed(reasoner, unit, complaint)

    def next_of(found: Conclusions, state: str) -> tuple[Test, Place | None, float] | None:
        if found.causes[0].probability >= NAMED:
            return None
        done = {(r.test, r.at) for r in found.readings}
        for test, place in waiting:
            if (test.id, place) not in done:
                return test, place, test.minutes
        return None

    return next_of


def _listed(
    reasoner: Reasoner, unit: Unit, complaint: Complaint
) -> Iterator[tuple[Test, Place | None]]:
    hypotheses, _ = reasoner.hypotheses(unit)
    names = list(complaint.first_tests)
    for fault in complaint.faults:
        for item in reasoner.knowledge.faults[fault].evidence:
            if item.grade in ("almost-always", "often"):
                names += [finding.test for finding in item.findings]
    for name in dict.fromkeys(names):
        test = hypotheses.tests.get(name)
        if test is not None and test.kind not in ("step", "input") and test.outcomes:
            yield from ((test, place) for place in unit.layout.places(test.per))


def draw(
    reasoner: Reasoner, unit: Unit, visits: int, seed: int
) -> Iterator[tuple[Hypothesis, Complaint]]:
    """Faults by how common they are, each with a call that lists it, as likely as the rules say.

    Every complaint is taken to be as frequent as any other.
    """
    dice = random.Random(seed)
    hypotheses, _ = reasoner.hypotheses(unit)
    listed: dict[str, dict[str, float]] = {}
    for complaint in reasoner.knowledge.complaints.values():
        for fault in (*complaint.faults, *complaint.also):
            weight = math.exp(complaint_weight(complaint, fault))
            listed.setdefault(fault, {})[complaint.id] = weight
    able = [h for h in hypotheses.causes if h.fault.id in listed]
    for truth in dice.choices(able, [h.prior for h in able], k=visits):
        calls = listed[truth.fault.id]
        (name,) = dice.choices(list(calls), list(calls.values()))
        yield truth, reasoner.knowledge.complaints[name]
