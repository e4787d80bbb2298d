"""What is asked before a step or test is shown: the facts on which it, or its cautions, hang.

What nobody knows then counts as the worse; it is asked for before it does.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from troubleshoot.knowledge.model import EquipmentFact, Knowledge, Test
from troubleshoot.safety.cautions import SUPPLY, facts_behind
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.job import Job
from troubleshoot.safety.steps import Step
from troubleshoot.safety.unit_at_work import supply_is_known

_REFRIGERANT: Final = ("refrigerant", "refrigerant-class")


def facts_to_settle(
    knowledge: Knowledge, job: Job, test: Test, step: Step | None
) -> tuple[EquipmentFact, ...]:
    """What is to be asked before a step or test is shown, the nearest first; each is asked once."""
    names = dict.fromkeys(_of_step(step))
    names.update(dict.fromkeys(facts_behind(knowledge, job, test)))
    return tuple(knowledge.facts[name] for name in _open(job, names) if name in knowledge.facts)


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
