"""Reopening a stopped visit: only with the result of the hand-over, and with a fresh finding first.

The result lifts nothing by itself. It says who made the place safe, what they found and did, and
the reading that shows it; then the finding that stopped the visit is taken once more, and if that
is bad the STOP stands again.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from typing import Final

from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.outside.numbers import choice
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.safety.hearing.moments import is_to_come, moment, moment_within
from troubleshoot.safety.hearing.roles import (
    ROLES,
    has_not_come,
    names_a_role,
    roles_in,
)
from troubleshoot.safety.job import Job
from troubleshoot.safety.stops.lifting import finding_of, standing_stop
from troubleshoot.safety.stops.parts import is_all_clear, shown_by
from troubleshoot.safety.stops.record import NOT_TOLD_YET, Spot, StopMet
from troubleshoot.safety.stops.result import NotAResult

CALLED_FIRST: Final = timedelta(minutes=15)
"""Whoever calls for help before anything else types afterwards (common practice, no source)."""
A_DAY: Final = timedelta(hours=24)
"""A reading of the day before shows nothing of today (common practice, no source)."""

_MINUTE: Final = "%Y-%m-%d %H:%M"


class NotReopened(ValueError):
    """The visit stays as it is; the message says why and what to do."""


def minute(at: datetime) -> str:
    """A moment to the minute, on the clock of whoever types it: 2026-11-26 14:30."""
    return at.strftime(_MINUTE)


def fitting_roles(hazard: Hazard) -> tuple[str, ...]:
    """The roles that may make a place safe after this hazard's STOP, in the order of the list."""
    return tuple(name for name in ROLES if name in (hazard.cleared_by or ("supervisor",)))


def role(typed: str, names: tuple[str, ...] = tuple(ROLES)) -> str:
    """The role that a number of the list or the beginning of its name means.

    Who is only on the way, or may not do it, has made nothing safe.
    """
    if (number := choice(typed, len(names))) is not None:
        return names[number - 1]
    if is_to_come(typed) or has_not_come(typed):
        raise NotAResult(
            "Only somebody who came, and is licensed or trusted with it, has made it safe: give "
            "who that was, or q."
        )
    word = "-".join(typed.lower().split())
    begun = [name for name in names if word and name.startswith(word)]
    if word in names or len(begun) == 1:
        return word if word in names else begun[0]
    part = [name for name in names if word in name.split("-")]
    said = roles_in(typed) if names_a_role(typed) else ()
    spoken = part or [name for name in said if name in names]
    if len(spoken) == 1:
        return spoken[0]
    raise NotAResult(f"Give a number from 1 to {len(names)}, or one of: {', '.join(names)}.")


def is_told_when(met: StopMet | None, typed: str, now: datetime) -> bool:
    """Whether it is said when somebody was told. Raises NotAResult for no time that can be meant.

    Who was told before the STOP knows nothing of it, and who will be told does not know it yet.
    """
    if is_to_come(typed):
        raise NotAResult(
            "That is still to come. Somebody has to know of it before you leave: tell them, then "
            "give who it was and when."
        )
    at = moment_within(typed, now)
    if at is None:
        return False
    if minute(at) > minute(now):
        raise NotAResult("That is still to come. Give the time at which they were told.")
    if met is not None and minute(at) < _told_since(met):
        raise NotAResult(f"That is before the STOP of {stopped_at(met)}: tell them of it now.")
    return True


def _told_since(met: StopMet) -> str:
    """The minute from which somebody may have been told of a STOP; empty where it is not known."""
    at = stopped_at(met)
    if not at or met.reported is None:
        return at
    return minute(datetime.strptime(at, _MINUTE) - CALLED_FIRST)


def is_not_told(met: StopMet, by: str) -> bool:
    """Whether the record of a hand-over says of a role that it did not know of the STOP."""
    _, found, untold = met.told.rpartition(NOT_TOLD_YET)
    return bool(found) and by in roles_in(untold)


def not_told(hazard: Hazard, told: str) -> str:
    """Whom a STOP is for, where nobody of those was told; empty where somebody was.

    The supervisor may be told first of anything; that does not make the place safe.
    """
    meant = {*roles_in(hazard.defer_to), *hazard.cleared_by}
    return "" if not meant or meant & {*roles_in(told)} else hazard.defer_to


