"""Tests, the outcomes they can have, and the limits that tell outcomes apart."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from troubleshoot.knowledge.model.words import (
    Choose,
    Exposure,
    FactsNeeded,
    Signature,
    TestKind,
    WorkStateName,
)


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
    """One outcome of a test.

    `limits`: any one line is enough. `words`: what people type for it beside its own words.
    """

    id: str
    means: str = ""
    limits: tuple[LimitLine, ...] = ()
    exists_when: FactsNeeded = field(default_factory=dict)
    words: tuple[str, ...] = ()
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
    signed: tuple[Signature, ...] = ()
    source: str = ""


@dataclass(frozen=True)
class Finding:
    """A test and the outcomes any one of which counts."""

    test: str
    outcomes: tuple[str, ...]
