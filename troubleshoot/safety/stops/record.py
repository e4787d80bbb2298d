"""What is kept of a STOP: where it was met, who took it over, what came of that, what is off."""

from __future__ import annotations

from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.hearing.roles import ROLES

NOT_TOLD_YET: Final = "not told yet: "
"""What stands on record before those whom a STOP is for, where they do not know of it."""

TOLD: Final = "who was told"
"""The part of a hand-over that is kept before it is closed; all others are of its result."""

Spot = tuple[str, Place | None]
"""A test at a place."""


@frozen
class HandOverResult:
    """What came of handing a stopped job over, in the words of whoever reports it.

    `by`: the role of who made it safe. `reading`: what shows it. `when` it was read, as
    `2026-11-26 14:30` on the technician's clock. `who`: the words in which they were named, empty
    where only the role was.
    """

    by: str
    done: str
    reading: str
    when: str
    who: str = ""

    @property
    def by_whom(self) -> str:
        """The role, and the words beside it."""
        role = ROLES.get(self.by, self.by)
        return f'{role} ("{self.who}")' if self.who else role


@frozen
class Given:
    """One part of a hand-over or of its result, in the words and at the time it was given."""

    part: str
    words: str
    time: str = ""


@frozen
class LeftOn:
    """A danger for which an earlier visit to the unit has left something off.

    `tests`: those whose sound reading, at all of its circuits, takes it away.
    """

    hazard: str
    circuits: tuple[int, ...]
    tests: tuple[str, ...]


@frozen
class StopMet:
    """A STOP that halted the visit, and what has come of it since.

    `answers`: how many had been given when it halted the visit, or at its reopening; what was found
    before has to be found afresh. `spot`: the finding that shows whether it still stands; without
    one it can only be handed over. `reported`: the words in which a person reported it. `time`:
    when it halted the visit. `told`: who was told and when, `told_at`: by the clock. `result`: who
    made it safe and how it shows. `done_here`: what the people it stopped did about it. `reopened`:
    the visit had been handed over before that. `called`: when whoever made it safe was told or
    came, where the record says that they had not been told yet. `on_record`: nothing that is
    understood today calls it up, so it stands by itself. `said_yes_to`: what was asked outright of
    whoever told that it was made safe. `first_time`: when it was met before, where another STOP
    came in between and nothing of this one was read since.
    """

    hazard: str
    answers: int
    spot: Spot | None = None
    reported: str | None = None
    time: str = ""
    told: str = ""
    told_at: str = ""
    result: HandOverResult | None = None
    done_here: str = ""
    reopened: bool = False
    called: str = ""
    on_record: bool = False
    said_yes_to: tuple[str, ...] = ()
    first_time: str = ""

    @property
    def stands_since(self) -> str:
        """The moment since which it stands."""
        return self.first_time or self.time
