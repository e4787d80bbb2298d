"""How a unit stands by the visits that were made to it: STOPs, what was left off, what is open."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.visit.events import replay
from troubleshoot.visit.kept.bytes_of import bytes_in
from troubleshoot.visit.kept.journal import JournalError, open_visits
from troubleshoot.visit.kept.left_before import left_before, may_have_left
from troubleshoot.visit.kept.names import kept_visits
from troubleshoot.visit.kept.reading import name_told, read_visit
from troubleshoot.visit.kept.stopped import Standing, standing_visits, stops_unit
from troubleshoot.visit.kept.understanding import understood
from troubleshoot.visit.kept.unit_names import in_plain, same_unit
from troubleshoot.visit.telling.kept_visit import left_undone


@frozen
class Stands:
    """How one unit stands.

    `stops`: what stops it; `left_off`: what earlier visits left off; `open_visits`: by name, those
    that are not closed; `open_items`: of its last visit; `last`: the name of that visit.
    """

    stops: tuple[Standing, ...] = ()
    left_off: tuple[str, ...] = ()
    open_visits: tuple[str, ...] = ()
    open_items: tuple[str, ...] = ()
    last: str = ""


def open_lines(stands: Stands) -> tuple[str, ...]:
    """What is open on a unit, a sentence each."""
    visits = (f"Visit {visit} is open." for visit in stands.open_visits)
    items = (f"Open since {stands.last}: {item}" for item in stands.open_items)
    return (*stands.left_off, *visits, *items)


class Visited:
    """The visits of a folder, looked through once, by the unit that each was made to."""

    def __init__(self, knowledge: Knowledge, visits: Path) -> None:
        self._knowledge = knowledge
        self._visits = visits
        self._standing = tuple(filter(stops_unit, standing_visits(knowledge, visits)))
        self._open = {path.stem for path in open_visits(visits)}
        self._may_have_left: set[str] = set()
        self._of: dict[str, list[Path]] = {}
        for path in kept_visits(visits):
            try:
                data = bytes_in(path)
            except NotUsable:
                continue
            key = in_plain(name_told(data))
            self._of.setdefault(key, []).append(path)
            if may_have_left(data):
                self._may_have_left.add(key)

    def over_others(self, units: Iterable[str]) -> tuple[Standing, ...]:
        """What stops none of these units by its name: it may be one of them all the same."""
        names = {in_plain(unit) for unit in units}
        return tuple(each for each in self._standing if in_plain(each.unit) not in names)

    def of(self, unit: str) -> Sequence[Path]:
        """The journals of a unit, the latest first."""
        return self._of.get(in_plain(unit), [])

    def stops(self, unit: str) -> tuple[Standing, ...]:
        """What stops a unit, or may."""
        return tuple(each for each in self._standing if same_unit(each.unit, unit))

    def stands(self, unit: str) -> Stands:
        """How a unit stands."""
        paths = self.of(unit)
        left: tuple[str, ...] = ()
        if in_plain(unit) in self._may_have_left:
            left = left_before(self._knowledge, self._visits, unit).lines
        return Stands(
            self.stops(unit),
            left,
            tuple(path.stem for path in paths if path.stem in self._open),
            _open_items(self._knowledge, paths[0]) if paths else (),
            paths[0].stem if paths else "",
        )


def _open_items(knowledge: Knowledge, path: Path) -> tuple[str, ...]:
    """What a visit has left undone; of one that cannot be read, that."""
    try:
        understanding = understood(knowledge, read_visit(path).events)
    except JournalError as error:
        return (str(error),)
    return left_undone(knowledge, replay(knowledge, understanding.events))
