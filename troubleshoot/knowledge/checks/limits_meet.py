"""Limits that overlap, or leave a gap.

What: on some kind of unit a number fits two outcomes of a pick-one test, or none. Where one
quantity decides that is an error; where several do it is a notice, for not every mix of numbers
can be met on a roof.
Why: of two outcomes the first in the list would win without a word, and a number in a gap could
not be judged.
Fix: let one limit include the number at which they meet (at-most 5) and the other not (above 5).
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import FactsNeeded, Test
from troubleshoot.knowledge.problems import Level, Problem
from troubleshoot.knowledge.rule_base import RuleBase
from troubleshoot.knowledge.trying_limits import (
    Line,
    Point,
    lacks_a_comparison,
    lines_here,
    numeric_outcomes,
    outcomes_at,
    points,
    usual_size,
)
from troubleshoot.knowledge.variants import Variant, spoken, variants

ID: Final = "limits-meet"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield the first overlap of each two outcomes, and the first gap, of each test."""
    for test in base.knowledge.tests.values():
        if test.choose == "one" and len(numeric_outcomes(test)) > 1:
            yield from _of_test(base, test)


def _of_test(base: RuleBase, test: Test) -> Iterator[Problem]:
    seen: set[tuple[str, ...]] = set()
    for variant in variants(base.knowledge, _conditions(test), (test.exists_when,)):
        lines = lines_here(test, variant)
        open_ended = lacks_a_comparison(test, variant)
        for point in points(base.knowledge, lines):
            found = tuple(outcomes_at(lines, point)[:2])
            if len(found) == 1 or found in seen or (open_ended and not found):
                continue
            seen.add(found)
            yield _problem(base, test, lines, variant, point, found)


def _problem(
    base: RuleBase,
    test: Test,
    lines: list[Line],
    variant: Variant,
    point: Point,
    found: tuple[str, ...],
) -> Problem:
    at = ", ".join(f"{name} {number:g}" for name, number in point.items())
    references = {b.relative_to for line in lines for b in line.bounds if b.relative_to}
    sizes = ", ".join(f"{name} {usual_size(name):g}" for name in sorted(references))
    where = (f" against {sizes}" if sizes else "") + (
        f" where {spoken(variant)}" if variant else ""
    )
    level: Level = "error" if len(point) == 1 else "notice"
    entry = ("test", test.id)
    if not found:
        what = f"no outcome of {test.id} fits {at}{where}"
        return base.problem(ID, entry, ("outcomes",), what, "let two limits meet", level)
    number = [outcome.id for outcome in test.outcomes].index(found[1])
    what = f"{found[0]} and {found[1]} both fit {at}{where}"
    steps = ("outcomes", number, "limits")
    return base.problem(ID, entry, steps, what, "let only one include the number", level)


def _conditions(test: Test) -> Iterator[FactsNeeded]:
    for outcome in test.outcomes:
        yield outcome.exists_when
        for line in outcome.limits:
            yield line.when
            yield from (bound.when for bound in line.bounds)
