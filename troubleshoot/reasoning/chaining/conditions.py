"""Conditions of procedure rules, evaluated plainly: true, false or unknown, with the reasons.

This is the oracle beside the chaining engine: both must conclude the same on the same facts. It
also answers "why" and "why not", and says what is still unknown. `not` means "answered no": it is
true only where its part is known to be false.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Condition, Finding

Truth = bool | None
"""True, false, or None for unknown."""


@frozen
class Facts:
    """What is known, in words.

    `answered`: by test, the outcomes seen (of all places); a test that is not there has not been
    answered. `equipment`: fact -> word. `states`: named condition -> holds or not. `derived`:
    derived finding -> concluded or, once every rule has been tried, not.
    """

    answered: Mapping[str, frozenset[str]] = field(default_factory=dict)
    equipment: Mapping[str, str] = field(default_factory=dict)
    states: Mapping[str, bool] = field(default_factory=dict)
    derived: Mapping[str, bool] = field(default_factory=dict)


@frozen
class Verdict:
    """A condition with its truth here, and the verdicts on its parts."""

    condition: Condition
    truth: Truth
    parts: tuple[Verdict, ...] = ()

    def unknown_leaves(self) -> tuple[Condition, ...]:
        """The leaves whose answer could still change the truth."""
        if self.truth is not None:
            return ()
        if not self.parts:
            return (self.condition,)
        return tuple(leaf for part in self.parts for leaf in part.unknown_leaves())


def evaluate(condition: Condition, facts: Facts) -> Verdict:
    """Three-valued truth of a condition (Kleene's strong logic), keeping every part."""
    parts = tuple(evaluate(part, facts) for part in condition.parts)
    truths = [part.truth for part in parts]
    if condition.op == "all":
        truth = _at_least(truths, len(truths))
    elif condition.op == "any":
        truth = _at_least(truths, 1)
    elif condition.op == "at-least":
        truth = _at_least(truths, condition.count)
    elif condition.op == "not":
        truth = None if truths[0] is None else not truths[0]
    else:
        truth = _leaf(condition, facts)
    return Verdict(condition, truth, parts)


def _at_least(truths: list[Truth], count: int) -> Truth:
    yes = sum(t is True for t in truths)
    maybe = sum(t is None for t in truths)
    if yes >= count:
        return True
    return None if yes + maybe >= count else False


def _leaf(condition: Condition, facts: Facts) -> Truth:
    if condition.op == "finding" and condition.finding is not None:
        return _finding(condition.finding, facts)
    if condition.op == "fact":
        word = facts.equipment.get(condition.name)
        return None if word is None else word in condition.words
    if condition.op == "state":
        return facts.states.get(condition.name)
    return facts.derived.get(condition.name)


def _finding(finding: Finding, facts: Facts) -> Truth:
    seen = facts.answered.get(finding.test)
    return None if seen is None else bool(seen & frozenset(finding.outcomes))
