"""Fault cards: evidence, pictures, repair, proof and examples."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from troubleshoot.knowledge.model.tests import Finding
from troubleshoot.knowledge.model.words import FactsNeeded, Grade, HowCommon


@dataclass(frozen=True)
class Evidence:
    """How often any of the findings shows when the fault is there. More than one: any-of."""

    grade: Grade
    findings: tuple[Finding, ...]


@dataclass(frozen=True)
class Given:
    """How often `finding` shows when the fault is there and all of `given` has been seen."""

    grade: Grade
    finding: Finding
    given: tuple[Finding, ...]


@dataclass(frozen=True)
class Picture:
    """One way a fault shows (mild, severe; per metering); overrides the card where it speaks."""

    name: str
    evidence: tuple[Evidence, ...]
    given: tuple[Given, ...] = ()
    when: FactsNeeded = field(default_factory=dict)


@dataclass(frozen=True)
class Repair:
    what: str
    minutes: float
    part_cost: str
    who: tuple[str, ...]
    who_rule: Literal["all", "any"] = "all"
    hand_over: bool = False


@dataclass(frozen=True)
class Proof:
    """A reading that must be right after the repair, in words and where possible as a finding."""

    text: str
    finding: Finding | None = None


@dataclass(frozen=True)
class Example:
    """Readings that must put the card's fault first, or must not."""

    name: str
    readings: tuple[Mapping[str, object], ...]
    names_it: bool
    unit: Mapping[str, object] = field(default_factory=dict)
    conditions: Mapping[str, object] = field(default_factory=dict)
    complaint: str | None = None


@dataclass(frozen=True)
class Fault:
    id: str
    name: str
    subsystem: str
    is_effect: bool
    how_common: HowCommon
    evidence: tuple[Evidence, ...]
    repair: Repair
    per: str | None = None
    exists_when: FactsNeeded = field(default_factory=dict)
    overrides: tuple[Picture, ...] = ()
    pictures: tuple[Picture, ...] = ()
    given: tuple[Given, ...] = ()
    if_left: str = ""
    why: str = ""
    behind: tuple[str, ...] = ()
    proof: tuple[Proof, ...] = ()
    look_alikes: tuple[str, ...] = ()
    examples: tuple[Example, ...] = ()
    status: Literal["draft", "reviewed"] = "draft"
    source: str = ""
