"""A test whose healthy outcome, severity or background contradicts itself.

What: a chain of severity holds the healthy outcome; the background chances of a pick-one test
pass one; a test that judges has no outcome at all.
Why: the chance of each outcome is reckoned from these, and would come out wrong in silence.
Fix: leave the healthy outcome out of the chains; let the background chances add up to one or
less; give the test its outcomes, or make it an input.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Test
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase, Steps

ID: Final = "rows-of-tests"

_HAIR: Final = 1e-9


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every contradiction in a test's own row."""
    for test in base.knowledge.tests.values():
        for steps, what, instead in _contradictions(test):
            yield base.problem(ID, ("test", test.id), steps, f"{test.id} {what}", instead)


def _contradictions(test: Test) -> Iterator[tuple[Steps, str, str]]:
    if test.kind == "input":
        if test.outcomes:
            yield ("outcomes",), "is an input with outcomes", "write outcomes: []"
        if len(test.reads) != 1 or test.reads[0].quantity != test.id:
            yield ("reads",), "is an input that reads another quantity", f"read {test.id} alone"
    elif not test.outcomes:
        yield ("outcomes",), "has no outcomes", "list them, or make it an input"
    for number, chain in enumerate(test.severity):
        healthy = [outcome for outcome in chain if outcome in test.healthy]
        if healthy:
            what = f"has the healthy outcome {healthy[0]} in a chain of severity"
            yield ("severity", number), what, "keep to bad outcomes of one side"
    if test.choose == "one" and sum(test.background.values()) > 1 + _HAIR:
        yield ("background",), "has background chances that pass 1", "let them add up to 1 or less"
    if len(test.healthy) == len(test.outcomes) > 0 and test.kind != "step":
        yield ("healthy",), "calls every outcome healthy", "leave out those that are not"
