"""The cautions that come before a step or test: its own hazards, and those its state calls up."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from typing import Final

from troubleshoot.knowledge.model import FactsNeeded, Hazard, Knowledge, Test, Trigger
from troubleshoot.knowledge.vocabulary import WorkStateName
from troubleshoot.reasoning.chaining.chains import belongs_to_step
from troubleshoot.safety.at_ports import as_read_on
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.hearing.mending import RULE_BASES
from troubleshoot.safety.job import Job
from troubleshoot.safety.needs import ONE_CALL, burns, needs_of
from troubleshoot.safety.step_guards import REFRIGERANT_SWEPT
from troubleshoot.safety.steps import LOCK_OFF, PLUG_TEST, REFRIGERANT_SWEEP, RESTART
from troubleshoot.safety.unit_at_work import supply_is_known

FLAMMABLE: Final = "flammable-refrigerant"
SUPPLY: Final = "line-volts-class"
HIGH_VOLTS: Final = "480-volt"
NOT_GIVEN: Final = "not-known"
NOT_KNOWN: Final = "refrigerant-not-known"

_OPEN: Final = ("energised-open", "locked-out")
POWER_UP: Final = (LOCK_OFF, RESTART, PLUG_TEST)


def cautions_before(knowledge: Knowledge, job: Job, test: Test) -> tuple[Hazard, ...]:
    """The hazards to be shown before a test or step, the gravest first."""
    test = as_read_on(test, job.at_work)
    own = (*_flammable(job, test), *_started_for(knowledge, job, test), *test.hazards)
    found = dict.fromkeys(name for name in own if name in knowledge.hazards)
    for hazard in knowledge.hazards.values():
        if any(_step_trigger(trigger, job, test) for trigger in hazard.triggers):
            found.setdefault(hazard.id)
    order = ("DANGER", "WARNING", "CAUTION", "NOTICE")
    hazards = [knowledge.hazards[name] for name in found]
    return tuple(sorted(hazards, key=lambda h: order.index(h.signal)))


@lru_cache(maxsize=RULE_BASES)
def behind_panels(knowledge: Knowledge) -> frozenset[str]:
    """The hazards that an open panel brings, dead or live: those of the tests done behind one."""
    of_tests = (h for t in knowledge.tests.values() if t.work_state in _OPEN for h in t.hazards)
    of_states = (
        hazard.id
        for hazard in knowledge.hazards.values()
        if any(trigger.work_state in _OPEN for trigger in hazard.triggers)
    )
    return frozenset((*of_tests, *of_states))


def _flammable(job: Job, test: Test) -> tuple[str, ...]:
    """The caution of a refrigerant that burns, or may, at whatever the air is swept for first."""
    unit = job.at_work
    swept = test.id == REFRIGERANT_SWEEP or REFRIGERANT_SWEEP in needs_of(test, None, unit).sweeps
    guarded = test.id in STEPS and REFRIGERANT_SWEPT in STEPS[test.id].after
    if not unit.flammable or not (swept or guarded):
        return ()
    known = "refrigerant-class" in job.unit.facts
    return (FLAMMABLE,) if known else (NOT_KNOWN, FLAMMABLE)


def _started_for(knowledge: Knowledge, job: Job, test: Test) -> tuple[str, ...]:
    """The hazards of the test that the unit is called for: its burner lights with the call."""
    aimed = knowledge.tests[job.aim[0]] if test.id == RESTART and job.aim else test
    aimed = as_read_on(aimed, job.at_work)
    lit = aimed.id in ONE_CALL and burns(aimed, aimed.work_state, job.at_work)
    light = knowledge.tests.get(ONE_CALL[aimed.id]) if lit else None
    return (*(light.hazards if light else ()), *aimed.hazards)


def facts_behind(knowledge: Knowledge, job: Job, test: Test) -> tuple[str, ...]:
    """The facts nobody has given yet on which the cautions before a test or step hang."""
    found: dict[str, None] = {}
    for hazard in knowledge.hazards.values():
        for trigger in hazard.triggers:
            if trigger.equipment and _speaks_of(trigger, job, test):
                found.update(dict.fromkeys(_open_facts(job, trigger.equipment)))
    return tuple(found)


def _open_facts(job: Job, equipment: FactsNeeded) -> tuple[str, ...]:
    """The facts of a condition that are still open, where what is known leaves it possible."""
    facts = job.unit.facts
    if SUPPLY in equipment and supply_is_known(job.unit):
        return ()
    known = {fact: words for fact, words in equipment.items() if fact in facts}
    return tuple(f for f in equipment if f not in facts) if job.unit.proves(known) else ()


def _step_trigger(trigger: Trigger, job: Job, test: Test) -> bool:
    """Whether a trigger that speaks of the step itself holds for this one."""
    return _speaks_of(trigger, job, test) and _may_be(job, trigger.equipment)


def _speaks_of(trigger: Trigger, job: Job, test: Test) -> bool:
    """Whether a trigger speaks of this step, whatever the unit."""
    if not belongs_to_step(trigger) or trigger.findings:
        return False
    return (
        trigger.test in (None, test.id)
        and trigger.work_state in (None, *_states(job, test))
        and trigger.exposes in (None, test.exposes)
        and (trigger.profile is None or trigger.profile in job.profiles)
        and trigger.complaint in (None, job.complaint)
    )


def _states(job: Job, test: Test) -> Iterator[WorkStateName]:
    """The work states that a test or step is done in: power put behind an open panel is one."""
    yield test.work_state
    if makes_live(job, test):
        yield "energised-open"


def makes_live(job: Job, test: Test) -> bool:
    """Whether a step brings power and an open panel together: then the danger behind it is new."""
    return test.id in POWER_UP and job.work.panels != "on"


def _may_be(job: Job, equipment: FactsNeeded) -> bool:
    """Whether a unit is of this kind, or may be: what nobody knows counts as the worse.

    Volts read off the plate settle the class of the supply as well as its name does; where they
    contradict it the worse counts.
    """
    words = equipment.get(SUPPLY, ())
    if HIGH_VOLTS in words:
        return job.at_work.volts_480
    if words and supply_is_known(job.unit):
        others = {fact: given for fact, given in equipment.items() if fact != SUPPLY}
        lower = words != (NOT_GIVEN,) and not job.at_work.volts_480
        return lower and job.unit.proves(others)
    return job.unit.proves(equipment)
