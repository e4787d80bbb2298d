"""A rule that takes a safety reading away.

What: a procedure's `void` names a safety step or a sweep: the proof of the meter, a lock, a test
for dead, a bleed, the sweep for gas or refrigerant, the carbon monoxide of the room.
Why: such a reading stands or falls by the order of work alone. A rule, least of all a pack's, may
not say that a finding of gas weighs nothing. One thing does take such readings with it: the failed
proof of the meter that they were made with.
Fix: leave it out. Where a reading is doubtful, let `look-first` ask for it again.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Finding, Procedure, Test
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase

ID: Final = "safety-readings"

_AREA: Final = "safety"
_FAILED_PROOF: Final = Finding("tester-proof", ("failed",))


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every safety reading that a procedure voids."""
    for rule in base.knowledge.procedures.values():
        for number, name in enumerate(rule.void.tests if rule.void else ()):
            test = base.knowledge.tests[name]
            if protects(test) and not _by_failed_meter(rule, test):
                steps = ("then", "void", "tests", number)
                what = f"{rule.id} voids {name}, which protects a person"
                yield base.problem(ID, ("procedure", rule.id), steps, what, "leave it out")


def protects(test: Test) -> bool:
    """Whether a test is a safety step, or one of the sweeps that stand among them."""
    return test.kind == "step" or test.area == _AREA


def _by_failed_meter(rule: Procedure, test: Test) -> bool:
    """Whether the rule speaks of nothing but a failed meter, and the test is made with one."""
    return rule.when.finding == _FAILED_PROOF and "meter-proved" in test.needs_state
