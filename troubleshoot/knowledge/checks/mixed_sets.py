"""A grade on a healthy outcome and a bad one together.

What: a list under sometimes, often or almost-always names the healthy outcome of a test beside
others.
Why: a grade on a list is shared out as the outcomes are on a sound unit, where the healthy one
takes nearly all: the bad outcome beside it would say nothing.
Fix: grade the bad outcome by itself. The healthy one needs a grade only where it is seldom or
never seen.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Fault
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase, Scope, evidence_steps

ID: Final = "mixed-sets"

_SPEAKS_FOR: Final = frozenset({"sometimes", "often", "almost-always"})


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every list in which a healthy outcome drowns the others."""
    for fault in base.knowledge.faults.values():
        for scope in base.scopes(fault):
            yield from _in_scope(base, fault, scope)


def _in_scope(base: RuleBase, fault: Fault, scope: Scope) -> Iterator[Problem]:
    for number, item in enumerate(scope.evidence):
        for finding in item.findings if item.grade in _SPEAKS_FOR else ():
            healthy = base.knowledge.tests[finding.test].healthy
            drowned = [o for o in finding.outcomes if o not in healthy]
            if 0 < len(drowned) < len(finding.outcomes):
                bad = ", ".join(drowned)
                what = f"{finding.test}: {bad} is graded together with a healthy outcome"
                steps = (*scope.steps, *evidence_steps(scope.evidence, number))
                yield base.problem(ID, ("fault", fault.id), steps, what, f"grade {bad} by itself")
