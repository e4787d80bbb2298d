"""Which facts of a unit a record is trusted with, and which are looked at afresh on every visit.

What protects a life is never taken from a record: someone may have changed the motor, the gas or
the refrigerant since, and a typing error in a list would be met with a hand.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import field
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge, Outcome, Test
from troubleshoot.reasoning.readings.meters import Listed
from troubleshoot.reasoning.unit.equipment import NAMEPLATE_VOLTS
from troubleshoot.reasoning.unit.on_record import OnRecord
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.facts_first import outcomes_that_stop

FOR_THE_WORK: Final = frozenset({NAMEPLATE_VOLTS})
"""Read by the order of work itself (`safety/unit_at_work.py`), which asks for the class of the
supply where these are not known."""


@frozen
class Recorded:
    """A unit on record, and what to tell of it, a sentence a line.

    `instruments`: by whose accuracy readings are judged.
    """

    record: OnRecord = field(default_factory=OnRecord)
    says: tuple[str, ...] = ()
    instruments: tuple[Listed, ...] = ()


def split_record(knowledge: Knowledge, unit: Mapping[str, object]) -> OnRecord:
    """What is on record of a unit, in what is trusted and what is looked at afresh."""
    afresh = looked_at_afresh(knowledge)
    trusted = {key: value for key, value in unit.items() if key not in afresh}
    return OnRecord(trusted, {key: value for key, value in unit.items() if key in afresh})


def looked_at_afresh(knowledge: Knowledge) -> frozenset[str]:
    """Facts and plate values that no record is trusted with.

    Those on which a safety step or a caution hangs; by which a STOP wider than one step is judged,
    or any STOP where it is stamped on a part; without which a unit has no test that may call one
    up; and whatever implies one of these.
    """
    found = {*FOR_THE_WORK, *_of_steps(), *_of_cautions(knowledge)}
    for test in knowledge.tests.values():
        found.update(_of_stops(knowledge, test))
    while True:
        behind = {
            fact
            for implied in knowledge.implications
            if not found.isdisjoint(implied.then)
            for fact in implied.when
        }
        if behind <= found:
            return frozenset(found & {*knowledge.facts, *knowledge.plate_values})
        found |= behind


def _of_steps() -> Iterator[str]:
    for step in STEPS.values():
        yield from step.hangs_on
        for names in step.hangs_on_at.values():
            yield from names


def _of_cautions(knowledge: Knowledge) -> Iterator[str]:
    for hazard in knowledge.hazards.values():
        for trigger in hazard.triggers:
            yield from trigger.equipment


def _of_stops(knowledge: Knowledge, test: Test) -> Iterator[str]:
    """What judges a STOP of this test, and whether a unit has the test at all.

    Of what is stamped on a part, which may have been changed, a STOP for a single step is enough.
    """
    every = outcomes_that_stop(knowledge, test)
    stops = every - _for_one_step(knowledge, test)
    if stops or test.kind == "step":
        yield from test.exists_when
    for outcome in test.outcomes:
        if outcome.id in every:
            yield from _stamped_on_parts(knowledge, outcome)
        if outcome.id not in stops:
            continue
        yield from outcome.exists_when
        for line in outcome.limits:
            yield from line.when
            for bound in line.bounds:
                yield from bound.when
                yield bound.relative_to or ""


def _stamped_on_parts(knowledge: Knowledge, outcome: Outcome) -> Iterator[str]:
    """The values by which an outcome is judged that stand on a part behind a panel."""
    for line in outcome.limits:
        for bound in line.bounds:
            plate = knowledge.plate_values.get(bound.relative_to or "")
            if plate is not None and plate.inside:
                yield plate.id


def _for_one_step(knowledge: Knowledge, test: Test) -> frozenset[str]:
    """The outcomes whose only STOP is for a single step."""
    scopes: dict[str, set[str]] = {}
    for hazard in knowledge.hazards.values():
        for finding in hazard.findings if hazard.stop else ():
            if finding.test == test.id and hazard.stop is not None:
                for outcome in finding.outcomes:
                    scopes.setdefault(outcome, set()).add(hazard.stop.scope)
    return frozenset(outcome for outcome, found in scopes.items() if found == {"this-step"})
