"""A number without a source.

What: an outcome with limits, a named limit, a relation, a drift alarm with a change, or a point of
the round with a limit has no source, and neither has its test or its file.
Why: every figure that people act on must be open to question; "common practice, no source" and
"from memory" are honest answers, silence is not.
Fix: name the id of sources.yaml, or one of: common practice, no source; from memory; calculated.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase

ID: Final = "sourced-limits"

_INSTEAD: Final = "name a source, or write: common practice, no source"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every number that has no source."""
    for test in base.knowledge.tests.values():
        for number, outcome in enumerate(test.outcomes):
            if outcome.limits and not outcome.source and not test.source:
                what = f"the limits of {test.id}: {outcome.id} have no source"
                yield base.problem(
                    ID, ("test", test.id), ("outcomes", number, "limits"), what, _INSTEAD
                )
    for limit in base.knowledge.limits.values():
        if not limit.source:
            what = f"the limit {limit.id} has no source"
            yield base.problem(ID, ("limit", limit.id), ("bounds",), what, _INSTEAD)
    for relation in base.knowledge.relations.values():
        if not relation.source:
            what = f"the relation {relation.id} has no source"
            yield base.problem(ID, ("relation", relation.id), ("must",), what, _INSTEAD)
    for alarm in base.knowledge.drift_alarms.values():
        if alarm.change is not None and not alarm.source:
            what = f"the change of {alarm.id} has no source"
            yield base.problem(ID, ("drift alarm", alarm.id), ("change",), what, _INSTEAD)
    for point in base.knowledge.round_points.values():
        if point.limit and not point.source:
            what = f"the limit of {point.id} has no source"
            yield base.problem(ID, ("round point", point.id), ("limit",), what, _INSTEAD)
