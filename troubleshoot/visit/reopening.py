"""Reopening a stopped visit: only with the result of the hand-over, and with a fresh finding first.

The result lifts nothing by itself. It says who made the place safe, what they found and did, and
the reading that shows it; then the finding that stopped the visit is taken once more, and if that
is bad the STOP stands again.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import datetime
from types import MappingProxyType
from typing import Final

from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.outside.numbers import choice
from troubleshoot.reasoning.conclude import Conclusions
from troubleshoot.visit.stops import finding_of, standing_stop
from troubleshoot.visit.visit_state import Spot, StopMet, VisitState

ROLES: Final[Mapping[str, str]] = MappingProxyType(
    {
        "fire-service": "the fire service",
        "medical-service": "the medical service",
        "gas-utility": "the gas utility",
        "gas-fitter": "a licensed gas fitter",
        "combustion": "a combustion-qualified person, with an analyzer",
        "heating-contractor": "a licensed heating contractor",
        "electrician": "a licensed electrician",
        "electric-utility": "the electric utility",
        "refrigerant": "a certified refrigerant technician, trained for this refrigerant",
        "fire-alarm": "a person licensed for fire alarms",
        "building-owner": "the building's owner",
        "supervisor": "the supervisor",
    }
)
"""Who may have made a place safe. Which of them fits is the hazard's to say."""

LEAST_WORDS: Final = 3
"""A finding and its remedy take three words at least: "fixed it" tells nobody anything."""

_WORD: Final = re.compile(r"[^\W\d_]*[aeiouy][^\W\d_]*", re.IGNORECASE)

_CLOCK: Final = "%Y-%m-%d %H:%M"


class NotAResult(ValueError):
    """What was given is no result of a hand-over; the message says what would do."""


class NotReopened(ValueError):
    """The visit stays as it is; the message says why and what to do."""


def minute(moment: datetime) -> str:
    """A moment to the minute, on the clock of whoever types it: 2026-11-26 14:30."""
    return moment.strftime(_CLOCK)


def fitting_roles(hazard: Hazard) -> tuple[str, ...]:
    """The roles that may make a place safe after this hazard's STOP, in the order of the list."""
    return tuple(name for name in ROLES if name in (hazard.cleared_by or ("supervisor",)))


def role(typed: str, names: tuple[str, ...] = tuple(ROLES)) -> str:
    """The role that a number of the list or the beginning of its name means."""
    if (number := choice(typed, len(names))) is not None:
        return names[number - 1]
    word = "-".join(typed.lower().split())
    begun = [name for name in names if word and name.startswith(word)]
    if word in names or len(begun) == 1:
        return word if word in names else begun[0]
    raise NotAResult(f"Give a number from 1 to {len(names)}, or one of: {', '.join(names)}.")


def in_words(typed: str) -> str:
    """What was found and done, or what was read: enough of it to be read by somebody else."""
    words = {word.lower() for word in _WORD.findall(typed) if len(word) > 1}
    if len(words) < LEAST_WORDS:
        raise NotAResult("Say it in a few words, so that whoever reads it knows what was meant.")
    return typed


def when_read(typed: str, stopped_at: str, now: datetime) -> str:
    """The minute of a reading: after the STOP, and not still to come."""
    try:
        at = datetime.strptime(typed if "-" in typed else f"{now:%Y-%m-%d} {typed}", _CLOCK)
    except ValueError:
        raise NotAResult(
            f"Give the day and time as {minute(now)}, or only the time for today."
        ) from None
    if minute(at) > minute(now):
        raise NotAResult("That is still to come. Give the time at which it was read.")
    if minute(at) < stopped_at:
        raise NotAResult(f"That was before the STOP of {stopped_at}; it has to be read after it.")
    return minute(at)


def stopped_at(met: StopMet) -> str:
    """The minute after which a STOP's danger has to be read afresh; empty where it is not known."""
    if not met.time:
        return met.told_at
    return minute(datetime.fromisoformat(met.time))


def what_stopped(
    knowledge: Knowledge, state: VisitState, conclusions: Conclusions
) -> tuple[Hazard, Spot]:
    """The STOP over a visit, and the finding that has to be taken afresh. Raises NotReopened."""
    if state.ended is None:
        raise NotReopened("it is still open; go on with it by: troubleshoot")
    standing = standing_stop(knowledge, state, conclusions)
    if state.ended != "stopped" or standing is None:
        raise NotReopened("it was closed, not stopped; start a new visit by: troubleshoot")
    spot = finding_of(knowledge, state, conclusions, standing)
    if spot is None:
        raise NotReopened("no finding can show that it is safe now; it stays closed")
    return standing.hazard, spot
