"""Which grade, moved one word, changes first calls or minutes most: the same visits led both ways.

A grade is moved as a slip of the pen would, to the word below it. The units are drawn from the
rules as they are, half with the card's own fault and half with others that bring one of its calls,
and are visited twice: led by these rules, and by those with the grade moved. What a unit shows is
thrown for each test by itself, so that two visits which look at the same see the same.

There are two thousand grades and a visit takes a third of a second, so grades are sampled, each
with the same chance. A few visits tell of one grade coarsely, and of the sample as a whole.
"""

from __future__ import annotations

import random
from collections.abc import Iterator, Mapping, Sequence
from statistics import fmean

from troubleshoot.authoring.mutating import MOVED, with_card, with_grade
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Complaint, Evidence, Fault, Knowledge, Test
from troubleshoot.knowledge.vocabulary import Grade
from troubleshoot.measure.faulty_unit import FaultyUnit
from troubleshoot.measure.simulated import SimulatedVisit, Visit
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.evidence.hypotheses import Hypothesis
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.reasoning.unit.places import Place


@frozen
class OneGrade:
    """A grade of a card, and whom it is tried on. `units`: facts of those that can have the fault;
    `calls`: those that bring it.
    """

    fault: Fault
    number: int
    units: tuple[Mapping[str, object], ...]
    calls: tuple[Complaint, ...]

    @property
    def item(self) -> Evidence:
        return self.fault.evidence[self.number]

    @property
    def becomes(self) -> Grade:
        return MOVED[self.item.grade]


@frozen
class Sensitivity:
    """What one grade moved by a word changes.

    `minutes`: longer on the mean; `changed`: first calls that became others, of which `better` are
    right now and `worse` were.
    """

    grade: OneGrade
    visits: int
    minutes: float
    changed: int
    better: int
    worse: int


class SteadyUnit(FaultyUnit):
    """A unit that shows the same to whoever looks at the same, in whatever order."""

    def __init__(self, reasoner: Reasoner, facts: Mapping[str, object], truth: Hypothesis, n: int):
        hypotheses, _ = reasoner.hypotheses(read_unit(reasoner.knowledge, facts))
        super().__init__(hypotheses, truth, random.Random(n))
        self._number = n

    def report(self, test: Test, place: Place | None) -> tuple[str, ...]:
        """What a person reports, by dice of its own."""
        self.dice = random.Random(f"{self._number} {test.id} {place}")
        return super().report(test, place)


def all_grades(knowledge: Knowledge) -> list[OneGrade]:
    """Every grade of a cause that a call brings on a unit that is measured on."""
    typical = [each for each in knowledge.typical_units.values() if each.serves == "measuring"]
    units = [(each.unit, read_unit(knowledge, each.unit)) for each in typical]
    found = []
    for fault in knowledge.faults.values():
        calls = tuple(call for call in knowledge.complaints.values() if fault.id in call.faults)
        here = tuple(facts for facts, unit in units if unit.allows(fault.exists_when))
        if calls and here and not fault.is_effect:
            found += [OneGrade(fault, n, here, calls) for n in range(len(fault.evidence))]
    return found


def sensitivity(
    knowledge: Knowledge, grades: Sequence[OneGrade], visits: int, seed: int
) -> Iterator[Sensitivity]:
    """What each of these grades changes, moved one word."""
    now = Reasoner(knowledge)
    for grade in grades:
        moved = with_grade(grade.fault, grade.number, grade.becomes)
        then = Reasoner(with_card(knowledge, moved))
        dice = random.Random(f"{seed} {grade.fault.id} {grade.number}")
        pairs = [_led_both_ways(now, then, grade, number, dice) for number in range(visits)]
        changed = [(before, after) for before, after in pairs if before.call != after.call]
        yield Sensitivity(
            grade,
            visits,
            fmean(after.minutes - before.minutes for before, after in pairs),
            len(changed),
            sum(after.right for _, after in changed),
            sum(before.right for before, _ in changed),
        )


def _led_both_ways(
    now: Reasoner, then: Reasoner, grade: OneGrade, number: int, dice: random.Random
) -> tuple[Visit, Visit]:
    """One unit, visited by the rules as they are and by those with the grade moved."""
    facts = grade.units[number % len(grade.units)]
    call = dice.choice(grade.calls)
    hypotheses, _ = now.hypotheses(read_unit(now.knowledge, facts))
    bringing = [each for each in hypotheses.causes if each.fault.id in call.faults]
    own = [each for each in bringing if each.fault.id == grade.fault.id]
    among = own if own and dice.random() < 0.5 else bringing
    (truth,) = dice.choices(among, [each.prior for each in among])
    thrown = dice.getrandbits(32)
    before, after = (_visit(now, led, facts, truth, call, thrown) for led in (now, then))
    return before, after


def _visit(
    now: Reasoner,
    led: Reasoner,
    facts: Mapping[str, object],
    truth: Hypothesis,
    call: Complaint,
    thrown: int,
) -> Visit:
    visit = SimulatedVisit(led, facts, truth, call, random.Random(thrown))
    visit.faulty = SteadyUnit(now, facts, truth, thrown)
    return visit.visit()
