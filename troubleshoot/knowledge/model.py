"""The immutable model of what senior technicians wrote: tests, faults, hazards and the rest.

Every class mirrors one kind of entry in the rule files. Nothing here reads files or decides
anything; `build` makes these objects and `reasoning` uses them. Ids are words joined by hyphens.
Without slots: making slotted classes costs the start more than they save.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

Grade = Literal["almost-always", "often", "sometimes", "seldom", "never"]
TestKind = Literal["question", "look", "input", "measurement", "computed", "step"]
Choose = Literal["one", "several"]
Exposure = Literal["none", "control", "line"]
Signal = Literal["DANGER", "WARNING", "CAUTION", "NOTICE"]
StopScope = Literal["whole-job", "until-made-safe", "this-step"]
HowCommon = Literal["very-common", "common", "uncommon", "rare", "very-rare"]
WorkStateName = Literal["any", "running", "running-open", "energised-open", "locked-out"]

FactsNeeded = Mapping[str, tuple[str, ...]]
"""Equipment facts that must hold: fact -> the words any one of which will do."""


@dataclass(frozen=True)
class Bound:
    """One comparison of a limit: a quantity, perhaps relative to another value, against numbers."""

    quantity: str
    relative_to: str | None = None
    compared_as: Literal["value", "difference", "percent-difference", "percent-of", "times"] = (
        "value"
    )
    above: float | None = None
    at_least: float | None = None
    below: float | None = None
    at_most: float | None = None
    reads: Literal["zero", "open"] | None = None
    when: FactsNeeded = field(default_factory=dict)


@dataclass(frozen=True)
class LimitLine:
    """All bounds of one line must hold; a bound or line whose `when` fails is left out."""

    bounds: tuple[Bound, ...]
    when: FactsNeeded = field(default_factory=dict)


@dataclass(frozen=True)
class Outcome:
    """One outcome of a test. `limits`: any one line is enough."""

    id: str
    means: str = ""
    limits: tuple[LimitLine, ...] = ()
    exists_when: FactsNeeded = field(default_factory=dict)
    source: str = ""


@dataclass(frozen=True)
class Read:
    """How typed numbers become a quantity: the unit typed and how several legs reduce to one."""

    quantity: str
    legs: str | None = None
    unit: str | None = None


@dataclass(frozen=True)
class Test:
    """Something a person asks, looks at, measures or does, with the outcomes it can have."""

    __test__ = False  # not a pytest class

    id: str
    name: str
    area: str
    kind: TestKind
    outcomes: tuple[Outcome, ...]
    how: tuple[str, ...] = ()
    instrument: str = ""
    meter: str | None = None
    per: str | None = None
    choose: Choose = "one"
    healthy: tuple[str, ...] = ()
    severity: tuple[tuple[str, ...], ...] = ()
    background: Mapping[str, float] = field(default_factory=dict)
    reads: tuple[Read, ...] = ()
    work_state: WorkStateName = "any"
    needs_state: tuple[str, ...] = ()
    exposes: Exposure = "none"
    after: tuple[str, ...] = ()
    invalid_when: tuple[str, ...] = ()
    hazards: tuple[str, ...] = ()
    minutes: float = 1.0
    wait_minutes: float = 0.0
    exists_when: FactsNeeded = field(default_factory=dict)
    who: tuple[str, ...] = ()
    source: str = ""


@dataclass(frozen=True)
class Finding:
    """A test and the outcomes any one of which counts."""

    test: str
    outcomes: tuple[str, ...]


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


@dataclass(frozen=True)
class Condition:
    """A condition tree. `op` says how `parts` combine, or that this is a leaf.

    Leaves: `finding` (test + outcomes), `fact` (equipment fact + words), `state` (a named
    condition of limits.yaml), `derived` (a finding another procedure rule concluded).
    """

    op: Literal["all", "any", "at-least", "not", "finding", "fact", "state", "derived"]
    parts: tuple[Condition, ...] = ()
    count: int = 0
    finding: Finding | None = None
    name: str = ""
    words: tuple[str, ...] = ()


@dataclass(frozen=True)
class Void:
    """Readings of `tests` weigh nothing while the rule holds; for these faults or for all."""

    tests: tuple[str, ...]
    for_faults: tuple[str, ...] = ()
    for_subsystems: tuple[str, ...] = ()


@dataclass(frozen=True)
class Procedure:
    """A when / then rule: what follows from findings beyond the weight of evidence."""

    id: str
    when: Condition
    reason: str
    derives: str | None = None
    look_first: tuple[str, ...] = ()
    void: Void | None = None
    save_before_power_cut: tuple[str, ...] = ()
    source: str = ""


@dataclass(frozen=True)
class Trigger:
    """All parts that are stated must hold together."""

    findings: tuple[Finding, ...] = ()
    complaint: str | None = None
    fault: str | None = None
    test: str | None = None
    work_state: WorkStateName | None = None
    exposes: Exposure | None = None
    profile: str | None = None
    equipment: FactsNeeded = field(default_factory=dict)


@dataclass(frozen=True)
class Stop:
    scope: StopScope
    covers: str


@dataclass(frozen=True)
class Hazard:
    id: str
    signal: Signal
    what_to_do: str
    triggers: tuple[Trigger, ...] = ()
    stop: Stop | None = None
    defer_to: str = ""
    source: str = ""


@dataclass(frozen=True)
class Complaint:
    """What the caller says; a start, never a filter. `faults` in order, the likeliest first.

    `also`: faults that bring this call now and then. `unlisted`: how often any other fault brings
    it all the same.
    """

    id: str
    says: str
    words: tuple[str, ...] = ()
    looks: str = ""
    first_tests: tuple[str, ...] = ()
    pointless_tests: tuple[str, ...] = ()
    faults: tuple[str, ...] = ()
    also: tuple[str, ...] = ()
    impossible_for: tuple[str, ...] = ()
    unlisted: Grade = "never"
    hazards_first: tuple[str, ...] = ()
    all_clear: str | None = None
    source: str = ""


@dataclass(frozen=True)
class EquipmentFact:
    id: str
    values: tuple[str, ...]
    asks: str
    counts: str | None = None


@dataclass(frozen=True)
class PlateValue:
    """A value limits lean on: nameplate, or this unit's own usual value."""

    id: str
    unit: str
    origin: Literal["nameplate", "own-record"]
    meaning: str
    per: str | None = None


