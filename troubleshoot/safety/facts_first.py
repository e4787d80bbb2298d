"""What is asked before a step or test is shown: the facts on which it, or its cautions, hang.

What nobody knows then counts as the worse; it is asked for before it does.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Final

from troubleshoot.knowledge.model import EquipmentFact, Knowledge, Test
from troubleshoot.safety.at_ports import AT_PORTS, GAUGES_ON
from troubleshoot.safety.cautions import SUPPLY, facts_behind
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.job import Job
from troubleshoot.safety.reaching import steps_before
from troubleshoot.safety.steps import OPENS, Step
from troubleshoot.safety.unit_at_work import SERVICE_PORTS, supply_is_known

_REFRIGERANT: Final = ("refrigerant", "refrigerant-class")


def facts_to_settle(
    knowledge: Knowledge, job: Job, test: Test, step: Step | None
) -> tuple[EquipmentFact, ...]:
    """What is to be asked before a step or test is shown, the nearest first; each is asked once."""
    names = dict.fromkeys(_of_step(step))
    names.update(dict.fromkeys(facts_behind(knowledge, job, test)))
    judging = (n for n in _judged_by(knowledge, test) if n not in {*job.unit.facts, *job.not_known})
    asked = dict.fromkeys((*_open(job, names), *judging))
    return tuple(knowledge.facts[name] for name in asked if name in knowledge.facts)


def where_its_ports_are(knowledge: Knowledge, job: Job, test: Test) -> tuple[EquipmentFact, ...]:
    """The fact of the service ports, where a panel would be opened for what is read at them."""
    at_them = not {AT_PORTS, GAUGES_ON}.isdisjoint(test.needs_state)
    if not at_them or SERVICE_PORTS not in knowledge.facts:
        return ()
    opens = any(step.id in OPENS for step in steps_before(job, test, None))
    return tuple(knowledge.facts[name] for name in _open(job, (SERVICE_PORTS,)) if opens)


def outcomes_that_stop(
    knowledge: Knowledge, test: Test, *, whole_job: bool = False
) -> frozenset[str]:
    """The outcomes of a test that may call up a STOP. `whole_job`: one of the whole job."""
    return frozenset(
        outcome
        for hazard in knowledge.hazards.values()
        if hazard.stops_the_job or not whole_job
        for finding in (hazard.findings if hazard.stop else ())
        if finding.test == test.id
        for outcome in finding.outcomes
    )


def _judged_by(knowledge: Knowledge, test: Test) -> Iterator[str]:
    """The facts without which nobody can say whether a number of this test is one that stops."""
    stops = outcomes_that_stop(knowledge, test)
    for outcome in test.outcomes:
        for line in outcome.limits if outcome.id in stops else ():
            yield from (*line.when, *(name for bound in line.bounds for name in bound.when))


def _of_step(step: Step | None) -> tuple[str, ...]:
    if step is None:
        return ()
    declared = STEPS[step.id]
    return declared.hangs_on_at.get(step.place or "", declared.hangs_on)


def _open(job: Job, names: Iterable[str]) -> Iterable[str]:
    """Those of the facts that are neither known, nor follow from others, nor were asked before."""
    unit = job.unit
    for name in names:
        known = name in unit.facts or name in job.not_known
        if known or (name == SUPPLY and supply_is_known(unit)):
            continue
        if name in _REFRIGERANT and "refrigerant-class" in unit.facts:
            continue
        yield name
