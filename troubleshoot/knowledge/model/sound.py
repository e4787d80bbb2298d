"""What a sound unit reads, which readings cannot be true together, and units as they are met.

Practice draws its cases from these; the author of a rule can change them without a programmer.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from troubleshoot.knowledge.model.reference import Derivation
from troubleshoot.knowledge.model.tests import Bound, LimitLine
from troubleshoot.knowledge.model.words import FactsNeeded


@dataclass(frozen=True)
class SoundWay:
    """One way to say what a sound unit reads, where `when` and `where` hold.

    `shown`: as the meter shows it, where that is no plain number. `wrong`: what it shows where
    something is wrong, if no scaling of the sound number comes to that.
    """

    number: Derivation | None = None
    at_least: float | None = None
    at_most: float | None = None
    shown: str = ""
    wrong: tuple[str, ...] = ()
    when: FactsNeeded = field(default_factory=dict)
    where: tuple[Bound, ...] = ()


@dataclass(frozen=True)
class SoundReading:
    """What a sound unit reads on one quantity: the first way that serves, or why there is none.

    `three_legs`: the kind of unit on which the meter goes to three legs. `follows`: the quantity
    whose number is chosen where this one has to come out at something.
    """

    id: str
    ways: tuple[SoundWay, ...] = ()
    three_legs: FactsNeeded = field(default_factory=dict)
    follows: str | None = None
    none_because: str = ""


@dataclass(frozen=True)
class Day:
    """The weather in which the faults of some subsystems are called out for; of none: all others.

    `conditions`: quantity -> from and to, whole numbers in the quantity's own unit.
    """

    conditions: Mapping[str, tuple[int, int]]
    subsystems: tuple[str, ...] = ()


@dataclass(frozen=True)
class Relation:
    """What always holds between readings of one unit, where the bounds `where` do.

    Any one line of `must` is enough; `says` is the sentence for readings that break it.
    """

    id: str
    says: str
    must: tuple[LimitLine, ...]
    where: tuple[Bound, ...] = ()


@dataclass(frozen=True)
class TypicalUnit:
    """A unit as it is met, invented: what cases are drawn on, or the base is measured on."""

    id: str
    about: str
    serves: Literal["practice", "measuring"]
    unit: Mapping[str, object]
    own_record: Mapping[str, object] = field(default_factory=dict)
