"""When / then rules and hazards."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from troubleshoot.knowledge.model.tests import Finding
from troubleshoot.knowledge.model.words import (
    Exposure,
    FactsNeeded,
    Signal,
    Signature,
    StopScope,
    WorkStateName,
)


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
    """All parts that are stated must hold together.

    `findings`: seen, or possible within the meter's accuracy, counting or not. `as_taken`: only
    what readings that count were taken for; for a sign that every sound unit comes near.
    """

    findings: tuple[Finding, ...] = ()
    as_taken: bool = False
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
class Ban:
    """Tests that are not to be done while a hazard stands: those that fit all parts stated here.

    `places`: kinds of place. `at` circuit: only where the hazard stands at every circuit that the
    test concerns. `until`: findings that end it, each read at every place there is for it.
    """

    areas: tuple[str, ...] = ()
    work_states: tuple[WorkStateName, ...] = ()
    places: tuple[str, ...] = ()
    tests: tuple[str, ...] = ()
    at: Literal["unit", "circuit"] = "unit"
    until: tuple[Finding, ...] = ()


@dataclass(frozen=True)
class Hazard:
    """A danger and its caution.

    `forbids`: what is not done while it stands. A STOP of a wider scope than one step that states
    nothing there forbids every test.
    `words`: what people say who meet it ("i smell gas"). `cleared_by`: roles that may make the
    place safe after its STOP. `all_clear`: the test whose sound outcome, taken afresh, shows that
    the danger has gone, where no finding called it up. `tag`: the sentence for the tag on the unit.
    """

    id: str
    signal: Signal
    what_to_do: str
    triggers: tuple[Trigger, ...] = ()
    stop: Stop | None = None
    defer_to: str = ""
    words: tuple[str, ...] = ()
    cleared_by: tuple[str, ...] = ()
    all_clear: str | None = None
    tag: str = ""
    signed: tuple[Signature, ...] = ()
    forbids: tuple[Ban, ...] = ()
    source: str = ""
