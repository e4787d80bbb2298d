"""Too many tests joined into one group.

What: `given` and `any-of` join tests into a group that is weighed by one joint table. A card, or
a picture of it, joins more than four.
Why: the table of a larger group cannot be filled from what anybody knows, and is slow.
Fix: make a derived finding of the chain, in a procedure rule, and grade that.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase, Scope

ID: Final = "given-groups"

_MOST_TESTS: Final = 4


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every group of more than four tests."""
    for fault in base.knowledge.faults.values():
        for scope in base.scopes(fault):
            for group in groups(scope):
                if len(group) > _MOST_TESTS:
                    what = f"{len(group)} tests hang together: " + ", ".join(sorted(group))
                    steps = (*scope.steps, "given")
                    instead = f"join {_MOST_TESTS} at most; derive a finding in a procedure"
                    yield base.problem(ID, ("fault", fault.id), steps, what, instead)


def groups(scope: Scope) -> list[frozenset[str]]:
    """The sets of tests that the statements of a scope join, directly or through others."""
    joined: list[frozenset[str]] = []
    links = [
        *(frozenset(f.test for f in (item.finding, *item.given)) for item in scope.all_given),
        *(frozenset(f.test for f in item.findings) for item in scope.all_evidence),
    ]
    for link in links:
        touching = [group for group in joined if group & link]
        joined = [group for group in joined if not group & link]
        joined.append(link.union(*touching))
    return [group for group in joined if len(group) > 1]
