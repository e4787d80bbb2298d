"""Trying the rule base on its own examples: each card must name its fault, or must not.

Every example is a case like any other, assessed by the same reasoning. What came of it is kept, so
that its author sees the ranking that came and the answer to look at.
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


@frozen
class Trial:
    """One example of one card, and what came of it. `failure` is empty when it holds.

    A failure of a card that is still a draft is a known gap: it is counted and shown, and does not
    fail the whole. An example that cannot be read is none: nobody knows what it would come to.
    """

    fault: str
    example: Example
    failure: str
    got: Conclusions | None = None
    known_gap: bool = False

    @property
    def own(self) -> Cause | None:
        """The card's fault, where it stands in the ranking."""
        return next((c for c in self._causes if c.fault.id == self.fault), None)

    @property
    def rival(self) -> Cause | None:
        """The likeliest of the other causes."""
        return next((c for c in self._causes if c.fault.id != self.fault), None)

    @property
    def margin(self) -> float | None:
        """How far it is from failing, as a difference of chances; below 0 where it fails.

        None of an effect, of what cannot be read, and where there is no rival.
        """
        if self.own is None or self.rival is None or self.own.fault.is_effect:
            return None
        ahead = self.own.probability - self.rival.probability
        if not self.example.names_it:
            return -ahead
        above = self.own.probability - (self.example.at_least or 0.0)
        return min(ahead, above)

    @property
    def _causes(self) -> tuple[Cause, ...]:
        return () if self.got is None else self.got.causes


def try_examples(knowledge: Knowledge, only: frozenset[str] = frozenset()) -> Iterator[Trial]:
    """Try every example of every card, or of the cards and subsystems named; in file order."""
    reasoner = Reasoner(knowledge)
    for fault in knowledge.faults.values():
        if not only or fault.id in only or fault.subsystem in only:
            for example in fault.examples:
                yield try_example(reasoner, fault, example)


def try_example(reasoner: Reasoner, fault: Fault, example: Example) -> Trial:
    """Try one example of a card."""
    try:
        case = read_case(reasoner.knowledge, case_data(example))
    except InputRefused as error:
        return Trial(fault.id, example, f"it cannot be read: {error}")
    got = reasoner.conclude(case)
    failure = _failure(got, fault, example)
    return Trial(fault.id, example, failure, got, bool(failure) and fault.status == "draft")


def case_data(example: Example) -> dict[str, object]:
    """An example as the case that it is, in the form of a case file."""
    return {
        "unit": dict(example.unit),
        "conditions": dict(example.conditions),
        "complaint": example.complaint,
        "readings": [dict(reading) for reading in example.readings],
    }


def _failure(got: Conclusions, fault: Fault, example: Example) -> str:
    if fault.is_effect:
        shown = fault.id in {effect.fault.id for effect in got.effects}
        if shown == example.names_it:
            return ""
        return "it should be shown as what happened" if example.names_it else "it is shown"
    if not got.causes:
        return "no cause can exist on this unit"
    own = next((cause for cause in got.causes if cause.fault.id == fault.id), None)
    if own is None:
        return "this fault cannot exist on the example's unit" if example.names_it else ""
    comes_first = got.causes[0].fault.id == fault.id
    if comes_first != example.names_it:
        return "it should come first" if example.names_it else "it should not come first"
    if example.at_least is not None and own.probability < example.at_least:
        wanted = percent(example.at_least)
        return f"it comes first with {percent(own.probability)}, and {wanted} is wanted"
    return ""
