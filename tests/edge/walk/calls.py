"""What a unit is called for in a visit: a start not known to be for cooling may be for heat."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

from tests.edge.walk.order_of_work import CONFIRMING
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.work_state import UnitAtWork

COOLING = frozenset({
    "no-cooling", "weak-cooling", "fails-hot-afternoons", "only-half-runs", "cooling-short-cycles",
    "cooling-will-not-stop", "ice-on-pipes-or-coil", "cold-but-clammy", "no-free-cooling",
    "cooling-trips-in-cool-weather",
})  # fmt: skip
"""Complaints of a unit that is called to cool."""
BURNERS = frozenset({"gas", "ignition", "combustion"})


@dataclass
class Calls:
    """What is complained of, and the test that was said to be on the way, while it still is."""

    knowledge: Knowledge
    complaint: str | None = None
    aimed: str | None = None

    def watch(self, event: dict[str, Any]) -> None:
        """Something was said; a step that was not confirmed may end the way that it was on."""
        kind = event["event"]
        if kind == "start":
            self.complaint = event.get("complaint")
        done = event.get("outcomes") == [CONFIRMING.get(event.get("step", ""))]
        if kind == "aim":
            self.aimed = event["test"]
        elif kind != "step" or not done:
            self.aimed = None

    @property
    def to_cool(self) -> bool:
        """Whether what is complained of is known to be the cooling."""
        return self.complaint in COOLING

    def on(self, unit: UnitAtWork) -> UnitAtWork:
        """The unit, and whether it is known to be called to cool."""
        return replace(unit, called_to_cool=self.to_cool)

    def may_be_heat(self, test: str, unit: UnitAtWork) -> bool:
        """Whether gas may be lit, by what is complained of, by a step or test, or its aim."""
        lit = any(self._is_lit(name) for name in (test, self.aimed) if name)
        return unit.burns_gas and (not self.to_cool or lit)

    def _is_lit(self, name: str) -> bool:
        test = self.knowledge.tests[name]
        return test.area in BURNERS and test.work_state in ("running", "running-open")
