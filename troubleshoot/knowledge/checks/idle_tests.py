"""A test that nothing uses.

What: no fault grades the test, and no complaint, hazard, procedure or point of the round names
it; or a typed quantity serves no limit and no formula.
Why: it would never be offered, or would cost minutes for nothing.
Fix: grade it in a fault card, put it on the round, or delete it and retire its id.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Fault, Finding, Knowledge, Test
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase

ID: Final = "idle-tests"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every test that is named nowhere; safety steps are always needed."""
    tests_in_use = used_tests(base.knowledge)
    quantities_in_use = used_quantities(base.knowledge)
    for test in base.knowledge.tests.values():
        if test.kind == "step" or test.id in tests_in_use:
            continue
        if any(read.quantity in quantities_in_use for read in test.reads) and _only_reads(test):
            continue
        what = f"no fault, complaint, hazard, procedure or round uses {test.id}"
        yield base.problem(ID, ("test", test.id), ("id",), what, "grade it in a card, or delete it")


def used_tests(knowledge: Knowledge) -> frozenset[str]:
    """The tests whose outcomes something else leans on, or that something else asks for."""
    used: set[str] = set()
    for fault in knowledge.faults.values():
        used.update(finding.test for finding in _findings_of(fault))
    for complaint in knowledge.complaints.values():
        used.update(complaint.first_tests, (complaint.all_clear or "",))
    for hazard in knowledge.hazards.values():
        for trigger in hazard.triggers:
            used.update(finding.test for finding in trigger.findings)
    for rule in knowledge.procedures.values():
        used.update(rule.look_first, rule.first_on_the_roof, rule.save_before_power_cut)
        used.update(finding.test for finding in rule.when.findings)
    for point in knowledge.round_points.values():
        used.update(point.tests)
    return frozenset(used)


def used_quantities(knowledge: Knowledge) -> frozenset[str]:
    """The quantities that a limit or a formula takes."""
    used: set[str] = set()
    for test in knowledge.tests.values():
        for outcome in test.outcomes:
            for line in outcome.limits:
                for bound in line.bounds:
                    used.update((bound.quantity, bound.relative_to or ""))
    for quantity in knowledge.quantities.values():
        used.update(name for way in quantity.computed for name in way.inputs)
    for limit in knowledge.limits.values():
        used.update(bound.quantity for bound in limit.bounds)
    used.update(alarm.quantity for alarm in knowledge.drift_alarms.values())
    return frozenset(used)


def _only_reads(test: Test) -> bool:
    return test.kind == "input"


def _findings_of(fault: Fault) -> Iterator[Finding]:
    for evidence, given in (
        (fault.evidence, fault.given),
        *((picture.evidence, picture.given) for picture in (*fault.overrides, *fault.pictures)),
    ):
        for item in evidence:
            yield from item.findings
        for statement in given:
            yield from (statement.finding, *statement.given)
    yield from (proof.finding for proof in fault.proof if proof.finding is not None)
