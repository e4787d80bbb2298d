"""Trying the rule base on its own examples: each card must name its fault, or must not.

Every example is a case like any other, assessed by the same reasoning. A failure says what was
named instead and which findings carried it, so that its author sees the grade to look at.
"""

from __future__ import annotations

from collections.abc import Iterator

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Example, Fault, Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.evidence.ranking import Cause
from troubleshoot.reasoning.unit.equipment import InputRefused
from troubleshoot.visit.cases.file import read_case
from troubleshoot.visit.telling.wording import percent

STRONGEST = 3


@frozen
class Trial:
    """One example of one card, and what came of it. `failure` is empty when it holds.

    A failure of a card that is still a draft is a known gap: it is counted and shown, and does not
    fail the whole.
    """

    fault: str
    example: str
    failure: str
    known_gap: bool = False


def try_examples(knowledge: Knowledge, only: frozenset[str] = frozenset()) -> Iterator[Trial]:
    """Try every example of every card, or of the cards named; in file order."""
    reasoner = Reasoner(knowledge)
    for fault in knowledge.faults.values():
        if not only or fault.id in only or fault.subsystem in only:
            for example in fault.examples:
                failure = _failure(reasoner, fault, example)
                gap = bool(failure) and fault.status == "draft"
                yield Trial(fault.id, example.name, failure, gap)


def _failure(reasoner: Reasoner, fault: Fault, example: Example) -> str:
    data = {
        "unit": dict(example.unit),
        "conditions": dict(example.conditions),
        "complaint": example.complaint,
        "readings": [dict(reading) for reading in example.readings],
    }
    try:
        case = read_case(reasoner.knowledge, data)
    except InputRefused as error:
        return str(error)
    conclusions = reasoner.conclude(case)
    if fault.is_effect:
        shown = fault.id in {effect.fault.id for effect in conclusions.effects}
        if shown == example.names_it:
            return ""
        return "it should be shown as what happened" if example.names_it else "it is shown"
    return _ranking_failure(conclusions, fault, example)


def _ranking_failure(conclusions: Conclusions, fault: Fault, example: Example) -> str:
    if not conclusions.causes:
        return "no cause can exist on this unit"
    first = conclusions.causes[0]
    if (first.fault.id == fault.id) == example.names_it:
        return ""
    own = next((c for c in conclusions.causes if c.fault.id == fault.id), None)
    if own is None:
        return "this fault cannot exist on the example's unit"
    rivals = f"{_said(first)}; {_said(own)}"
    return f"should come first: {rivals}" if example.names_it else f"should not: {rivals}"


def _said(cause: Cause) -> str:
    weights = ", ".join(
        f"{' + '.join(test for test, _ in weight.tests)} {weight.weight:+.1f}"
        for weight in cause.weights[:STRONGEST]
    )
    return f"{cause.fault.id} {percent(cause.probability)} ({weights})"