@dataclass(frozen=True)
class Implication:
    when: FactsNeeded
    then: Mapping[str, str]


@dataclass(frozen=True)
class Derivation:
    """One way to compute a quantity: a formula's name and the quantities or facts it takes."""

    formula: str
    inputs: tuple[str, ...]


@dataclass(frozen=True)
class Quantity:
    id: str
    unit: str
    meaning: str
    per: str | None = None
    computed: tuple[Derivation, ...] = ()


@dataclass(frozen=True)
class NamedLimit:
    """A number or condition used in more than one place, with its source."""

    id: str
    applies_to: str
    bounds: tuple[Bound, ...] = ()
    value: float | None = None
    unit: str | None = None
    source: str = ""


@dataclass(frozen=True)
class RoundPoint:
    id: str
    number: int
    point: str
    season: tuple[str, ...]
    tests: tuple[str, ...]
    how_often: str = ""
    limit: str = ""
    trend: str = ""
    source: str = ""


@dataclass(frozen=True)
class DriftAlarm:
    """A change against this unit's own record that deserves a look, though within limits."""

    id: str
    quantity: str
    text: str
    change: float | None = None
    unit: str | None = None
    source: str = ""


@dataclass(frozen=True)
class Knowledge:
    """The whole rule base. Mappings keep file order and are keyed by id."""

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
    aliases: Mapping[tuple[str, str], tuple[str, str]] = field(default_factory=dict)
    retired: frozenset[str] = frozenset()
    digest: str = ""
