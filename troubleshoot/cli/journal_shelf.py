"""The kept visits of a folder, one journal each, as a visit sees them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import suppress
from dataclasses import replace
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING, Final

from troubleshoot import __version__
from troubleshoot.cli import clock
from troubleshoot.cli.rule_base import kept_with_visit, missing_rules
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.files import is_folder
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.visit.kept.bytes_of import bytes_in
from troubleshoot.visit.kept.foreign import foreign_in
from troubleshoot.visit.kept.journal import Journal, JournalError, open_visits
from troubleshoot.visit.kept.left_before import LeftBefore, left_before
from troubleshoot.visit.kept.names import journal_path, kept_visits, next_name
from troubleshoot.visit.kept.on_record import Recorded
from troubleshoot.visit.kept.reading import name_told, read_visit
from troubleshoot.visit.kept.stopped import Standing, standing_in, standing_visits, stops_unit
from troubleshoot.visit.kept.unit_names import same_unit
from troubleshoot.visit.kept.unreadable import name_in

if TYPE_CHECKING:
    from troubleshoot.records.history.before import NumbersBefore
    from troubleshoot.visit.state import VisitState

REGISTER: Final = "units"
"""The folder of the register, beside that of the visits."""
INSTRUMENTS_FOLDER: Final = "instruments"
"""The folder of the instruments, beside that of the units."""


class JournalShelf:
    """The visits of one folder. What was opened is given free at the end of a `with`."""

    def __init__(self, knowledge: Knowledge, visits: Path) -> None:
        self.knowledge = knowledge
        self.visits = visits
        self._opened: list[Journal] = []
        self._seen: dict[Path, tuple[int, int]] = {}
        self._numbers: dict[str, NumbersBefore] = {}

    def __enter__(self) -> JournalShelf:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        for journal in self._opened:
            journal.close()

    def waiting(self) -> Sequence[str]:
        """The visits that are not closed, the latest first."""
        return [path.stem for path in open_visits(self.visits)]

    def state_of(self, visit: str) -> VisitState:
        """What a visit that waits has come to. Raises JournalError."""
        from troubleshoot.visit.events import replay
        from troubleshoot.visit.kept.understanding import understood

        kept = read_visit(journal_path(self.visits, visit))
        return replay(self.knowledge, understood(self.knowledge, kept.events).events)

    def go_on(self, visit: str) -> VisitBook:
        """The book of a kept visit, held for this program alone. Raises JournalError."""
        return self._book(Journal.open(journal_path(self.visits, visit)))

    def new(self) -> VisitBook:
        """The book of a new visit. Raises JournalError."""
        today = f"{clock.now():%Y-%m-%d}"
        header = {"program": __version__, "date": today, **kept_with_visit(self.knowledge)}
        return self._book(Journal.create(self.visits, next_name(self.visits, today), header))

    def standing(self, but: str = "") -> Iterator[Standing]:
        """What stops a unit or may do so, the latest visit first; `but` names one left out."""
        self._changed()
        return standing_visits(self.knowledge, self.visits, but)

    def elsewhere(self, unit: str, but: str = "") -> Sequence[str]:
        """The visits to a unit that another program has open; `but` names one left out."""
        found = []
        for path in open_visits(self.visits):
            with suppress(JournalError, NotUsable):
                if path.stem != but and self._is_of(path, unit) and read_visit(path).elsewhere:
                    found.append(path.stem)
        return found

    def met_meanwhile(self, unit: str, but: str) -> Sequence[Standing]:
        """What stops a unit by a journal that has changed since `standing` was last asked."""
        changed = [path for path in self._changed() if path.stem != but]
        found = (standing_in(self.knowledge, path) for path in changed if self._is_of(path, unit))
        return [each for each in found if each is not None and stops_unit(each)]

    def _changed(self) -> Sequence[Path]:
        """The journals that are not as they were when this was last asked."""
        changed = []
        for path in kept_visits(self.visits):
            with suppress(OSError):
                held = path.stat()
                now = (held.st_mtime_ns, held.st_size)
                if self._seen.get(path) != now:
                    self._seen[path] = now
                    changed.append(path)
        return changed

    def _tells_of(self, path: Path, unit: str) -> bool:
        """Whether a journal says that it is of a unit; what it says is not proved by its sums."""
        try:
            return same_unit(name_told(bytes_in(path)), unit)
        except NotUsable:
            return False

    def _is_of(self, path: Path, unit: str) -> bool:
        """Whether a journal is of a visit to a unit, as far as it can be read."""
        try:
            return same_unit(name_in(bytes_in(path)), unit)
        except NotUsable:
            return False

    def not_read(self) -> Sequence[str]:
        """A sentence for each thing that lies among the visits and is not read as one."""
        return foreign_in(self.visits)

    def left_before(self, unit: str, but: str = "") -> LeftBefore:
        """What earlier visits left off on a unit; `but` names one left out."""
        return left_before(self.knowledge, self.visits, unit, but)

    def on_record(self, unit: str) -> Recorded:
        """What the register knows of a unit, and the instruments on hand.

        Nothing of a unit that is not in it, or has no name.
        """
        units, instruments = (self.visits.parent / each for each in (REGISTER, INSTRUMENTS_FOLDER))
        # The register is imported only where there is one: most starts need none of it.
        found = Recorded()
        if unit and is_folder(units):
            from troubleshoot.records.register.for_visits import recorded

            found = recorded(self.knowledge, units, unit)
        if is_folder(instruments):
            from troubleshoot.records.register.in_use import in_use
            from troubleshoot.records.register.instruments import read_instruments

            on_hand = in_use(read_instruments(instruments), clock.now().date())
            says = (*found.says, *on_hand.says)
            found = replace(found, says=says, instruments=on_hand.instruments)
        return found

    def read_before(self, unit: str, test: str, at: str | None, but: str) -> str:
        """The last numbers of a test at a place of a unit, in words; `but` names one left out.

        Earlier visits are read once, with the first test of a round that reads a number.
        """
        if unit not in self._numbers:
            from troubleshoot.records.history.before import NumbersBefore

            paths = [path for path in kept_visits(self.visits) if path.stem != but]
            of_unit = [path for path in paths if self._tells_of(path, unit)]
            on_record = self.on_record(unit).record
            known = {**on_record.afresh, **on_record.trusted}
            self._numbers[unit] = NumbersBefore(self.knowledge, of_unit, known)
        return self._numbers[unit].of(test, at)

    def _book(self, journal: Journal) -> VisitBook:
        self._opened.append(journal)
        name, torn = journal.path.stem, (journal.notice,) if journal.notice else ()
        notices = (*torn, *missing_rules(journal.header))
        return VisitBook(
            self.knowledge, name, journal, lambda: clock.now(), journal.events, notices
        )
