"""What is asked before a step or test is shown: the facts on which it, or its cautions, hang.

What nobody knows then counts as the worse; it is asked for before it does.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.knowledge.model import EquipmentFact, Knowledge, Test
from troubleshoot.safety.cautions import SUPPLY, facts_behind
from troubleshoot.safety.job import Job
from troubleshoot.safety.steps import (
    BLEED_CAPACITOR,
    BLEED_DRIVE,
    REFRIGERANT_SWEEP,
    ROOM_AIR,
    SECOND_PERSON,
    TELL_FIRE_PANEL,
    Step,
)
from troubleshoot.safety.unit_at_work import BLOWER_DRIVE, BLOWER_MOTOR, supply_is_known

REFRIGERANT: Final = ("refrigerant", "refrigerant-class")
HOLDING_CHARGE: Final = (
    "circuits",
    "condenser-fans",
    "supply-phase",
    "compressor-phase",
    "condenser-fan-phase",
    "blower-motor",
)
"""What says how many capacitors there are to bleed, and whether the blower has one at all."""

_HANG_ON: Final[Mapping[tuple[str, str | None], tuple[str, ...]]] = MappingProxyType(
    {
        (SECOND_PERSON, None): (SUPPLY,),
        (REFRIGERANT_SWEEP, None): REFRIGERANT,
        (ROOM_AIR, None): ("heat",),
        (TELL_FIRE_PANEL, None): ("duct-smoke-detector",),
        (BLEED_CAPACITOR, None): HOLDING_CHARGE,
        (BLEED_DRIVE, BLOWER_MOTOR): ("blower-motor",),
        (BLEED_DRIVE, BLOWER_DRIVE): ("variable-speed-drive",),
    }
)
"""Step, and where it matters its place -> the facts that say whether, or where, it is needed."""


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
    return _HANG_ON.get((step.id, step.place)) or _HANG_ON.get((step.id, None), ())


def _open(job: Job, names: Iterable[str]) -> Iterable[str]:
    """Those of the facts that are neither known, nor follow from others, nor were asked before."""
    unit = job.unit
    for name in names:
        known = name in unit.facts or name in job.not_known
        if known or (name == SUPPLY and supply_is_known(unit)):
            continue
        if name in REFRIGERANT and "refrigerant-class" in unit.facts:
            continue
        yield name
