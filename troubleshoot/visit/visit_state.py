"""What one visit has come to, as it stands after its events."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from troubleshoot.reasoning.answers import Answer, Case
from troubleshoot.reasoning.equipment import Unit
from troubleshoot.reasoning.places import Place
from troubleshoot.visit.profiles import FULLY_QUALIFIED
from troubleshoot.visit.work_state import UnitAtWork, WorkState

Spot = tuple[str, Place | None]
"""A test at a place."""


@dataclass(frozen=True, slots=True)
class Asked:
    """One thing asked and what came of it, for the record.

    `place`: for a safety step, its place in words, which need not be one of the unit's tree.
    """

    test: str
    at: Place | None
    outcome: str | None
    text: str | None
    valid: bool
    minutes: float
    work_state: str
    place: str | None = None


@dataclass(frozen=True, slots=True)
class HandOverResult:
    """What came of handing a stopped job over, in the words of whoever reports it.

    `by`: the role of who made it safe. `reading`: what shows it. `when` it was read, as
    `2026-11-26 14:30` on the technician's clock.
    """

    by: str
    done: str
    reading: str
    when: str


@dataclass(frozen=True, slots=True)
class StopMet:
    """A STOP that halted the visit, and what has come of it since.

    `answers`: how many had been given when it halted the visit, or at its reopening; what was found
    before has to be found afresh. `told`: who was told and when, `told_at`: by the clock. `result`:
    who made it safe and how it shows. `reopened`: the visit had been handed over before that.
    `on_record`: nothing that is understood today calls it up, so it stands by itself.
    """

    hazard: str
    answers: int
    told: str = ""
    told_at: str = ""
    result: HandOverResult | None = None
    reopened: bool = False
    on_record: bool = False


@dataclass(frozen=True, slots=True)
class VisitState:
    """Everything one visit has come to.

    `fresh`: the finding that is being taken once more to see whether a STOP can be lifted;
    `fresh_since`: how many answers had been given before that.
    """

    unit_data: Mapping[str, object] = field(default_factory=dict)
    own_record: Mapping[str, object] = field(default_factory=dict)
    unit: Unit = field(default_factory=Unit)
    at_work: UnitAtWork = field(default_factory=UnitAtWork)
    complaint: str | None = None
    name: str = ""
    words: str = ""
    routine: bool = False
    profiles: frozenset[str] = FULLY_QUALIFIED
    conditions: Mapping[str, str] = field(default_factory=dict)
    answers: tuple[Answer, ...] = ()
    asked: tuple[Asked, ...] = ()
    skipped: frozenset[Spot] = frozenset()
    not_known: frozenset[str] = frozenset()
    work: WorkState = field(default_factory=WorkState)
    aim: Spot | None = None
    aim_reason: str = ""
    stops: tuple[StopMet, ...] = ()
    fresh: Spot | None = None
    fresh_since: int = 0
    notes: tuple[str, ...] = ()
    repaired: tuple[str, ...] = ()
    mended_here: bool = False
    closing: bool = False
    cured: bool = False
    ended: str | None = None

    @property
    def case(self) -> Case:
        """The case that the reasoning starts from."""
        return Case(
            self.unit,
            self.complaint,
            self.answers,
            self.conditions,
            self.skipped,
            self.repaired,
            self.routine,
            tuple(dict.fromkeys(met.hazard for met in self.stops if met.on_record)),
        )

    @property
    def reopened_after(self) -> int | None:
        """How many answers had been given when the visit was last reopened, if it ever was."""
        return max((met.answers for met in self.stops if met.reopened), default=None)

    @property
    def minutes(self) -> float:
        return sum(each.minutes for each in self.asked)
