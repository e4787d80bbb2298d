"""Grades on one test that cannot all be true.

What: the outcomes of a pick-one test exclude each other, so the chances that a card gives them
cannot add up to more than one. Where even the low ends of the grades' bands pass one, that is an
error. Where the grades pass 0.98 as they are reckoned, the program scales them, and says so here.
The other way round, grades on all outcomes whose high ends stay under one leave nothing likely.
What a card says of one test given the same readings cannot be scaled: it passes one as reckoned.
Why: "often" beside "often" on two outcomes of one test contradicts itself, and the scaled numbers
are not what the author meant.
Fix: grade the outcomes together as a list where either may show, or lower the weaker one.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Final

from troubleshoot.knowledge.model import Evidence, Fault, Given, Test
from troubleshoot.knowledge.problems import Level, Problem
from troubleshoot.knowledge.rule_base import RuleBase, Scope
from troubleshoot.knowledge.variants import holds, variants
from troubleshoot.knowledge.vocabulary import BANDS, MOST_OF_A_ROW, PROBABILITY, Grade

ID: Final = "grade-sums"

Graded = tuple[Grade, tuple[str, ...]]
"""How often a card says that one of these outcomes shows."""

_HAIR: Final = 1e-9


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every set of grades that adds up to too much or too little."""
    for fault in base.knowledge.faults.values():
        for scope in base.scopes(fault):
            for name, items in _by_test(scope.all_evidence).items():
                test = base.knowledge.tests[name]
                if test.choose == "one":
                    yield from _judge(base, fault, scope, "evidence", test, items)
            for (name, _), items in _by_readings(scope.given).items():
                test = base.knowledge.tests[name]
                yield from _judge(base, fault, scope, "given", test, _excluding(test, items))


def _judge(
    base: RuleBase, fault: Fault, scope: Scope, key: str, test: Test, items: list[Graded]
) -> Iterator[Problem]:
    """Judge the grades on one test, on each kind of unit that its outcomes tell apart."""
    conditions = [outcome.exists_when for outcome in test.outcomes]
    where = f" ({scope.name})" if scope.name else ""
    for variant in variants(base.knowledge, conditions, scope.on):
        here = {o.id for o in test.outcomes if holds(o.exists_when, variant)}
        found = _contradiction([(grade, here & set(told)) for grade, told in items], here, key)
        if found is not None:
            what, instead, level = found
            together = " given the same readings" if key == "given" else ""
            what = f"the grades on {test.id}{together}{where} {what}"
            steps = (*scope.steps, key)
            yield base.problem(ID, ("fault", fault.id), steps, what, instead, level)
            return


def _contradiction(
    graded: list[tuple[Grade, set[str]]], here: set[str], key: str
) -> tuple[str, str, Level] | None:
    """What is wrong with the grades on the outcomes that a unit can show, or None."""
    grades = [grade for grade, outcomes in graded if outcomes]
    all_graded = here == {outcome for _, outcomes in graded for outcome in outcomes}
    total = sum(PROBABILITY[grade] for grade in grades)
    least = total if key == "given" else sum(BANDS[grade][0] for grade in grades)
    if least > 1 + _HAIR:
        return "cannot all be true: they pass 100 %", "make one list of them, or lower one", "error"
    if all_graded and sum(BANDS[grade][1] for grade in grades) < 1 - _HAIR:
        return "leave no outcome likely", "raise one, or leave one without a grade", "error"
    if not all_graded and total > MOST_OF_A_ROW + _HAIR:
        what = f"add up to {total:.2f} and are scaled to {MOST_OF_A_ROW}"
        return what, "make one list of them, or lower one, to have them as written", "notice"
    return None


def _excluding(test: Test, items: list[Graded]) -> list[Graded]:
    """Grades of outcomes that exclude each other: of signs the likeliest, and what is sound."""
    if test.choose == "one":
        return items
    sound = [item for item in items if set(item[1]) <= set(test.healthy)]
    signs = [item for item in items if item not in sound]
    return [*sound, *sorted(signs, key=lambda item: -BANDS[item[0]][0])[:1]]


def _by_test(evidence: tuple[Evidence, ...]) -> Mapping[str, list[Graded]]:
    """The grades of outcomes of a single test, by test."""
    found: dict[str, list[Graded]] = {}
    for item in evidence:
        if len(item.findings) == 1:
            finding = item.findings[0]
            found.setdefault(finding.test, []).append((item.grade, finding.outcomes))
    return found


def _by_readings(given: tuple[Given, ...]) -> Mapping[tuple[str, object], list[Graded]]:
    """The grades of outcomes of a test, by it and by the readings that they are given with."""
    found: dict[tuple[str, object], list[Graded]] = {}
    for item in given:
        readings = frozenset((f.test, frozenset(f.outcomes)) for f in item.given)
        told = (item.grade, item.finding.outcomes)
        found.setdefault((item.finding.test, readings), []).append(told)
    return found
