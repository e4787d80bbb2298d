"""What safety has to know of a visit, and nothing more of it."""

from __future__ import annotations

from typing import Protocol

from troubleshoot.reasoning.equipment import Unit
from troubleshoot.safety.work_state import UnitAtWork


class Job(Protocol):
    """A visit as safety sees it: which unit, after which call, in whose hands.

    `complaint`: the id of what was called in. `not_known`: facts that were asked for in vain.
    """

    @property
    def unit(self) -> Unit: ...

    @property
    def at_work(self) -> UnitAtWork: ...

    @property
    def complaint(self) -> str | None: ...

    @property
    def profiles(self) -> frozenset[str]: ...

    @property
    def not_known(self) -> frozenset[str]: ...
