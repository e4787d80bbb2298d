"""The visits of a folder over which a STOP stands, or may stand since they cannot be read."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.safety.hazard_words import also_stands
from troubleshoot.visit.kept.bytes_of import beginning_of, bytes_in
from troubleshoot.visit.kept.foreign import strayed, why_not_read
from troubleshoot.visit.kept.journal import JournalError, JournalNewer, lines_in
from troubleshoot.visit.kept.lines import Record
from troubleshoot.visit.kept.names import kept_visits
from troubleshoot.visit.kept.unit_names import may_be_same, same_unit
from troubleshoot.visit.kept.unreadable import (
    CUT_OFF,
    Unreadable,
    hides_a_stop,
    still_told,
    unreadable,
    was_closed,
)

if TYPE_CHECKING:
    from troubleshoot.reasoning.conclusions import FiredHazard

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
    """Yield what stops a unit or may do so, the latest visit first; `but` names one left out.

    Last comes what is a journal and lies elsewhere than a visit, or has lost its name.
    """
    for path in kept_visits(visits):
        found = standing_in(knowledge, path) if path.stem != but else None
        if found is not None:
            yield found
    for path in strayed(visits):
        found = _out_of_its_place(knowledge, path, visits)
        if found is not None:
            yield found


def stops_unit(standing: Standing) -> bool:
    """Whether nobody may begin on its unit: damage that hides no STOP is only told of."""
    return isinstance(standing, Stopped) or standing.may_stop


def may_be_over(standing: Standing, unit: str) -> bool:
    """Whether it may be this unit over which it stands: of damage that took the name, any unit."""
    nameless = isinstance(standing, Unreadable) and not standing.unit
    return may_be_same(standing.unit, unit) or (nameless and unit != "")


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
    except JournalNewer as error:
        return unreadable(path, data, str(error))
    except JournalError as error:
        return _by_what_is_told(knowledge, unreadable(path, data, str(error)), data)
    found = _stopped(knowledge, path, lines.events)
    lost = lines.torn and hides_a_stop(data[lines.whole :])
    return unreadable(path, data, CUT_OFF) if lost and found is None else found


def _by_what_is_told(knowledge: Knowledge, damaged: Unreadable, data: bytes) -> Unreadable:
    """A damaged journal with the STOP that its call or a finding calls up, where one does."""
    found = _stopped(knowledge, damaged.path, still_told(data))
    if found is None:
        return damaged
    return replace(damaged, danger=found.reason, what_to_do=found.fired.hazard.what_to_do)


def _out_of_its_place(knowledge: Knowledge, path: Path, visits: Path) -> Unreadable | None:
    """What may stand over the unit of a journal that is not read as a visit.

    Nothing does where it is only an earlier copy of one that is.
    """
    data = beginning_of(path)
    for kept in kept_visits(visits):
        if path.name.startswith(kept.stem) and beginning_of(kept).startswith(data) and data:
            return None
    found = standing_in(knowledge, path)
    why = why_not_read(path).rstrip(".")
    if isinstance(found, Unreadable):
        return replace(found, why=why) if found.may_stop else None
    if found is None:
        return None
    told = found.fired.hazard.what_to_do
    return Unreadable(path, found.unit, True, why, danger=found.reason, what_to_do=told)


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
