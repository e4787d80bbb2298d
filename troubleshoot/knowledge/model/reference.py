"""What rules lean on: complaints, equipment, quantities, named limits, the round."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from troubleshoot.knowledge.model.tests import Bound
from troubleshoot.knowledge.model.words import FactsNeeded, Grade


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
    """`words`: what people say for a value beside its own words."""

    id: str
    values: tuple[str, ...]
    asks: str
    counts: str | None = None
    words: Mapping[str, tuple[str, ...]] = field(default_factory=dict)


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
    """One way to compute a quantity: a formula's name and the quantities or facts it takes.

    What comes out is multiplied by `times`, then `plus` is added.
    """

    formula: str
    inputs: tuple[str, ...]
    times: float = 1.0
    plus: float = 0.0


@dataclass(frozen=True)
class Quantity:
    """What is measured. `can_be`: the lowest and highest that it can be at all, in its unit."""

    id: str
    unit: str
    meaning: str
    per: str | None = None
    computed: tuple[Derivation, ...] = ()
    can_be: tuple[float, float] | None = None


@dataclass(frozen=True)
class NamedLimit:
    """A condition of numbers that more than one rule leans on, with its source."""

    id: str
    applies_to: str
    bounds: tuple[Bound, ...]
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
