"""Grades on one test that cannot all be true.

What: the outcomes of a pick-one test exclude each other, so the chances that a card gives them
cannot add up to more than one. Where even the low ends of the grades' bands pass one, that is an
error. Where the grades pass 0.98 as they are reckoned, the program scales them, and says so here.
The other way round, grades on all outcomes whose high ends stay under one leave nothing likely.
Why: "often" beside "often" on two outcomes of one test contradicts itself, and the scaled numbers
are not what the author meant.
Fix: grade the outcomes together as a list where either may show, or lower the weaker one.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Final

from troubleshoot.knowledge.model import Evidence, Fault, Test
from troubleshoot.knowledge.problems import Level, Problem
from troubleshoot.knowledge.rule_base import RuleBase, Scope
from troubleshoot.knowledge.variants import holds, variants
from troubleshoot.knowledge.vocabulary import BANDS, MOST_OF_A_ROW, PROBABILITY, Grade

ID: Final = "grade-sums"

_HAIR: Final = 1e-9


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every set of grades that adds up to too much or too little."""
    for fault in base.knowledge.faults.values():
        for scope in base.scopes(fault):
            for test_id, items in _by_test(scope.all_evidence).items():
                test = base.knowledge.tests[test_id]
                if test.choose == "one":
                    yield from _judge(base, fault, scope, test, items)


def _judge(
    base: RuleBase, fault: Fault, scope: Scope, test: Test, items: list[Evidence]
) -> Iterator[Problem]:
    """Judge the grades on one test, on each kind of unit that its outcomes tell apart."""
    conditions = [outcome.exists_when for outcome in test.outcomes]
    where = f" ({scope.name})" if scope.name else ""
    for variant in variants(base.knowledge, conditions, scope.on):
        here = {o.id for o in test.outcomes if holds(o.exists_when, variant)}
        found = _contradiction([(i.grade, here & set(i.findings[0].outcomes)) for i in items], here)
        if found is not None:
            what, instead, level = found
            what = f"the grades on {test.id}{where} {what}"
            steps = (*scope.steps, "evidence")
            yield base.problem(ID, ("fault", fault.id), steps, what, instead, level)
            return


def _contradiction(
    graded: list[tuple[Grade, set[str]]], here: set[str]
) -> tuple[str, str, Level] | None:
    """What is wrong with the grades on the outcomes that a unit can show, or None."""
    grades = [grade for grade, outcomes in graded if outcomes]
    all_graded = here == {outcome for _, outcomes in graded for outcome in outcomes}
    if sum(BANDS[grade][0] for grade in grades) > 1 + _HAIR:
        return "cannot all be true: they pass 100 %", "make one list of them, or lower one", "error"
    if all_graded and sum(BANDS[grade][1] for grade in grades) < 1 - _HAIR:
        return "leave no outcome likely", "raise one, or leave one without a grade", "error"
    total = sum(PROBABILITY[grade] for grade in grades)
    if not all_graded and total > MOST_OF_A_ROW + _HAIR:
        what = f"add up to {total:.2f} and are scaled to {MOST_OF_A_ROW}"
        return what, "make one list of them, or lower one, to have them as written", "notice"
    return None


def _by_test(evidence: tuple[Evidence, ...]) -> Mapping[str, list[Evidence]]:
    """The statements about a single test, by test."""
    found: dict[str, list[Evidence]] = {}
    for item in evidence:
        if len(item.findings) == 1:
            found.setdefault(item.findings[0].test, []).append(item)
    return found
