"""The immutable model of what senior technicians wrote: tests, faults, hazards and the rest.

Every class is one kind of entry in the rule files, and says how that is written (`declaring`).
Nothing here reads files or decides anything. Ids are words joined by hyphens. Without slots: making
slotted classes costs the start more than they save.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

from troubleshoot.frozen import frozen_open
from troubleshoot.knowledge.model.faults import (
    CardSignature,
    Evidence,
    Example,
    Fault,
    Given,
    Override,
    Picture,
    Proof,
    Repair,
)
from troubleshoot.knowledge.model.packs import Pack, SignOff
from troubleshoot.knowledge.model.procedures import (
    Ban,
    Condition,
    Hazard,
    HazardKind,
    Procedure,
    Stop,
    Trigger,
    Void,
)
from troubleshoot.knowledge.model.reference import (
    Complaint,
    Derivation,
    DriftAlarm,
    EquipmentFact,
    Implication,
    NamedLimit,
    PlateValue,
    Quantity,
    RoundPoint,
    SaidAlong,
    Subsystem,
)
from troubleshoot.knowledge.model.short_words import ShortWords
from troubleshoot.knowledge.model.sound import (
    Day,
    Relation,
    SoundReading,
    SoundWay,
    TypicalUnit,
)
from troubleshoot.knowledge.model.tests import (
    Bound,
    Finding,
    LimitLine,
    Outcome,
    Read,
    Test,
)
from troubleshoot.knowledge.model.words import FactsNeeded, Signature

__all__ = [
    "Ban",
    "Bound",
    "CardSignature",
    "Complaint",
    "Condition",
    "Day",
    "Derivation",
    "DriftAlarm",
    "EquipmentFact",
    "Evidence",
    "Example",
    "FactsNeeded",
    "Fault",
    "Finding",
    "Given",
    "Hazard",
    "HazardKind",
    "Implication",
    "Knowledge",
    "LimitLine",
    "NamedLimit",
    "Outcome",
    "Override",
    "Pack",
    "Picture",
    "PlateValue",
    "Procedure",
    "Proof",
    "Quantity",
    "Read",
    "Relation",
    "Repair",
    "RoundPoint",
    "SaidAlong",
    "ShortWords",
    "SignOff",
    "Signature",
    "SoundReading",
    "SoundWay",
    "Stop",
    "Subsystem",
    "Test",
    "Trigger",
    "TypicalUnit",
    "Void",
]


@frozen_open
class Knowledge:
    """The whole rule base. Mappings keep file order and are keyed by id.

    Hazards stand in the order of their kinds, and within a kind in file order: of two as grave the
    one that stands first is read first.
    """

    tests: Mapping[str, Test]
    faults: Mapping[str, Fault]
    procedures: Mapping[str, Procedure]
    hazards: Mapping[str, Hazard]
    complaints: Mapping[str, Complaint]
    facts: Mapping[str, EquipmentFact]
    plate_values: Mapping[str, PlateValue]
    implications: tuple[Implication, ...]
    quantities: Mapping[str, Quantity]
    limits: Mapping[str, NamedLimit]
    round_points: Mapping[str, RoundPoint]
    drift_alarms: Mapping[str, DriftAlarm]
    sources: Mapping[str, str]
    sound: Mapping[str, SoundReading] = field(default_factory=dict)
    """What a sound unit reads, by quantity."""
    hazard_kinds: Mapping[str, HazardKind] = field(default_factory=dict)
    subsystems: Mapping[str, Subsystem] = field(default_factory=dict)
    settled_first: tuple[str, ...] = ()
    days: tuple[Day, ...] = ()
    relations: Mapping[str, Relation] = field(default_factory=dict)
    typical_units: Mapping[str, TypicalUnit] = field(default_factory=dict)
    aliases: Mapping[tuple[str, str], tuple[str, str]] = field(default_factory=dict)
    retired: frozenset[str] = frozenset()
    signed: tuple[Signature, ...] = ()
    """For what was retired altogether."""
    words: Mapping[str, str] = field(default_factory=dict)
    """How people say what has an id: an outcome, a hazard, a fact and its values, a quantity."""
    alike: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """Words as the rules have them -> what people say in their place."""
    place_words: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """A kind of place -> what people say for it beside a number."""
    idle: tuple[str, ...] = ()
    """Words that tell nothing of what is meant."""
    loose: tuple[str, ...] = ()
    """Words that tell something beside others, and nothing alone."""
    manner: tuple[str, ...] = ()
    """Words beside an answer that change nothing of it: iced up solid."""
    as_it_should_be: tuple[str, ...] = ()
    """What people say of a thing they looked at in which nothing is wrong."""
    packs: tuple[Pack, ...] = ()
    """The folders of a site beside the shipped rules."""
    copies: Mapping[str, str] = field(default_factory=dict)
    """Folders of a site that cannot be read, with the day of the copy that stands in for each."""
    changed_since_signed: frozenset[str] = frozenset()
    """Cards that say something else than what was signed."""
    digest: str = ""

    def spoken(self, name: str) -> str:
        """An id as people say it; one of which nobody has said how stands as it is written."""
        return self.words.get(name, name)

    def read_by(self, proof: Proof) -> Test | None:
        """The test that a proof is read by, where the rules name one."""
        return None if proof.finding is None else self.tests[proof.finding.test]

    def published(self, source: str) -> str:
        """A source as it can be looked up: the published text, or that there is none."""
        return "; ".join(self.sources.get(part, part) for part in source.split("; "))

    def __hash__(self) -> int:
        """By the files it was read from, so that what is made of it can be kept ready."""
        return hash(self.digest)
