"""A quantity that can never be known, or is compared with something of another kind.

What: a limit speaks of a quantity that no test reads and no formula computes; a formula's inputs
lead round in a circle; a limit compares with a value of another kind of unit, or names a
comparison without saying with what; a quantity does not say between what it can be at all, or is
doubted beyond numbers that it cannot be.
Why: the limit would never decide anything, or decide wrongly; a slip of the finger would be taken.
Fix: add a test of kind input, or a formula; compare like with like; write `can-be: [LOW, HIGH]`,
wide enough for the worst unit there is, and no wider than nature (-14.75 psig is no air at all).
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Bound, Knowledge, LimitLine, Quantity
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase
from troubleshoot.quantities.units import same_kind

ID: Final = "known-quantities"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every limit on a quantity that cannot serve it."""
    knowable = knowable_quantities(base.knowledge)
    for test in base.knowledge.tests.values():
        for number, outcome in enumerate(test.outcomes):
            for nth, line in enumerate(outcome.limits):
                for bound in line.bounds:
                    steps = ("outcomes", number, "limits", nth)
                    for what, instead in _wrong(base.knowledge, knowable, bound):
                        yield base.problem(ID, ("test", test.id), steps, what, instead)
    for quantity in base.knowledge.quantities.values():
        if quantity.can_be is None or quantity.can_be[0] >= quantity.can_be[1]:
            what = f"{quantity.id} does not say between what it can be"
            instead = "write can-be: [LOW, HIGH]"
            yield base.problem(ID, ("quantity", quantity.id), ("id",), what, instead)
        elif quantity.doubted_beyond is not None and not _narrower(quantity):
            what = f"{quantity.id} is doubted where it cannot be, or never"
            instead = "write doubted-beyond: [LOW, HIGH], within can-be"
            yield base.problem(ID, ("quantity", quantity.id), ("doubted-beyond",), what, instead)
    for limit in base.knowledge.limits.values():
        for number, bound in enumerate(limit.bounds):
            for what, instead in _wrong(base.knowledge, knowable, bound):
                yield base.problem(ID, ("limit", limit.id), ("bounds", number), what, instead)
    for relation in base.knowledge.relations.values():
        for key, bounds in (("must", _of_lines(relation.must)), ("where", relation.where)):
            for bound in bounds:
                for what, instead in _wrong(base.knowledge, knowable, bound):
                    yield base.problem(ID, ("relation", relation.id), (key,), what, instead)


def _narrower(quantity: Quantity) -> bool:
    """Whether what is doubted lies within what can be."""
    (low, high), (least, most) = quantity.doubted_beyond or (0, 0), quantity.can_be or (0, 0)
    return least <= low < high <= most


def _of_lines(lines: tuple[LimitLine, ...]) -> tuple[Bound, ...]:
    return tuple(bound for line in lines for bound in line.bounds)


def knowable_quantities(knowledge: Knowledge) -> frozenset[str]:
    """Quantities that a test reads, plates and facts, and what follows by formula."""
    known = {read.quantity for test in knowledge.tests.values() for read in test.reads}
    known.update(knowledge.plate_values, knowledge.facts)
    while True:
        new = {
            quantity.id
            for quantity in knowledge.quantities.values()
            if quantity.id not in known
            and any(known.issuperset(way.inputs) for way in quantity.computed)
        }
        if not new:
            return frozenset(known)
        known |= new


def _wrong(
    knowledge: Knowledge, knowable: frozenset[str], bound: Bound
) -> Iterator[tuple[str, str]]:
    for name in (bound.quantity, bound.relative_to):
        if name is not None and name not in knowable:
            yield f"{name} can never be known", "let a test read it, or give it a formula"
    if bound.compared_as != "value" and bound.relative_to is None:
        yield f"{bound.compared_as} of nothing", "name what it is relative to"
    if bound.compared_as == "value" and bound.relative_to is not None:
        yield f"relative to {bound.relative_to}, but how", "write as: difference, percent-of, ..."
    low = bound.at_least if bound.above is None else bound.above
    high = bound.at_most if bound.below is None else bound.below
    if low is not None and high is not None and low > high:
        yield f"no number is above {low:g} and below {high:g}", "change the two numbers round"
    yield from _unlike(knowledge, bound)


def _unlike(knowledge: Knowledge, bound: Bound) -> Iterator[tuple[str, str]]:
    other = knowledge.quantities.get(bound.relative_to or "")
    plate = knowledge.plate_values.get(bound.relative_to or "")
    unit = other.unit if other is not None else plate.unit if plate is not None else None
    own = knowledge.quantities[bound.quantity].unit
    if unit is not None and not same_kind(own, unit):
        yield f"{bound.quantity} in {own} is compared with {unit}", "compare like with like"
