"""What has to be read off the nameplate, and when: only what the next test or the causes need."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from troubleshoot.knowledge.model import (
    EquipmentFact,
    FactsNeeded,
    Knowledge,
    PlateValue,
    Test,
)
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.places import Place

MATTERS_TO_MANY = 0.4
"""A fact on which more than this share of the causes hangs is asked with the call."""


def facts_to_ask(
    knowledge: Knowledge, unit: Unit, complaint: str | None
) -> tuple[EquipmentFact, ...]:
    """The facts without which nobody knows which of the complaint's causes the unit can have.

    And those by which the answers of its first looks differ, of a kind of unit: of gas, which gas.
    What only a test hangs on is asked before that test.
    """
    call = knowledge.complaints[complaint] if complaint else None
    listed = call.faults if call else tuple(knowledge.faults)
    firsts = (knowledge.tests[name] for name in (call.first_tests if call else ()))
    looked = {
        fact for test in firsts if test.exists_when for o in test.outcomes for fact in o.exists_when
    }
    counted = Counter(name for fault in listed for name in knowledge.faults[fault].exists_when)
    least = MATTERS_TO_MANY * len(listed)
    return tuple(
        fact
        for fact in knowledge.facts.values()
        if (counted[fact.id] >= least or fact.id in looked) and fact.id not in unit.facts
    )


def still_matters(knowledge: Knowledge, unit: Unit, fact: EquipmentFact) -> bool:
    """Whether anything on this unit can still hang on a fact: who heats with strips burns no fuel.

    So it does where nothing that names it is ruled out by the other facts that are known.
    """
    return any(
        unit.allows({name: words for name, words in needed.items() if name != fact.id})
        for needed in _hang_on(knowledge, fact.id)
    )


def _hang_on(knowledge: Knowledge, fact: str) -> Iterator[FactsNeeded]:
    """What the faults, tests and limits need of a unit that name a fact, with what is around."""
    for fault in knowledge.faults.values():
        if fact in fault.exists_when:
            yield fault.exists_when
    for test in knowledge.tests.values():
        around = [test.exists_when]
        for outcome in test.outcomes:
            around.append({**test.exists_when, **outcome.exists_when})
            for line in outcome.limits:
                whens = (line.when, *(bound.when for bound in line.bounds))
                around += [{**around[-1], **when} for when in whens]
        yield from (needed for needed in around if fact in needed)


def facts_of_place(
    knowledge: Knowledge, unit: Unit, test: Test, not_known: frozenset[str]
) -> tuple[EquipmentFact, ...]:
    """The open facts on which it hangs whether a unit has this test, and at how many places."""
    return tuple(
        fact
        for fact in _open(knowledge, unit, not_known)
        if fact.id in test.exists_when or (fact.counts and _counts(fact.counts, test.per))
    )


def facts_of_limits(
    knowledge: Knowledge, unit: Unit, test: Test, not_known: frozenset[str]
) -> tuple[EquipmentFact, ...]:
    """The open facts by which a number of this test is judged."""
    lines = [line for outcome in test.outcomes for line in outcome.limits]
    names = {name for line in lines for name in line.when}
    names |= {name for line in lines for bound in line.bounds for name in bound.when}
    return tuple(fact for fact in _open(knowledge, unit, not_known) if fact.id in names)


def _open(knowledge: Knowledge, unit: Unit, not_known: frozenset[str]) -> Iterator[EquipmentFact]:
    settled = {*unit.facts, *not_known}
    return (fact for fact in knowledge.facts.values() if fact.id not in settled)


def _counts(kind: str, per: str | None) -> bool:
    if per == "capacitor":
        return True
    lines = {"circuit": ("circuit", "compressor", "contactor", "compressor-capacitor")}
    fans = {"condenser-fan": ("condenser-fan", "condenser-fan-capacitor")}
    return per in {**lines, **fans}.get(kind, (kind,))


def plate_to_ask(
    knowledge: Knowledge, unit: Unit, test: Test, place: Place | None, not_known: frozenset[str]
) -> tuple[PlateValue, ...]:
    """The nameplate values that judging a number of this test leans on and that are not known."""
    wanted: dict[str, PlateValue] = {}
    for outcome in test.outcomes:
        for line in outcome.limits:
            if any(words == ("known",) for words in line.when.values()):
                continue
            for bound in line.bounds:
                plate = knowledge.plate_values.get(bound.relative_to or "")
                if plate is None or plate.origin != "nameplate" or plate.id in not_known:
                    continue
                if unit.plate_value(plate.id, place) is None:
                    wanted[plate.id] = plate
    return tuple(wanted.values())
