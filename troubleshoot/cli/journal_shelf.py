"""The kept visits of a folder, one journal each, as a visit sees them."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from types import TracebackType

from troubleshoot import __version__
from troubleshoot.cli import clock
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.shelf import Stopped
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.files import read_bytes
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.visit.journal import MOST_BYTES, Journal, JournalError, open_visits
from troubleshoot.visit.kept_visit import read_visit
from troubleshoot.visit.visit_names import journal_path, kept_visits, next_name

_MARKS = (b'"event": "stop"', b'"event": "danger"')
"""What stands in the journal of every visit that a STOP has halted."""


class JournalShelf:
    """The visits of one folder. What was opened is given free at the end of a `with`."""

    def __init__(self, knowledge: Knowledge, visits: Path) -> None:
        self.knowledge = knowledge
        self.visits = visits
        self._opened: list[Journal] = []

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

    def latest_open(self) -> str | None:
        """The visit that was begun last and is not closed; None where there is none."""
        return next((path.stem for path in open_visits(self.visits)), None)

    def go_on(self, visit: str) -> VisitBook:
        """The book of a kept visit, held for this program alone. Raises JournalError."""
        return self._book(Journal.open(journal_path(self.visits, visit)))

    def new(self) -> VisitBook:
        """The book of a new visit. Raises JournalError."""
        today = f"{clock.now():%Y-%m-%d}"
        header = {"program": __version__, "rules": self.knowledge.digest, "date": today}
        return self._book(Journal.create(self.visits, next_name(self.visits, today), header))

    def stopped(self, but: str = "") -> Iterator[Stopped]:
        """Yield the visits over which a STOP stands, the latest first; `but` names one left out."""
        for path in kept_visits(self.visits):
            if path.stem != but and _was_halted(path):
                stopped = _standing(self.knowledge, path)
                if stopped is not None:
                    yield stopped

    def _book(self, journal: Journal) -> VisitBook:
        self._opened.append(journal)
        name, notices = journal.path.stem, (journal.notice,) if journal.notice else ()
        return VisitBook(
            self.knowledge, name, journal, lambda: clock.now(), journal.events, notices
        )


def _was_halted(path: Path) -> bool:
    try:
        kept = read_bytes(path, MOST_BYTES)
    except NotUsable:
        return False
    return any(mark in kept for mark in _MARKS)


def _standing(knowledge: Knowledge, path: Path) -> Stopped | None:
    # Reasoning is imported only where a visit was ever halted: most starts need none of it.
    from troubleshoot.reasoning.conclude import Reasoner
    from troubleshoot.visit.events import replay
    from troubleshoot.visit.stops import conclude_visit, standing_stop
    from troubleshoot.visit.tags import tag_lines
    from troubleshoot.visit.understanding import understood

    try:
        kept = read_visit(path)
    except JournalError:
        return None
    state = replay(knowledge, understood(knowledge, kept.events).events)
    conclusions = conclude_visit(Reasoner(knowledge), state)
    fired = standing_stop(knowledge, state, conclusions)
    if fired is None or state.ended not in (None, "stopped"):
        return None
    tag = tag_lines(knowledge, state, conclusions, fired)
    return Stopped(path.stem, state.name, fired, state.ended == "stopped", tag)
