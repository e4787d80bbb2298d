"""A grade moved one word: the same units, visited both ways."""

from __future__ import annotations

import random
from collections.abc import Callable

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.measure import sensitivity as module
from troubleshoot.measure.sensitivity import OneGrade, SteadyUnit, all_grades, sensitivity
from troubleshoot.reasoning.conclude import Reasoner

COIL = "contactor-coil-open"


def of_coil(knowledge: Knowledge) -> list[OneGrade]:
    return [each for each in all_grades(knowledge) if each.fault.id == COIL]


def test_every_grade_of_a_cause_that_is_called_for_may_be_drawn(shipped: Knowledge) -> None:
    assert len(of_coil(shipped)) == len(shipped.faults[COIL].evidence)
    drawn = {each.fault.id for each in all_grades(shipped)}
    assert not any(shipped.faults[name].is_effect for name in drawn)


def test_a_unit_shows_the_same_in_whatever_order_it_is_looked_at(shipped: Knowledge) -> None:
    reasoner = Reasoner(shipped)
    grade = of_coil(shipped)[0]
    facts = grade.units[0]
    first = SteadyUnit(reasoner, facts, _own(reasoner, grade), 3)
    tests = [
        name for name in first.truth.picture.cells if first.truth.picture.grouped(name) is None
    ]
    seen = {name: first.report(shipped.tests[name], first.truth.at) for name in tests}
    random.Random(1).shuffle(tests)
    again = SteadyUnit(reasoner, facts, _own(reasoner, grade), 3)
    assert {name: again.report(shipped.tests[name], again.truth.at) for name in tests} == seen


def _own(reasoner: Reasoner, grade: OneGrade) -> module.Hypothesis:
    unit = module.read_unit(reasoner.knowledge, grade.units[0])
    return next(h for h in reasoner.hypotheses(unit)[0].causes if h.fault.id == COIL)


def test_a_grade_that_stays_as_it_is_changes_nothing(
    shipped: Knowledge, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(module, "MOVED", {grade: grade for grade in module.MOVED})
    (found,) = sensitivity(shipped, of_coil(shipped)[:1], 2, 1)
    assert (found.changed, found.minutes, found.visits) == (0, 0.0, 2)


def test_the_sample_is_told(command: Callable[..., tuple[int, str, str]]) -> None:
    code, out, err = command("rules", "measure", "--sensitivity", "1", "--visits", "1")
    assert code == 0 and err.startswith("1 of 1: ")
    assert "1 of 1" in out.splitlines()[0] and "drawn by lot (seed 1)" in out.splitlines()[0]
