"""Evidence that can never show.

What: a card grades an outcome that no unit with this fault can show, because the fault exists on
one kind of unit and the outcome, or the test, on another.
Why: a rule that can never fire misleads whoever reads it.
Fix: correct `exists-when` of the one or the other, or move the grade into an override.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Fault, Finding, Knowledge
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase, Scope, evidence_steps
from troubleshoot.knowledge.variants import holds, variants

ID: Final = "evidence-can-show"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every graded outcome that no unit with the fault can show."""
    for fault in base.knowledge.faults.values():
        for scope in base.scopes(fault):
            yield from _of_scope(base, fault, scope)


def _of_scope(base: RuleBase, fault: Fault, scope: Scope) -> Iterator[Problem]:
    for number, item in enumerate(scope.evidence):
        steps = (*scope.steps, *evidence_steps(scope.evidence, number))
        for finding in item.findings:
            for outcome in finding.outcomes:
                if not _can_show(base.knowledge, scope, Finding(finding.test, (outcome,))):
                    what = f"no unit with {fault.id} can show {finding.test}: {outcome}"
                    instead = "compare exists-when of the fault, the test and the outcome"
                    yield base.problem(ID, ("fault", fault.id), steps, what, instead)


def _can_show(knowledge: Knowledge, scope: Scope, finding: Finding) -> bool:
    test = knowledge.tests[finding.test]
    outcome = next(outcome for outcome in test.outcomes if outcome.id in finding.outcomes)
    needed = (test.exists_when, outcome.exists_when)
    if not any(needed):
        return True
    return any(
        all(holds(condition, variant) for condition in needed)
        for variant in variants(knowledge, needed, scope.on)
    )
