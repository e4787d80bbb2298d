"""What safety has to know of a visit, and nothing more of it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.safety.steps import Step
from troubleshoot.safety.stops.record import LeftOn, Spot, StopMet
from troubleshoot.safety.work_state import UnitAtWork, WorkState


class Job(Protocol):
    """A visit as safety sees it: which unit, after which call, in whose hands, stopped by what.

    `complaint`: the id of what was called in; `words`: as the caller said it. `not_known`: facts
    that were asked for in vain. `stops`: every STOP that was met, in that order. `left_on`: dangers
    for which earlier visits left something off. `failed_steps`: safety steps that failed since they
    were last sound, each as often as it did. `aim`: the test that is on the way. `fresh`: the
    finding that is being taken once more to see whether a STOP can be lifted; `fresh_read`: one has
    been, and nothing has broken the way to the rest since; `fresh_since`: how many answers had been
    given before that.
    `lock_by`: under which profiles the lock was hung last.
    `ended`: how it was closed, if it was.
    """

    @property
    def unit(self) -> Unit: ...

    @property
    def at_work(self) -> UnitAtWork: ...

    @property
    def work(self) -> WorkState: ...

    @property
    def name(self) -> str: ...

    @property
    def complaint(self) -> str | None: ...

    @property
    def words(self) -> str: ...

    @property
    def profiles(self) -> frozenset[str]: ...

    @property
    def lock_by(self) -> frozenset[str]: ...

    @property
    def not_known(self) -> frozenset[str]: ...

    @property
    def answers(self) -> Sequence[Answer]: ...

    @property
    def stops(self) -> Sequence[StopMet]: ...

    @property
    def left_on(self) -> Sequence[LeftOn]: ...

    @property
    def failed_steps(self) -> Sequence[Step]: ...

    @property
    def aim(self) -> Spot | None: ...

    @property
    def fresh(self) -> Spot | None: ...

    @property
    def fresh_read(self) -> bool: ...

    @property
    def fresh_since(self) -> int: ...

    @property
    def ended(self) -> str | None: ...

    @property
    def case(self) -> Case: ...

    def met(self, hazard: str) -> StopMet | None: ...

    def done_last_at(self, spot: Spot) -> str | None: ...