def when_called(typed: str, since: str, now: datetime) -> str:
    """The minute at which somebody was told of a STOP, or came for it: after it, and past."""
    at = None if is_to_come(typed) else moment_within(typed, now)
    if at is None or minute(at) > minute(now):
        raise NotAResult(
            "Who does not know of it has made nothing safe. Give the time at which they were told "
            "or came, as 14:30 or 2:30 pm; q leaves the STOP as it stands."
        )
    if minute(at) < since:
        raise NotAResult(f"That is before the STOP of {since}: give when they were told of it.")
    return minute(at)


def when_read(typed: str, since: str, now: datetime, handed_over: str = "") -> str:
    """The minute of a reading: after the minute `since`, and not still to come.

    Nor is it from before the STOP was `handed_over`: whoever made it safe read it afterwards.
    """
    if is_to_come(typed):
        raise NotAResult("That is still to come. Give the time at which it was read.")
    at = moment(typed, now)
    if at is None:
        raise NotAResult(
            f"Give the time as 14:30, 1430, 2:30 pm, just now or 10 min ago; of another day as "
            f"{minute(now)}."
        )
    if minute(at) > minute(now):
        raise NotAResult("That is still to come. Give the time at which it was read.")
    if now - at > A_DAY:
        raise NotAResult("That is more than a day ago, and much may be otherwise: read it again.")
    if minute(at) <= since:
        raise NotAResult(f"That is not after {since}, and only what was read after it counts.")
    if minute(at) < handed_over:
        raise NotAResult(
            f"That is before the hand-over of {handed_over}, and only what was read since counts."
        )
    return minute(at)


def handed_over_at(met: StopMet) -> str:
    """The minute at which the last of those was told who were told; empty where none was."""
    if not met.told_at:
        return ""
    kept = datetime.strptime(met.told_at, _MINUTE)
    said = (moment_within(part, kept) for part in met.told.partition(NOT_TOLD_YET)[0].split(";"))
    return minute(max((at for at in said if at is not None and at <= kept), default=kept))


def stopped_at(met: StopMet) -> str:
    """The minute after which a STOP's danger has to be read afresh; empty where it is not known."""
    if not met.time:
        return met.told_at
    return minute(datetime.fromisoformat(met.time))


def read_after(knowledge: Knowledge, met: StopMet) -> str:
    """The minute after which a reading shows that the danger has gone: the STOP's, and its wait."""
    at, wait = stopped_at(met), _wait_minutes(knowledge, met.hazard)
    if not at or not wait:
        return at
    since = datetime.strptime(_stands_since(met), _MINUTE)
    return max(at, minute(since + timedelta(minutes=wait - 1)))


def still_waiting(knowledge: Knowledge, met: StopMet, now: datetime) -> str:
    """Why a STOP whose all-clear is a wait is not lifted yet, by the clock; empty where it may be.

    A clock that shows a time before the STOP has not shown the wait.
    """
    wait = _wait_minutes(knowledge, met.hazard)
    if not wait or not met.stands_since:
        return ""
    over = datetime.fromisoformat(met.stands_since) + timedelta(minutes=wait)
    if now >= over:
        return ""
    return (
        f"{wait:.0f} minutes have to pass on the clock after the STOP of {_stands_since(met)}, and "
        f"no word shortens them: not before {minute(over)}, and later if it came again."
    )


def _stands_since(met: StopMet) -> str:
    """The minute from which a STOP has stood, however often it was told since."""
    return stopped_at(replace(met, time=met.stands_since))


def _wait_minutes(knowledge: Knowledge, hazard: str) -> float:
    """How long a hazard's all-clear takes by waiting; nothing where it is no wait."""
    known = knowledge.hazards.get(hazard)
    test = None if known is None else knowledge.tests.get(known.all_clear or "")
    return test.wait_minutes if test is not None and is_all_clear(test) else 0.0


def what_stopped(knowledge: Knowledge, job: Job, conclusions: Conclusions) -> tuple[Hazard, Spot]:
    """The STOP over a visit, and what has to be taken afresh first. Raises NotReopened."""
    if job.ended is None:
        raise NotReopened("it is still open; go on with it by: troubleshoot, and there its name")
    standing = standing_stop(knowledge, job, conclusions)
    if job.ended != "stopped" or standing is None:
        raise NotReopened("it was closed, not stopped; start a new visit by: troubleshoot")
    spot = finding_of(knowledge, job, conclusions, standing)
    if spot is None:
        raise NotReopened("no finding can show that it is safe now; it stays closed")
    return standing.hazard, shown_by(knowledge, job, standing.hazard, spot)[0]
