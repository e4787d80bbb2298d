"""The visits of a folder over which a STOP stands, or may stand since they cannot be read."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.safety.hazard_words import also_stands
from troubleshoot.visit.kept.bytes_of import beginning_of, bytes_in
from troubleshoot.visit.kept.journal import JournalError, lines_in
from troubleshoot.visit.kept.lines import Record
from troubleshoot.visit.kept.names import kept_visits
from troubleshoot.visit.kept.unreadable import (
    CUT_OFF,
    Unreadable,
    hides_a_stop,
    unreadable,
    was_closed,
)

if TYPE_CHECKING:
    from troubleshoot.reasoning.conclude import FiredHazard

Plain = dict[str, object]


@frozen
class Stopped:
    """A visit over which a STOP stands. `over`: it was handed over, and waits for its result.

    `fired` is the one that is told whole, `others` what stands beside it.
    """

    path: Path
    unit: str
    fired: FiredHazard
    over: bool
    tag: tuple[str, ...]
    others: tuple[Hazard, ...] = ()

    @property
    def visit(self) -> str:
        return self.path.stem

    @property
    def reason(self) -> str:
        """What stops its unit, in a few words."""
        standing = (self.fired.hazard, *self.others)
        return ", ".join(hazard.spoken for hazard in standing)

    @property
    def lines(self) -> tuple[str, ...]:
        """What to tell whoever asks nothing, a sentence a line: what stands, and who takes over."""
        over = f"Handed over: troubleshoot reopen {self.visit}" if self.over else "It is open."
        hazard = self.fired.hazard
        return (
            f"STOP over {self.unit or 'a unit without a name'}, visit {self.visit}: {self.reason}.",
            f"{hazard.what_to_do}",
            f"Hand over to: {hazard.defer_to}. {over}",
            *map(also_stands, self.others),
        )


Standing = Stopped | Unreadable


def standing_visits(knowledge: Knowledge, visits: Path, but: str = "") -> Iterator[Standing]:
    """Yield what stops a unit or may do so, the latest visit first; `but` names one left out."""
    for path in kept_visits(visits):
        found = standing_in(knowledge, path) if path.stem != but else None
        if found is not None:
            yield found


def stops_unit(standing: Standing) -> bool:
    """Whether nobody may begin on its unit: damage that hides no STOP is only told of."""
    return isinstance(standing, Stopped) or standing.may_stop


def may_be_over(standing: Standing, unit: str) -> bool:
    """Whether it may be this unit over which it stands: of damage that took the name, any unit."""
    nameless = isinstance(standing, Unreadable) and not standing.unit
    return same_unit(standing.unit, unit) or (nameless and unit != "")


def same_unit(one: str, other: str) -> bool:
    """Whether two names are of one unit, however they were typed: RTU-7, rtu 07."""
    return bool(_plain(one)) and _plain(one) == _plain(other)


def standing_account(standing: Standing, unit: str) -> Plain:
    """What stands over a unit as scripts see it; `unit` is the one they ask about."""
    account: Plain = {
        "visit": standing.visit,
        "unit": standing.unit or None,
        "same_unit": same_unit(standing.unit, unit),
        "readable": isinstance(standing, Stopped),
        "lines": list(standing.lines),
    }
    if isinstance(standing, Unreadable):
        return account
    hazard = standing.fired.hazard
    scope = None if hazard.stop is None else hazard.stop.scope
    return {**account, "id": hazard.id, "scope": scope, "handed_over": standing.over}


def standing_in(knowledge: Knowledge, path: Path) -> Standing | None:
    """What stands over one visit. A closed one is not replayed."""
    data = b""
    try:
        data = bytes_in(path)
        if was_closed(data):
            return None
        lines = lines_in(path, data)
    except NotUsable as error:
        return unreadable(path, beginning_of(path), str(error), cut_short=True)
    except JournalError as error:
        return unreadable(path, data, str(error))
    found = _stopped(knowledge, path, lines.events)
    lost = lines.torn and hides_a_stop(data[lines.whole :])
    return unreadable(path, data, CUT_OFF) if lost and found is None else found


def _stopped(knowledge: Knowledge, path: Path, events: tuple[Record, ...]) -> Stopped | None:
    """What stands over a visit that is not closed, as going on with it would find it.

    A STOP need not be on record: what called it up is enough, where power went between the two.
    """
    # Reasoning is imported only where a visit is not closed: most starts need none of it.
    from troubleshoot.reasoning.conclude import Reasoner
    from troubleshoot.safety.stops.lifting import conclude_visit, standing_stop
    from troubleshoot.safety.stops.standing import beside
    from troubleshoot.safety.stops.tags import tag_lines
    from troubleshoot.visit.events import replay
    from troubleshoot.visit.kept.broken_off import with_danger_told
    from troubleshoot.visit.kept.understanding import understood

    known = understood(knowledge, events).events
    state = with_danger_told(knowledge, replay(knowledge, known), known)
    conclusions = conclude_visit(Reasoner(knowledge), state)
    fired = standing_stop(knowledge, state, conclusions)
    if fired is None or state.ended not in (None, "stopped"):
        return None
    tag = tag_lines(knowledge, state, conclusions, fired)
    over, others = state.ended == "stopped", beside(conclusions, fired)
    return Stopped(path, state.name, fired, over, tag, others)


def _plain(name: str) -> str:
    """Letters and digits alone, without the zeros that lead a number."""
    return "".join(c for c in re.sub(r"(?<!\d)0+(?=\d)", "", name.casefold()) if c.isalnum())
