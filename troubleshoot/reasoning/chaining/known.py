"""What is known of a case, as the atoms from which the chain starts."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Finding, Knowledge
from troubleshoot.reasoning.chaining import chains
from troubleshoot.reasoning.evidence.said_along import heard
from troubleshoot.reasoning.readings.answers import Case
from troubleshoot.reasoning.readings.limits import bounds_truth
from troubleshoot.reasoning.readings.readings import Reading
from troubleshoot.reasoning.readings.validity import answered_at, circuits, circuits_about
from troubleshoot.reasoning.readings.values import Values
from troubleshoot.reasoning.unit.places import Place

NOT_KNOWN: Final = "not-known"
"""The word under which a trigger speaks of a fact that nobody has stated."""


def atoms(
    knowledge: Knowledge, case: Case, readings: tuple[Reading, ...], values: Values
) -> Iterator[tuple[str, int]]:
    """What is known, as atoms at every circuit it concerns."""
    everywhere = circuits(case.unit.layout, None)
    facts = dict.fromkeys(knowledge.facts, NOT_KNOWN) | dict(case.unit.facts)
    for fact, word in facts.items():
        yield from ((chains.equipment(fact, word), circuit) for circuit in everywhere)
    if case.complaint is not None:
        yield from ((chains.complaint(case.complaint), circuit) for circuit in everywhere)
    for limit in knowledge.limits.values():
        for circuit in everywhere:
            truth = bounds_truth(limit.bounds, Place("circuit", circuit), values)
            if truth is not None:
                yield chains.state(limit.id, truth), circuit
    for reading in readings:
        for circuit in circuits_about(case.unit.layout, reading):
            for outcome in sorted(reading.calls_up):
                yield chains.possible(reading.test, outcome), circuit
    told = heard(knowledge, case.words)
    for circuit in everywhere:
        answered = answered_at(case.unit.layout, readings, circuit)
        yield from ((a, circuit) for f in told if f.test not in answered for a in _as_found(f))
        for test, outcomes in answered.items():
            for each in knowledge.tests[test].outcomes:
                atom = chains.seen if each.id in outcomes else chains.unseen
                yield atom(test, each.id), circuit


def _as_found(finding: Finding) -> Iterator[str]:
    """What a caller has heard, as a reading of it would be known."""
    for outcome in finding.outcomes:
        yield chains.seen(finding.test, outcome)
        yield chains.possible(finding.test, outcome)
