"""Tests that wait for each other.

What: `after` leads from a test back to itself.
Why: none of them could come first.
Fix: leave one of the steps out.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase

ID: Final = "order-of-tests"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every test that waits for itself."""
    for test in base.knowledge.tests.values():
        if test.id in _before(base.knowledge, test.id):
            what = f"{test.id} comes after itself, by way of " + ", ".join(test.after)
            yield base.problem(ID, ("test", test.id), ("after",), what, "leave one step out")


def _before(knowledge: Knowledge, test: str) -> frozenset[str]:
    """Every test that must come before a test, directly or by way of others."""
    found: set[str] = set()
    ahead = list(knowledge.tests[test].after)
    while ahead:
        one = ahead.pop()
        if one not in found:
            found.add(one)
            ahead.extend(knowledge.tests[one].after)
    return frozenset(found)
