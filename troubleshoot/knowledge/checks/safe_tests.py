"""A test that contradicts itself about power.

What: live parts are said to be exposed although the unit is locked out, or line voltage although
the panels are on.
Why: the order of work follows what the test says, and leads a person wrong where it cannot be true.
Mend: correct `work-state` or `exposes`.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Test
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase

ID: Final = "safe-tests"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every test that cannot be done as it says."""
    for test in base.knowledge.tests.values():
        for key, what, instead in _contradictions(test):
            yield base.problem(ID, ("test", test.id), (key,), f"{test.id} {what}", instead)


def _contradictions(test: Test) -> Iterator[tuple[str, str, str]]:
    if test.exposes != "none" and test.work_state == "locked-out":
        yield "exposes", "exposes live parts though locked out", "write exposes: none"
    if test.exposes == "line" and test.work_state in ("any", "running"):
        what = "exposes line voltage with the panels on"
        yield "work-state", what, "write energised-open or running-open"
