"""How long nobody has reported from the unit, and what that voids.

Times stand in the events themselves: nothing that touches, copies or lists a file renews them. What
cannot be true (a clock set back) and what is not known count as the longest absence. Nothing here
reads a clock.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime
from typing import Final

from troubleshoot.safety.transitions import resume_voids
from troubleshoot.visit.events import Resumed
from troubleshoot.visit.state import VisitState

ROOF_IS_GOOD_FOR: Final = 60.0
"""Minutes after which the roof is looked at again (common practice, no source)."""


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


def resumed(state: VisitState, now: datetime, profiles: Iterable[str] = ()) -> Resumed:
    """Somebody goes on after an absence; `profiles` where it was asked who that is."""
    set_back = bool(state.latest_time) and minutes_since(state.latest_time, now) is None
    minutes = None if set_back else minutes_since(state.last_time, now)
    return Resumed(
        None if minutes is None else round(minutes, 1),
        minutes is not None and _day(state.last_time, now) == now.date().isoformat(),
        tuple(sorted(profiles)) or None,
    )


def silence(state: VisitState, now: datetime, work_minutes: float) -> Resumed | None:
    """The event of a silence too long at an open prompt; none where nothing expires.

    `work_minutes`: how long what is asked for takes by itself, so that a long piece of work is no
    absence.
    """
    event = resumed(state, now)
    away = event.minutes_away
    at_work = None if away is None else max(0.0, away - work_minutes)
    return event if resume_voids(at_work, event.same_day) else None


def hour_passed(state: VisitState, now: datetime) -> bool:
    """Whether the look at the roof is too old to stand on."""
    if state.work.roof != "go":
        return False
    minutes = minutes_since(state.roof_time, now)
    return minutes is None or minutes > ROOF_IS_GOOD_FOR


def _day(time: str, now: datetime) -> str:
    return datetime.fromisoformat(time).astimezone(now.tzinfo).date().isoformat()
