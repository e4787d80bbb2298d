"""Conditions that an example leaves open: each down to its first branch that is false or unknown.

An author who waits for a rule, or for grades that hold on one kind of unit, sees the reading or the
fact that it was waiting for.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Final

from troubleshoot.authoring.trial import Trial
from troubleshoot.knowledge.model import (
    Condition,
    FactsNeeded,
    Fault,
    Finding,
    Knowledge,
    Procedure,
)
from troubleshoot.reasoning.chaining.conditions import Facts, Truth, Verdict, evaluate
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.validity import circuits, facts_at

SHOWN: Final = 3
_OF: Final[Mapping[str, str]] = {"all": "all of these", "any": "any of these", "not": "not this"}


def left_open(knowledge: Knowledge, trial: Trial, turning: frozenset[str]) -> Iterator[str]:
    """The lines about what an example leaves open that would have spoken for what it wants.

    `turning`: the tests whose readings speak against that.
    """
    got, fault = trial.got, knowledge.faults[trial.fault]
    if got is None:
        return
    facts = _facts_of(knowledge, trial, got)
    of_card = [(says, evaluate(it, facts)) for says, it in _of_card(knowledge, fault, got)]
    of_rules = [(says, evaluate(it, facts)) for says, it in _of_rules(knowledge, trial, turning)]
    told = [each for each in of_card if each[1].truth is not True]
    told += [each for each in of_rules if each[1].truth is not True and _is_begun(each[1])]
    for says, verdict in told[:SHOWN]:
        yield f"{says}:"
        yield from (f"  {line}" for line in _down(knowledge, verdict, facts))


def on_no_such_unit(knowledge: Knowledge, trial: Trial) -> Iterator[str]:
    """The facts of the example's unit on which its card's fault cannot exist."""
    fault = knowledge.faults[trial.fault]
    if trial.got is not None:
        unit = trial.got.case.unit
        for fact, words in fault.exists_when.items():
            if not unit.allows({fact: words}):
                wanted = " or ".join(map(knowledge.spoken, words))
                here = knowledge.spoken(unit.facts[fact])
                yield f"the card wants {knowledge.spoken(fact)}: {wanted}; the unit has {here}"


def _facts_of(knowledge: Knowledge, trial: Trial, got: Conclusions) -> Facts:
    """What is known at the circuit where the card's fault is."""
    place = None if trial.own is None else trial.own.at
    circuit = circuits(got.case.unit.layout, place)[0]
    holding = {(fired.procedure.id, fired.circuit) for fired in got.procedures}
    return facts_at(knowledge, got.case, got.readings, got.values, holding, circuit)


def _of_card(
    knowledge: Knowledge, fault: Fault, got: Conclusions
) -> Iterator[tuple[str, Condition]]:
    """What the card says of some units that this one may be, or of readings taken together."""
    unit = got.case.unit
    read = {reading.test for reading in got.readings}
    for layer in (*fault.overrides, *fault.pictures):
        if unit.allows(layer.when) and not unit.proves(layer.when):
            where = " and ".join(_fact(knowledge, fact, told) for fact, told in layer.when.items())
            yield f"the card's grades for where {where} do not count", _all_facts(layer.when)
    for item in fault.given:
        if item.finding.test in read:
            seen = tuple(Condition("finding", finding=finding) for finding in item.given)
            told = f"what the card says of {_found(knowledge, item.finding)} given other readings"
            yield f"{told} does not count", Condition("all", seen)


def _of_rules(
    knowledge: Knowledge, trial: Trial, turning: frozenset[str]
) -> Iterator[tuple[str, Condition]]:
    """Rules that would clear the one that should not lead, or void what was held against it."""
    if trial.own is None or trial.rival is None:
        return
    for_it, against = trial.own.fault, trial.rival.fault
    if not trial.example.names_it:
        for_it, against = against, for_it
    for rule in knowledge.procedures.values():
        if against.id in rule.clears or against.subsystem in rule.clears_subsystems:
            yield f"the rule {rule.id} would clear {against.id}, and does not hold", rule.when
        elif tests := _voided(rule, for_it) & turning:
            names = " and ".join(knowledge.tests[test].name for test in sorted(tests))
            yield f"the rule {rule.id} would let {names} not count, and does not hold", rule.when


def _voided(rule: Procedure, fault: Fault) -> frozenset[str]:
    """The tests whose readings a rule would void for a fault."""
    void = rule.void
    if void is None:
        return frozenset()
    of_some = void.for_faults or void.for_subsystems
    if of_some and fault.id not in void.for_faults and fault.subsystem not in void.for_subsystems:
        return frozenset()
    return frozenset(void.tests)


def _all_facts(needed: FactsNeeded) -> Condition:
    return Condition(
        "all", tuple(Condition("fact", name=fact, words=words) for fact, words in needed.items())
    )


def _is_begun(verdict: Verdict) -> bool:
    """Whether something that was read is as it wants it; what kind of unit it is begins nothing."""
    if not verdict.parts:
        return verdict.truth is True and verdict.condition.op != "fact"
    return any(_is_begun(part) for part in verdict.parts)


def _down(knowledge: Knowledge, verdict: Verdict, facts: Facts) -> Iterator[str]:
    """A condition's parts in their order, down to the first that does not hold, and into that."""
    condition = verdict.condition
    if not verdict.parts:
        yield _leaf(knowledge, condition, verdict.truth, facts)
    elif condition.op == "not" and not verdict.parts[0].parts:
        yield _leaf(knowledge, condition.parts[0], verdict.truth, facts, "not ")
    elif condition.op == "all" and len(verdict.parts) == 1:
        yield from _down(knowledge, verdict.parts[0], facts)
    else:
        yield f"{_OF.get(condition.op, f'at least {condition.count} of these')}:"
        for part in verdict.parts:
            yield from (f"  {line}" for line in _down(knowledge, part, facts))
            if part.truth is not True:
                return


def _leaf(
    knowledge: Knowledge, condition: Condition, truth: Truth, facts: Facts, denied: str = ""
) -> str:
    """A reading, a fact or a state: whether it is as it has to be, and what it is if not."""
    finding = condition.finding
    if finding is not None:
        said, unknown = _found(knowledge, finding), "not read"
        seen = facts.answered.get(finding.test, frozenset())
        here = " and ".join(map(knowledge.tests[finding.test].spoken, sorted(seen)))
    elif condition.op == "fact":
        said, unknown = _fact(knowledge, condition.name, condition.words), "not told"
        here = knowledge.spoken(facts.equipment.get(condition.name, ""))
    else:
        said, unknown, here = knowledge.spoken(condition.name), "not known", ""
    if truth is None:
        return f"{unknown}: {denied}{said}"
    if truth:
        return f"holds: {denied}{said}"
    return f"no: {denied}{said}{f'; it is {here}' if here else ''}"


def _found(knowledge: Knowledge, finding: Finding) -> str:
    test = knowledge.tests[finding.test]
    return f"{test.name}: {' or '.join(map(test.spoken, finding.outcomes))}"


def _fact(knowledge: Knowledge, fact: str, words: tuple[str, ...]) -> str:
    return f"{knowledge.spoken(fact)} is {' or '.join(map(knowledge.spoken, words))}"
