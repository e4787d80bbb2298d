"""Which units of the register are due for the round of the season."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.records.register.columns import MATTERS
from troubleshoot.records.register.entry import Entry
from troubleshoot.records.register.files import Register
from troubleshoot.records.stands import Visited
from troubleshoot.visit.kept.journal import JournalError
from troubleshoot.visit.kept.names import natural
from troubleshoot.visit.kept.reading import read_visit
from troubleshoot.visit.round.season import SPRING, season_of

DAY: Final = 10
"""Letters of the day at the beginning of a moment, or of a visit's name."""


@frozen
class DueRound:
    """A unit whose round is due. `last`: the day of the last one, empty where none is kept."""

    entry: Entry
    last: str


def season_began(today: date) -> date:
    """The first day of the season whose round is due on a day."""
    if season_of(today.month) == "spring":
        return date(today.year, SPRING.start, 1)
    return date(today.year - (today.month < SPRING.start), SPRING.stop, 1)


def due_rounds(register: Register, visited: Visited, today: date) -> tuple[DueRound, ...]:
    """The units without a closed round in this season, roof by roof, what matters most first."""
    began = season_began(today).isoformat()
    rounds = (DueRound(each, _last_round(visited.of(each.name))) for each in register.entries)
    due = (each for each in rounds if each.last < began)
    return tuple(sorted(due, key=_where_to_go))


def _where_to_go(due: DueRound) -> tuple[object, ...]:
    own = due.entry.own
    usual = MATTERS.index(own.get("matters", "usual"))
    return own.get("site", ""), own.get("roof", ""), usual, natural(due.entry.name)


def _last_round(journals: Sequence[Path]) -> str:
    """The day of the last closed visit without a complaint; empty for none."""
    for path in journals:
        try:
            events = read_visit(path).events
        except JournalError:
            continue
        begun = [event for event in events if event.get("event") == "start"]
        closed = any(
            event.get("event") == "end" and event.get("ending") == "closed" for event in events
        )
        if begun and closed and begun[-1].get("routine") is True:
            return str(begun[-1].get("time") or path.stem)[:DAY]
    return ""
