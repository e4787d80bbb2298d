"""How long nobody has reported from the unit, and what that voids.

Times stand in the events themselves: nothing that touches, copies or lists a file renews them. What
cannot be true (a clock set back) and what is not known count as the longest absence. Nothing here
reads a clock.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime
from typing import Final

from troubleshoot.safety.steps import EDGE_PROTECTION, ROOF
from troubleshoot.safety.transitions import resume_voids
from troubleshoot.visit.event_shapes import Event
from troubleshoot.visit.visit_state import VisitState

ROOF_IS_GOOD_FOR: Final = 60.0
"""Minutes after which the roof is looked at again (common practice, no source)."""

REPORTS: Final = frozenset({"start", "fact", "answer", "step", "skip", "repaired", "reopened"})
"""Events in which somebody at the unit says something of it. A note may be written anywhere."""


WITHOUT_WORK: Final = frozenset({"fact", "repaired"})
"""Reports that answer no test or step: no work that was asked for explains the silence before."""


def stamp(moment: datetime) -> str:
    """A moment as events have it: to the second, with the offset of the place."""
    return moment.isoformat(timespec="seconds")


def minutes_since(time: str, now: datetime) -> float | None:
    """Minutes from an event's time until now; None where that is not known or cannot be."""
    try:
        minutes = (now - datetime.fromisoformat(time)).total_seconds() / 60
    except (ValueError, TypeError):
        return None
    return minutes if minutes >= 0 else None


def resumed_event(state: VisitState, now: datetime, profiles: Iterable[str] = ()) -> Event:
    """Somebody goes on after an absence; `profiles` where it was asked who that is."""
    minutes = minutes_since(state.last_time, now)
    event: dict[str, object] = {
        "event": "resumed",
        "minutes_away": None if minutes is None else round(minutes, 1),
        "same_day": minutes is not None and _day(state.last_time, now) == now.date().isoformat(),
    }
    held = sorted(profiles)
    return {**event, "profiles": held} if held else event


def silence(state: VisitState, now: datetime, work_minutes: float) -> Event | None:
    """The event of a silence too long at an open prompt; none where nothing expires.

    `work_minutes`: how long what is asked for takes by itself, so that a long piece of work is no
    absence.
    """
    event = resumed_event(state, now)
    away = event["minutes_away"]
    at_work = None if away is None else max(0.0, away - work_minutes)
    return event if resume_voids(at_work, bool(event["same_day"])) else None


def hour_passed(state: VisitState, now: datetime) -> bool:
    """Whether the look at the roof is too old to stand on."""
    if state.work.roof != "go":
        return False
    minutes = minutes_since(state.roof_time, now)
    return minutes is None or minutes > ROOF_IS_GOOD_FOR


def timed(before: VisitState, after: VisitState, event: Event) -> VisitState:
    """The state after an event, with the times that its own time settles."""
    time = event.get("time", "")
    kind = event["event"]
    if kind in REPORTS or (kind == "resumed" and voided(event)):
        after = replace(after, last_time=time)
    done = event.get("step") if kind == "step" else event.get("test") if kind == "answer" else None
    looked = done in (ROOF, EDGE_PROTECTION)
    if after.work.roof == "go" and (looked or before.work.roof != "go"):
        after = replace(after, roof_time=time)
    if after.work.power == "locked-out" and before.work.power != "locked-out":
        after = replace(after, power_off_time=time)
    return after


def voided(event: Event) -> bool:
    """Whether the absence that a `resumed` event tells of voids what others could have changed."""
    away = event["minutes_away"]
    return resume_voids(None if away is None else float(away), bool(event["same_day"]))


def _day(time: str, now: datetime) -> str:
    return datetime.fromisoformat(time).astimezone(now.tzinfo).date().isoformat()
