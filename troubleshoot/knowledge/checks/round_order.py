"""A point of the round out of its place.

What: two points have the same number, or the points do not stand in the order of their numbers;
a point has neither a test nor a limit.
Why: the round is walked in the same order every time.
Fix: number the points anew.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase

ID: Final = "round-order"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every point whose number does not follow."""
    last = 0
    for point in base.knowledge.round_points.values():
        entry = ("round point", point.id)
        if point.number <= last:
            what = f"{point.id} has the number {point.number} after {last}"
            yield base.problem(ID, entry, ("number",), what, "number the points in their order")
        last = point.number
        if not point.tests and not point.limit:
            what = f"{point.id} asks for nothing"
            yield base.problem(ID, entry, ("point",), what, "name its tests, or its limit in words")
