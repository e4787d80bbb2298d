"""What earlier visits to a unit have left off on it, until a later one has read it sound.

A visit that leaves something off says so in its last record, so that only the visits of a unit that
has such a one, has opened the gas train, could not lock it off, or has shut its cock and was not
ended, are replayed.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import begun
from troubleshoot.safety.steps import CANNOT_LOCK, GAS_SHUT, TAP_OPENED
from troubleshoot.safety.stops.record import LeftOn
from troubleshoot.visit.kept.bytes_of import bytes_in
from troubleshoot.visit.kept.journal import JournalError, lines_in
from troubleshoot.visit.kept.names import kept_visits
from troubleshoot.visit.kept.unit_names import same_unit
from troubleshoot.visit.kept.unreadable import name_in

if TYPE_CHECKING:
    from troubleshoot.reasoning.conclude import Reasoner
    from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
    from troubleshoot.visit.state import VisitState

MARK: Final = b'"left_off": ["'
"""What stands in the journal of a visit that has left something off."""
_ENDED: Final = b'"event": "end"'
_TAP, _COCK = f'"{TAP_OPENED}"'.encode(), f'"{GAS_SHUT}"'.encode()
_NO_LOCK: Final = f'"{CANNOT_LOCK}"'.encode()


@frozen
class LeftBefore:
    """What was left off on a unit: what to tell whoever names it next, and for which dangers.

    `cock`: its gas cock was not left known to be open; `plugs`: by their taps, not tested.
    """

    lines: tuple[str, ...] = ()
    dangers: tuple[LeftOn, ...] = ()
    cock: bool = False
    plugs: tuple[str, ...] = ()


@frozen
class _Left:
    """One danger for which a visit left something off, and what is told of it."""

    on: LeftOn
    says: tuple[str, ...]


def left_before(knowledge: Knowledge, visits: Path, unit: str, but: str = "") -> LeftBefore:
    """What was left off on a unit and why; `but` names a visit left out."""
    paths = list(_of_unit(visits, unit, but))
    if not any(may_have_left(data) for _, data in paths):
        return LeftBefore()
    # Reasoning is imported only for such a unit: most starts need none of it.
    from troubleshoot.reasoning.conclude import Reasoner
    from troubleshoot.safety.stops.left import is_over
    from troubleshoot.visit.kept import lock_before
    from troubleshoot.visit.kept.gas_before import GasBefore, after_visit

    reasoner = Reasoner(knowledge)
    standing: list[_Left] = []
    gas = GasBefore()
    lock: tuple[str, ...] = ()
    for path, data in paths:
        try:
            state, ended, found = _replayed(reasoner, path, data)
        except JournalError:
            continue  # whoever begins is told of every visit that cannot be read
        gas = after_visit(gas, path.stem, state, ended)
        lock = lock_before.after_visit(knowledge, lock, path.stem, state, ended)
        standing = [left for left in standing if not is_over(found, left.on)]
        if MARK in data:
            new = tuple(_left(knowledge, path.stem, state, ended, found))
            again = {left.on.hazard for left in new}
            standing = [*(left for left in standing if left.on.hazard not in again), *new]
    says = dict.fromkeys(line for left in standing for line in left.says)
    lines = (*says, *gas.lines, *lock)
    dangers = tuple(left.on for left in standing)
    return LeftBefore(lines, dangers, bool(gas.cock), tuple(sorted(gas.plugs)))


def may_have_left(data: bytes) -> bool:
    """Whether a journal has to be replayed to know."""
    if MARK in data or _TAP in data or _NO_LOCK in data:
        return True
    return data.rfind(_COCK) > data.rfind(_ENDED)


def _of_unit(visits: Path, unit: str, but: str) -> Iterator[tuple[Path, bytes]]:
    """The journals of the visits to a unit, the earliest first."""
    for path in reversed(kept_visits(visits)):
        try:
            data = bytes_in(path) if path.stem != but else b""
        except NotUsable:
            continue
        if same_unit(name_in(data), unit):
            yield path, data


def _replayed(reasoner: Reasoner, path: Path, data: bytes) -> tuple[VisitState, str, Conclusions]:
    """What a visit came to, when its last event was, and what follows. Raises JournalError."""
    from troubleshoot.safety.stops.lifting import conclude_visit
    from troubleshoot.visit.events import replay
    from troubleshoot.visit.kept.understanding import understood

    events = understood(reasoner.knowledge, lines_in(path, data).events).events
    state = replay(reasoner.knowledge, events)
    return state, events[-1].time if events else "", conclude_visit(reasoner, state)


def _left(
    knowledge: Knowledge, visit: str, state: VisitState, ended: str, found: Conclusions
) -> Iterator[_Left]:
    """What one visit found and left off, as it is told to whoever names the unit next."""
    from troubleshoot.safety.profiles import spoken
    from troubleshoot.safety.stops.left import only_left
    from troubleshoot.safety.stops.tags import found_words, removers
    from troubleshoot.visit.deciding.left_off import left_off_at

    for what, fired in left_off_at(knowledge, state, found).parts:
        if only_left(fired):  # it stays told as whoever found it left it
            continue
        were = "were" if " and " in what else "was"
        day = f" on {ended[:10]}" if ended else ""
        reason = fired.hazard.spoken
        says = (
            f"{begun(what)} {were} left off and tagged{day} by "
            f"{spoken(state.profiles)}, because of: {reason} (visit {visit}).",
            found_words(knowledge, state, found, fired),
            f"Only {removers(fired.hazard)} may remove the tag, once it has been read sound.",
        )
        on = LeftOn(fired.hazard.id, fired.circuits, _tests(fired))
        yield _Left(on, tuple(line for line in says if line))


def _tests(fired: FiredHazard) -> tuple[str, ...]:
    """The tests whose sound reading takes a danger away; of an unproved repair its all-clear."""
    from troubleshoot.safety.stops.lifting import FOUND
    from troubleshoot.safety.stops.put_right import NOT_PUT_RIGHT
    from troubleshoot.visit.deciding.left_off import UNPROVED, is_unread

    if fired.because == (NOT_PUT_RIGHT,):
        return tuple(sorted({finding.test for finding in fired.hazard.put_right}))
    if is_unread(fired):
        return fired.because[1:]
    found = {atom.split(":")[1] for atom in fired.because if atom.startswith(FOUND)}
    ending = {finding.test for ban in fired.hazard.forbids for finding in ban.until}
    clear = {fired.hazard.all_clear or ""} if fired.because == (UNPROVED,) else set[str]()
    return tuple(sorted((found | ending | clear) - {""}))
