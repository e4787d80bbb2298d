"""A page about one entry of the rule base: what `rules explain ID` shows."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Final

from troubleshoot.cli.chain_words import chain_of
from troubleshoot.cli.order_of_cautions_page import ORDER_OF_CAUTIONS, order_of_cautions_page
from troubleshoot.cli.pointing_here import pointing_at_fault, pointing_at_test
from troubleshoot.cli.work_state_page import WORK_STATE, work_state_page
from troubleshoot.knowledge.model import (
    Complaint,
    Condition,
    Evidence,
    FactsNeeded,
    Fault,
    Finding,
    Hazard,
    Knowledge,
    NamedLimit,
    Procedure,
    Signature,
    Test,
)
from troubleshoot.knowledge.spoken import spoken as spoken_word
from troubleshoot.reasoning.evidence.grades import spoken as grade_spoken
from troubleshoot.safety.before_repair import caution_before
from troubleshoot.safety.hearing.roles import ROLES
from troubleshoot.safety.profiles import spoken
from troubleshoot.visit.telling.trust_told import trust_line
from troubleshoot.visit.telling.wording import TAG_OUT, proof_line

SUBSYSTEMS: Final = "subsystems"
CHECKS_PAGE: Final = "checks"


def page_about(knowledge: Knowledge, name: str) -> list[str] | None:
    """The page of the entry or check with that id, or nothing."""
    page = _own_page(knowledge, name)
    if page is None:
        return None
    chain = list(chain_of(knowledge, name))
    return [*page, "", "What the engine chains from and to it:", *chain] if chain else page


def _own_page(knowledge: Knowledge, name: str) -> list[str] | None:
    if name in knowledge.faults:
        return list(_fault(knowledge, knowledge.faults[name]))
    if name in knowledge.tests:
        return list(_test(knowledge, knowledge.tests[name]))
    if name in knowledge.hazards:
        return list(_hazard(knowledge, knowledge.hazards[name]))
    if name in knowledge.complaints:
        return list(_complaint(knowledge, knowledge.complaints[name]))
    if name in knowledge.procedures:
        return list(_procedure(knowledge, knowledge.procedures[name]))
    if name in knowledge.limits:
        return list(_limit(knowledge, knowledge.limits[name]))
    if name == SUBSYSTEMS:
        return list(_subsystems(knowledge))
    if name == ORDER_OF_CAUTIONS:
        return list(order_of_cautions_page(knowledge))
    if name == WORK_STATE:
        return list(work_state_page(knowledge))
    if name == CHECKS_PAGE:
        return list(_checks())
    return _check(name)


def _subsystems(knowledge: Knowledge) -> Iterator[str]:
    yield "The subsystems: where faults lie, and what tests are of"
    for subsystem in knowledge.subsystems.values():
        faults = sum(fault.subsystem == subsystem.id for fault in knowledge.faults.values())
        tests = sum(test.subsystem == subsystem.id for test in knowledge.tests.values())
        yield f"{subsystem.id}: {subsystem.about} ({faults} faults, {tests} tests)"
        if subsystem.areas:
            yield f"  finer, for tests: {', '.join(subsystem.areas)}"


def _fault(knowledge: Knowledge, fault: Fault) -> Iterator[str]:
    yield f"{fault.name}  ({fault.id})"
    kind = "what happened (an effect)" if fault.is_effect else "a cause"
    yield f"{kind}; {spoken_word(fault.how_common)}; subsystem {knowledge.spoken(fault.subsystem)}"
    if fault.exists_when:
        yield f"only where {_facts(knowledge, fault.exists_when)}"
    yield ""
    if fault.calls:
        yield "How often it brings each call:"
    for name, grade in fault.calls.items():
        yield f"  {knowledge.complaints[name].says}: {grade_spoken(grade)}"
    yield "How often each finding shows when the fault is there:"
    yield from _evidence(knowledge, fault.evidence)
    for picture in (*fault.overrides, *fault.pictures):
        where = f" where {_facts(knowledge, picture.when)}" if picture.when else ""
        yield f"{picture.name or 'Otherwise'}{where}:"
        yield from _evidence(knowledge, picture.evidence)
    for item in fault.given:
        known = " and ".join(_finding(knowledge, f) for f in item.given)
        yield f"  {_finding(knowledge, item.finding)}, given {known}: {grade_spoken(item.grade)}"
    yield ""
    yield f"Why it fails: {fault.why}"
    yield f"If left: {fault.if_left}"
    behind = ", ".join(knowledge.faults[name].name for name in fault.behind)
    if behind:
        yield f"Look behind it for: {behind}"
    if fault.repair.hand_over:
        yield TAG_OUT
    if before := caution_before(fault):
        yield before
    yield f"Repair: {fault.repair.what}"
    yield f"Who: {spoken(fault.repair.who)} ({fault.repair.who_rule} of them)"
    for proof in fault.proof:
        yield proof_line(proof)
    alike = ", ".join(knowledge.faults[name].name for name in fault.look_alikes)
    if alike:
        yield f"Easily taken for: {alike}"
    yield from pointing_at_fault(knowledge, fault)
    yield f"Source: {knowledge.published(fault.source)}"
    yield f"Trust: {trust_line(knowledge, fault)}"


def _evidence(knowledge: Knowledge, evidence: Iterable[Evidence]) -> Iterator[str]:
    for item in evidence:
        found = " or ".join(_finding(knowledge, finding) for finding in item.findings)
        yield f"  {grade_spoken(item.grade)}: {found}"


def _finding(knowledge: Knowledge, finding: Finding) -> str:
    test = knowledge.tests[finding.test]
    return f"{test.name}: {' or '.join(map(test.spoken, finding.outcomes))}"


def _facts(knowledge: Knowledge, needed: FactsNeeded) -> str:
    return "; ".join(
        f"{knowledge.spoken(fact)} is {' or '.join(map(knowledge.spoken, words))}"
        for fact, words in needed.items()
    )


def _test(knowledge: Knowledge, test: Test) -> Iterator[str]:
    yield f"{test.name}  ({test.id})"
    state = spoken_word(test.work_state)
    kind, area = spoken_word(test.kind), knowledge.spoken(test.area)
    if test.area != test.subsystem:
        area = f"{area} of {knowledge.spoken(test.subsystem)}"
    yield f"{kind}; area {area}; work state {state}; about {test.minutes:.0f} min"
    for number, sentence in enumerate(test.how, start=1):
        yield f"{number}. {sentence}"
    if test.instrument:
        yield f"With: {test.instrument}"
    for outcome in test.outcomes:
        healthy = " (sound)" if outcome.id in test.healthy else ""
        source = f" [{outcome.source}]" if outcome.source else ""
        means = f": {outcome.means}" if outcome.means else ""
        yield f"  {outcome.id}{healthy}{means}{source}"
    for reason in test.invalid_when:
        yield f"Does not count if: {reason}"
    for name in test.hazards:
        hazard = knowledge.hazards[name]
        yield f"{hazard.signal}: {hazard.what_to_do}"
    speaking = [
        fault.name
        for fault in knowledge.faults.values()
        if any(f.test == test.id for e in fault.evidence for f in e.findings)
    ]
    if speaking:
        yield f"Speaks about: {', '.join(speaking)}"
    yield from pointing_at_test(knowledge, test)
    yield from _signed(test.signed)
    yield f"Source: {knowledge.published(test.source)}"


def _hazard(knowledge: Knowledge, hazard: Hazard) -> Iterator[str]:
    yield f"{hazard.signal}: {hazard.what_to_do}"
    if hazard.kind:
        yield f"Kind: {knowledge.spoken(hazard.kind)} (which is read first: order-of-cautions)"
    if hazard.stop is not None:
        yield f"STOP, {spoken_word(hazard.stop.scope)}: {hazard.stop.covers}"
    if hazard.defer_to:
        yield f"Hand over to: {hazard.defer_to}"
    if hazard.cleared_by:
        yield f"Cleared by: {', '.join(ROLES[role] for role in hazard.cleared_by)}"
    if hazard.all_clear is not None:
        yield f"Gone once this shows it: {knowledge.tests[hazard.all_clear].name}"
    yield from (f"Taken away by: {remedy}" for remedy in hazard.remedies)
    if hazard.tested:
        yield "Shown gone by its insulation, or by what the meter shows dead; no look shows it"
    tests = [test.name for test in knowledge.tests.values() if hazard.id in test.hazards]
    if tests:
        yield f"Shown before: {', '.join(tests)}"
    yield from _signed(hazard.signed)
    yield f"Source: {knowledge.published(hazard.source)}"


def _signed(signatures: Iterable[Signature]) -> Iterator[str]:
    for signature in signatures:
        dropped = ", ".join(signature.drops)
        yield f"No longer {dropped}: {signature.why} ({signature.by}, {signature.on})"


def _complaint(knowledge: Knowledge, complaint: Complaint) -> Iterator[str]:
    yield f'"{complaint.says}"  ({complaint.id})'
    yield f"First looks: {complaint.looks}"
    if complaint.before_others:
        names = (knowledge.tests[test].name for test in complaint.before_others)
        yield f"Before all others: {'; '.join(names)}"
    if complaint.first_tests:
        names = (knowledge.tests[test].name for test in complaint.first_tests)
        yield f"First tests: {'; '.join(names)}"
    for name in complaint.faults:
        yield f"  {knowledge.faults[name].name}"
    if complaint.also:
        yield "Now and then:"
    for name in complaint.also:
        yield f"  {knowledge.faults[name].name}"
    yield f"Source: {knowledge.published(complaint.source)}"


def _procedure(knowledge: Knowledge, procedure: Procedure) -> Iterator[str]:
    yield procedure.id
    yield procedure.reason
    if procedure.void is not None:
        yield f"Does not count meanwhile: {', '.join(procedure.void.tests)}"
    if procedure.look_first:
        yield f"Look first: {', '.join(procedure.look_first)}"
    if procedure.clears:
        yield f"Clears: {', '.join(procedure.clears)}"
    if procedure.clears_subsystems:
        yield f"Clears all faults of: {', '.join(procedure.clears_subsystems)}"
    if procedure.first_on_the_roof:
        yield f"First on the roof: {', '.join(procedure.first_on_the_roof)}"
    yield f"Source: {knowledge.published(procedure.source)}"


def _limit(knowledge: Knowledge, limit: NamedLimit) -> Iterator[str]:
    yield f"{limit.id}: {limit.applies_to}"
    for rule in knowledge.procedures.values():
        if _leans_on(rule.when, limit.id):
            yield f"  {rule.id}: {rule.reason}"
    yield f"Source: {knowledge.published(limit.source)}"


def _leans_on(condition: Condition, state: str) -> bool:
    own = condition.op == "state" and condition.name == state
    return own or any(_leans_on(part, state) for part in condition.parts)


def _checks() -> Iterator[str]:
    """Every check with what it finds, in a line."""
    from troubleshoot.knowledge.checks import CHECKS, page_of

    yield "What rules check looks for; a page of its own for each:"
    for name in sorted(CHECKS):
        yield f"  {name}"
        yield f"    {page_of(name)[0]}"


def _check(name: str) -> list[str] | None:
    """A check's page is its docstring."""
    from troubleshoot.knowledge.checks import CHECKS, page_of

    return page_of(name) if name in CHECKS else None
