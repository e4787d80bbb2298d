"""Which readings count: the void rules, and a reading's own conditions against them.

A reading that does not count is kept and weighs nothing, for all faults or for those a rule names.
A stated validity wins over the rules. Where a reading states its own conditions (minutes running,
outdoor temperature), a rule is tried with those instead of the case's.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge, Procedure, Void
from troubleshoot.reasoning.chaining.conditions import Facts, evaluate
from troubleshoot.reasoning.readings.answers import Case
from troubleshoot.reasoning.readings.limits import bounds_truth
from troubleshoot.reasoning.readings.measuring import stated_conditions
from troubleshoot.reasoning.readings.readings import Reading, voided
from troubleshoot.reasoning.readings.values import Values
from troubleshoot.reasoning.unit.places import Layout, Place

VoidFor = Mapping[tuple[str, Place | None], frozenset[str]]
"""By test and place, the faults about which the reading says nothing."""


@frozen
class FiredProcedure:
    """A procedure rule that holds at a circuit, and the atoms it rests on."""

    procedure: Procedure
    circuit: int
    because: tuple[str, ...]


def circuits(layout: Layout, place: Place | None) -> tuple[int, ...]:
    """The circuits a place concerns, in order; all of them for the unit as a whole."""
    return tuple(sorted(layout.circuits_of(place)))


def circuits_about(layout: Layout, reading: Reading) -> tuple[int, ...]:
    """The circuits a reading may be about, in order."""
    places = reading.among or (reading.at,)
    return tuple(sorted(frozenset().union(*(layout.circuits_of(place) for place in places))))


def answered_at(
    layout: Layout, readings: Iterable[Reading], circuit: int
) -> dict[str, frozenset[str]]:
    """By test, the outcomes seen at one circuit, of readings that count."""
    answered: dict[str, frozenset[str]] = {}
    for reading in readings:
        if reading.valid and reading.seen and circuit in circuits_about(layout, reading):
            seen = answered.get(reading.test, frozenset())
            answered[reading.test] = seen | frozenset(reading.seen)
    return answered


def set_aside(
    knowledge: Knowledge,
    case: Case,
    readings: tuple[Reading, ...],
    values: Values,
    procedures: Sequence[FiredProcedure],
) -> tuple[tuple[Reading, ...], VoidFor]:
    """The readings with those that do not count marked, and what each says nothing about."""
    holding = {(fired.procedure.id, fired.circuit) for fired in procedures}
    kept: list[Reading] = []
    void_for: dict[tuple[str, Place | None], frozenset[str]] = {}
    for reading in readings:
        for rule, void in _void_rules(knowledge, reading):
            if not _applies(knowledge, case, readings, values, rule, reading, holding):
                continue
            if void.for_faults or void.for_subsystems:
                key = (reading.test, reading.at)
                void_for[key] = void_for.get(key, frozenset()) | _faults(knowledge, void)
            else:
                reading = voided(reading, rule.reason)
        kept.append(reading)
    return tuple(kept), void_for


def _void_rules(knowledge: Knowledge, reading: Reading) -> Iterator[tuple[Procedure, Void]]:
    if reading.stated_valid:
        return
    for rule in knowledge.procedures.values():
        if rule.void is not None and reading.test in rule.void.tests:
            yield rule, rule.void


def _faults(knowledge: Knowledge, void: Void) -> frozenset[str]:
    return frozenset(void.for_faults) | {
        fault.id for fault in knowledge.faults.values() if fault.subsystem in void.for_subsystems
    }


def _applies(
    knowledge: Knowledge,
    case: Case,
    readings: tuple[Reading, ...],
    values: Values,
    rule: Procedure,
    reading: Reading,
    holding: set[tuple[str, int]],
) -> bool:
    here = circuits_about(case.unit.layout, reading)
    held = {circuit: (rule.id, circuit) in holding for circuit in here}
    if reading.conditions:
        own = values.with_typed(stated_conditions(knowledge, case.unit, reading.conditions))
        for circuit in here:
            facts = facts_at(knowledge, case, readings, own, holding, circuit)
            truth = evaluate(rule.when, facts).truth
            held[circuit] = held[circuit] if truth is None else truth
    return any(held.values())


def facts_at(
    knowledge: Knowledge,
    case: Case,
    readings: tuple[Reading, ...],
    values: Values,
    holding: set[tuple[str, int]],
    circuit: int,
) -> Facts:
    """What is known at one circuit, for the plain evaluator."""
    states = {
        limit.id: truth
        for limit in knowledge.limits.values()
        if (truth := bounds_truth(limit.bounds, Place("circuit", circuit), values)) is not None
    }
    derived = {
        rule.derives: True
        for rule in knowledge.procedures.values()
        if rule.derives is not None and (rule.id, circuit) in holding
    }
    answered = answered_at(case.unit.layout, readings, circuit)
    return Facts(answered, case.unit.facts, states, derived)
