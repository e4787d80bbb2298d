"""A test that contradicts itself about power, or a step that takes a sign for safety.

What: live parts are said to be exposed although the unit is locked out, line voltage although the
panels are on, or nothing although it is open with the power on; or a safety step reads a number
that may be below zero, and not by its size.
Why: the order of work follows what the test says, and leads a person wrong where it cannot be true.
A meter with its leads swapped shows -340 V on what 340 V are on: under every limit, and deadly.
Fix: correct `work-state` or `exposes`; write `legs: size`.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase

ID: Final = "safe-tests"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every test that cannot be done as it says."""
    for test in base.knowledge.tests.values():
        for key, what, instead in _contradictions(test):
            yield base.problem(ID, ("test", test.id), (key,), f"{test.id} {what}", instead)
        for what in _signs(base.knowledge, test):
            yield base.problem(ID, ("test", test.id), ("reads",), what, "write legs: size")


def _contradictions(test: Test) -> Iterator[tuple[str, str, str]]:
    if test.exposes != "none" and test.work_state == "locked-out":
        yield "exposes", "exposes live parts though locked out", "write exposes: none"
    if test.exposes == "line" and test.work_state in ("any", "running"):
        what = "exposes line voltage with the panels on"
        yield "work-state", what, "write energised-open or running-open"
    if test.exposes == "none" and test.work_state in ("energised-open", "running-open"):
        what = "exposes nothing though it is open with the power on"
        yield "exposes", what, "write exposes: control or line"


def _signs(knowledge: Knowledge, test: Test) -> Iterator[str]:
    """What a safety step would find sound for being below zero."""
    for read in test.reads if test.kind == "step" else ():
        can_be = knowledge.quantities[read.quantity].can_be
        if read.legs != "size" and (can_be is None or can_be[0] < 0):
            yield f"{test.id} reads {read.quantity} by its sign"
