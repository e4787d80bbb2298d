"""A visit under way with something of everything, and what an event changes of it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.stops.record import Spot
from troubleshoot.safety.work_state import WorkState
from troubleshoot.visit.events import Event, after
from troubleshoot.visit.state import Asked, VisitState

UNIT: dict[str, Any] = {"circuits": 2, "refrigerant": "R-410A", "duct-smoke-detector": "not-fitted"}
ONE, TWO = Place("circuit", 1), Place("circuit", 2)
AIM: Spot = ("suction-pressure", ONE)
FRESH: Spot = ("heat-exchanger-look", None)
THEN = "2026-11-26T09:00:00+00:00"
DEAD = WorkState(
    power="locked-out", panels="off", calls="off", dead="proved", meter="proved", roof="go",
    occupants_told=True, discharged=frozenset({"capacitor blower"}),
)  # fmt: skip


def asked(test: str, at: Place | None, **more: Any) -> Asked:
    given = {"outcome": None, "text": None, "valid": True, "minutes": 1.0, "work_state": "any"}
    return Asked(test, at, **{**given, **more})


def changed(shipped: Knowledge, state: VisitState, event: Event, **changes: Any) -> None:
    """The event changes just these, but for the times that its own time settles."""
    now = replace(event, time=THEN)
    found = after(shipped, state, now)
    times = ("latest_time", "roof_time", "power_off_time", "gas_shut_time")
    settled = {each: getattr(found, each) for each in times}
    assert found == replace(state, **changes, **settled)
