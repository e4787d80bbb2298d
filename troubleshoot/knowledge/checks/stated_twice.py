"""One cell that is graded twice.

What: within one card, or one picture or override of it, the same outcome of a test has two
grades, or the same finding given the same readings has two grades.
Why: only one of them can count, and nobody can tell which was meant.
Fix: keep one. What differs by kind of unit goes into `overrides`.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Fault, Given
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase, Scope, evidence_steps

ID: Final = "stated-twice"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every second grade on a cell."""
    for fault in base.knowledge.faults.values():
        for scope in base.scopes(fault):
            yield from _single(base, fault, scope)
            yield from _given(base, fault, scope)


def _single(base: RuleBase, fault: Fault, scope: Scope) -> Iterator[Problem]:
    seen: dict[tuple[str, str], str] = {}
    for number, item in enumerate(scope.evidence):
        if len(item.findings) > 1:
            continue
        finding = item.findings[0]
        for outcome in finding.outcomes:
            first = seen.setdefault((finding.test, outcome), item.grade)
            if first is not item.grade or finding.outcomes.count(outcome) > 1:
                what = f"{finding.test}: {outcome} is graded twice, {first} and {item.grade}"
                steps = (*scope.steps, *evidence_steps(scope.evidence, number))
                yield base.problem(ID, ("fault", fault.id), steps, what, "keep one grade")


def _given(base: RuleBase, fault: Fault, scope: Scope) -> Iterator[Problem]:
    entry = ("fault", fault.id)
    seen: set[object] = set()
    for number, item in enumerate(scope.given):
        steps = (*scope.steps, "given", number)
        if item.finding.test in {finding.test for finding in item.given}:
            what = f"{item.finding.test} is graded given itself"
            yield base.problem(ID, entry, steps, what, "name other tests under given")
        for cell in _cells(item):
            if cell in seen:
                what = f"{item.finding.test} is graded twice given the same readings"
                yield base.problem(ID, entry, steps, what, "keep one grade")
                break
        seen.update(_cells(item))


def _cells(item: Given) -> Iterator[tuple[str, str, frozenset[object]]]:
    given = frozenset((f.test, frozenset(f.outcomes)) for f in item.given)
    for outcome in item.finding.outcomes:
        yield item.finding.test, outcome, given
