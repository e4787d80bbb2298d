"""Units with one fault, drawn from the rule base's own tables.

A fault is drawn by how common it is, its outcomes from its rows with report errors. The tables
judge themselves: figures from such units say how well the search uses what the rules know, not
whether the rules are right.
"""

from __future__ import annotations

import math
import random
from collections.abc import Iterator

from troubleshoot.knowledge.model import Complaint, Test
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.evidence.hypotheses import Hypotheses, Hypothesis
from troubleshoot.reasoning.evidence.outcome_chances import NONE_OF_THEM, Row, pattern_row
from troubleshoot.reasoning.evidence.weighing import complaint_weight
from troubleshoot.reasoning.readings.readings import report_error
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.places import Place


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
