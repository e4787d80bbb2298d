"""A when / then rule that can never hold.

What: its condition demands two outcomes of one pick-one test at once, or more parts than it
lists; or it waits for a finding that can only follow from itself.
Why: the rule would never speak, and nobody would notice.
Fix: put outcomes of one test into one list, correct the count, or break the circle.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Final

from troubleshoot.knowledge.model import Condition, Knowledge, Procedure
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase

ID: Final = "idle-procedures"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every rule whose condition cannot hold."""
    reached = reachable(base.knowledge.procedures)
    for rule in base.knowledge.procedures.values():
        for what, instead in _impossible(base.knowledge, rule.when):
            yield base.problem(
                ID, ("procedure", rule.id), ("when",), f"{rule.id} can never hold: {what}", instead
            )
        if rule.id not in reached:
            what = f"{rule.id} waits for a finding that only follows from itself"
            yield base.problem(ID, ("procedure", rule.id), ("when",), what, "break the circle")


def reachable(procedures: Mapping[str, Procedure]) -> frozenset[str]:
    """The rules whose derived findings can be had, starting from what people answer."""
    reached: set[str] = set()
    derived: set[str] = set()
    while True:
        new = {
            rule.id
            for rule in procedures.values()
            if rule.id not in reached and _can_hold(rule.when, derived)
        }
        if not new:
            return frozenset(reached)
        reached |= new
        derived |= {rule.derives for rule in procedures.values() if rule.id in new and rule.derives}


def _can_hold(condition: Condition, derived: set[str]) -> bool:
    if condition.op == "derived":
        return condition.name in derived
    parts = [_can_hold(part, derived) for part in condition.parts]
    if condition.op == "all":
        return all(parts)
    if condition.op == "any":
        return any(parts)
    if condition.op == "at-least":
        return sum(parts) >= condition.count
    return True


def _impossible(knowledge: Knowledge, condition: Condition) -> Iterator[tuple[str, str]]:
    if condition.op == "at-least" and condition.count > len(condition.parts):
        yield f"{condition.count} of {len(condition.parts)} parts", "lower the count"
    if condition.op == "all":
        wanted: dict[str, set[str]] = {}
        for part in condition.parts:
            finding = part.finding
            if finding is None or knowledge.tests[finding.test].choose == "several":
                continue
            left = wanted.setdefault(finding.test, set(finding.outcomes)) & set(finding.outcomes)
            if not left:
                yield f"{finding.test} cannot read two outcomes", "put them into one list"
            wanted[finding.test] = left
    for part in condition.parts:
        yield from _impossible(knowledge, part)
