"""How finely the rule base can isolate its faults (IEEE 1522: fraction of faults isolated).

With all tests done, every fault shows each one's likeliest outcome under its own card; its
ambiguity group is what then still stands within a factor of three of the leader. For each group
the test that tells its members apart best is named, or that none does.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations

from troubleshoot.frozen import frozen
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.evidence.hypotheses import Hypotheses, Hypothesis
from troubleshoot.reasoning.evidence.outcome_chances import NONE_OF_THEM, Signs, pattern_row
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.unit.equipment import Unit

STANDS_BESIDE = 1 / 3
SEPARATES = 0.5
"""A test tells two faults apart when their rows differ by this much (total variation)."""


@frozen
class Ambiguity:
    """Faults that stay together when one of them is there, and the test that would split them."""

    fault: str
    together: tuple[str, ...]
    split_by: str | None
    difference: float


@frozen
class Isolation:
    """IEEE 1522 figures on one unit: fractions of faults isolated to one and to three."""

    faults: int
    to_one: float
    to_three: float
    ambiguities: tuple[Ambiguity, ...]


def isolation(reasoner: Reasoner, unit: Unit) -> Isolation:
    """The figures over every cause that can exist on the unit."""
    hypotheses, _ = reasoner.hypotheses(unit)
    groups = [(h.fault.id, _together(reasoner, unit, hypotheses, h)) for h in _one_each(hypotheses)]
    total = len(groups)
    return Isolation(
        total,
        sum(group == (fault,) for fault, group in groups) / total,
        sum(fault in group and len(group) <= 3 for fault, group in groups) / total,
        tuple(_ambiguity(hypotheses, fault, group) for fault, group in groups if group != (fault,)),
    )


def _one_each(hypotheses: Hypotheses) -> Iterator[Hypothesis]:
    """Every fault once, at its first place and in its first picture."""
    seen = set()
    for hypothesis in hypotheses.causes:
        if hypothesis.fault.id not in seen:
            seen.add(hypothesis.fault.id)
            yield hypothesis


def _together(
    reasoner: Reasoner, unit: Unit, hypotheses: Hypotheses, fault: Hypothesis
) -> tuple[str, ...]:
    """The faults that stand beside the leader when the fault shows its likeliest outcomes."""
    answers = tuple(_usual_answers(unit, hypotheses, fault))
    causes = reasoner.conclude(Case(unit, answers=answers)).causes
    best: dict[str, float] = {}
    for cause in causes:
        best[cause.fault.id] = max(best.get(cause.fault.id, 0.0), cause.probability)
    top = max(best.values())
    return tuple(name for name, chance in best.items() if chance >= STANDS_BESIDE * top)


def _usual_answers(unit: Unit, hypotheses: Hypotheses, fault: Hypothesis) -> Iterator[Answer]:
    """The likeliest outcome of every test at every place, as this fault alone would show it."""
    for test in hypotheses.tests.values():
        if test.kind in ("step", "input") or not test.outcomes:
            continue
        for place in unit.layout.places(test.per):
            about = unit.layout.speaks_about(place, fault.at) and test.id in fault.picture.cells
            made = hypotheses.row(fault.picture, test.id) if about else None
            row = pattern_row(made or hypotheses.background(test.id))
            outcome = max(row, key=lambda o: (row[o], o))
            if outcome == NONE_OF_THEM:
                outcome = test.healthy[0] if test.healthy else ""
            if outcome and (about or test.healthy):
                yield Answer(test.id, (outcome,), places=(place,))


def _ambiguity(hypotheses: Hypotheses, fault: str, group: Sequence[str]) -> Ambiguity:
    """The test whose rows differ most between the closest pair of a group."""
    members = [h for h in _one_each(hypotheses) if h.fault.id in (*group, fault)]
    weakest: tuple[float, str] | None = None
    for one, other in combinations(members, 2):
        best = max(
            ((_difference(hypotheses, one, other, t), t) for t in _spoken(one, other)),
            default=(0.0, ""),
        )
        if weakest is None or best < weakest:
            weakest = best
    difference, test = weakest or (0.0, "")
    split = test if difference >= SEPARATES else None
    return Ambiguity(fault, tuple(group), split, difference)


def _spoken(one: Hypothesis, other: Hypothesis) -> list[str]:
    return sorted({*one.picture.cells, *other.picture.cells})


def _difference(hypotheses: Hypotheses, one: Hypothesis, other: Hypothesis, test: str) -> float:
    """Total variation distance of two rows of one test."""
    first = hypotheses.row(one.picture, test)
    second = hypotheses.row(other.picture, test)
    if isinstance(first, Signs) and isinstance(second, Signs):
        return max(abs(p - second.signs[s]) for s, p in first.signs.items())
    mine, theirs = pattern_row(first), pattern_row(second)
    return 0.5 * sum(abs(mine[o] - theirs[o]) for o in mine)
