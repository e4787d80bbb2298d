"""What a unit is called for in a visit: a start not known to be for cooling may be for heat."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from tests.edge.walk.order_of_work import CONFIRMING
from troubleshoot.knowledge.model import Knowledge

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

    def may_be_heat(self) -> bool:
        """Whether a start may be one of heat, by what is complained of or is aimed at."""
        burner = self.aimed is not None and self.knowledge.tests[self.aimed].area in BURNERS
        return self.complaint not in COOLING or burner
