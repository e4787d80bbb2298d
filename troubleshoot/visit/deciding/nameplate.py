"""What has to be read off the nameplate, and when: only what the next test or the causes need."""

from __future__ import annotations

from collections import Counter

from troubleshoot.knowledge.model import EquipmentFact, Knowledge, PlateValue, Test
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.places import Place

MOST_FACTS = 8
"""No more equipment facts than this are asked before the first test."""


def facts_to_ask(
    knowledge: Knowledge, unit: Unit, complaint: str | None
) -> tuple[EquipmentFact, ...]:
    """The facts on which most of the complaint's faults depend, in the order of the file."""
    listed = knowledge.complaints[complaint].faults if complaint else tuple(knowledge.faults)
    counted: Counter[str] = Counter()
    for name in listed:
        fault = knowledge.faults[name]
        needed = dict.fromkeys(fault.exists_when)
        for layer in (*fault.overrides, *fault.pictures):
            needed.update(dict.fromkeys(layer.when))
        counted.update(list(needed))
        counted.update(
            f.id for f in knowledge.facts.values() if f.counts and _counts(f.counts, fault.per)
        )
    wanted = [name for name, _ in counted.most_common() if name not in unit.facts][:MOST_FACTS]
    return tuple(fact for fact in knowledge.facts.values() if fact.id in wanted)


def _counts(kind: str, per: str | None) -> bool:
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
