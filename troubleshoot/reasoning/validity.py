"""Which readings count: the void rules, and a reading's own conditions against them.

A reading that does not count is kept and weighs nothing, for all faults or for those a rule names.
A stated validity wins over the rules. Where a reading states its own conditions (minutes running,
outdoor temperature), a rule is tried with those instead of the case's.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from troubleshoot.knowledge.model import Knowledge, Procedure, Void
from troubleshoot.quantities.typed import Expected, read
from troubleshoot.reasoning.answers import Case
from troubleshoot.reasoning.classify import bounds_truth
from troubleshoot.reasoning.conditions import Facts, evaluate
from troubleshoot.reasoning.places import Layout, Place
from troubleshoot.reasoning.readings import Reading, voided
from troubleshoot.reasoning.values import Value, Values

VoidFor = Mapping[tuple[str, Place | None], frozenset[str]]
"""By test and place, the faults about which the reading says nothing."""


@dataclass(frozen=True, slots=True)
class FiredProcedure:
    """A procedure rule that holds at a circuit, and the atoms it rests on."""

    procedure: Procedure
    circuit: int
    because: tuple[str, ...]


def circuits(layout: Layout, place: Place | None) -> tuple[int, ...]:
    """The circuits a place concerns; all of them for the unit as a whole."""
    if place is not None:
        return tuple(sorted(layout.circuits_of(place)))
    return tuple(p.number for p in layout.places("circuit") if p is not None) or (1,)


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
            faults = _faults(knowledge, void)
            if faults:
                key = (reading.test, reading.at)
                void_for[key] = void_for.get(key, frozenset()) | faults
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
    here = circuits(case.unit.layout, reading.at)
    if not reading.conditions:
        return any((rule.id, circuit) in holding for circuit in here)
    own = values.with_typed(
        {
            (name, None): Value(
                read(text, Expected(knowledge.quantities[name].unit)).values[0].value
            )
            for name, text in reading.conditions.items()
        }
    )
    return any(
        evaluate(rule.when, _facts(knowledge, case, readings, own, circuit)).truth is True
        for circuit in here
    )


def _facts(
    knowledge: Knowledge,
    case: Case,
    readings: tuple[Reading, ...],
    values: Values,
    circuit: int,
) -> Facts:
    """What is known at one circuit, for the plain evaluator."""
    answered: dict[str, frozenset[str]] = {}
    for reading in readings:
        if reading.valid and reading.seen and circuit in circuits(case.unit.layout, reading.at):
            seen = answered.get(reading.test, frozenset())
            answered[reading.test] = seen | frozenset(reading.seen)
    states = {
        limit.id: truth
        for limit in knowledge.limits.values()
        if limit.bounds
        and (truth := bounds_truth(limit.bounds, Place("circuit", circuit), values)) is not None
    }
    return Facts(answered, case.unit.facts, states)
