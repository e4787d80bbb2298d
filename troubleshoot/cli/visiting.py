"""Opening the journal of a visit: go on with the one that is open, or begin a new one."""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path

from troubleshoot import __version__
from troubleshoot.cli import clock
from troubleshoot.cli.beginning import WELCOME, ask_profiles, ask_unit, begin, report_danger
from troubleshoot.cli.call import show_call_cautions
from troubleshoot.cli.failures import JOURNAL_FAILED, KEPT, Failure
from troubleshoot.cli.standing import goes_on, meet_standing, met_by, tell_unreadable
from troubleshoot.cli.terminal import (
    VISIT_IS_KEPT,
    DangerCalled,
    EndOfInput,
    Leave,
    Terminal,
)
from troubleshoot.cli.visit_book import VisitBook
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.journal import Journal, JournalError, open_visits
from troubleshoot.visit.kept_visit import read_visit
from troubleshoot.visit.standing_visits import standing_visits
from troubleshoot.visit.unreadable import Unreadable
from troubleshoot.visit.visit_names import next_name


def converse(
    knowledge: Knowledge,
    unit: str | None,
    profiles: tuple[str, ...],
    data: str | None,
    routine: bool = False,
) -> int:
    """Hold a visit at the terminal; returns the exit code."""
    terminal = Terminal()
    try:
        return _converse(knowledge, terminal, unit, profiles, data_folder(data), routine)
    except JournalError as error:
        raise Failure([str(error)], JOURNAL_FAILED) from None


def data_folder(data: str | None) -> Path:
    """Where visits and units are kept: as named, or the platform's own place."""
    if data is not None:
        return Path(data)
    from platformdirs import user_data_dir

    return Path(os.environ.get("TROUBLESHOOT_DATA") or user_data_dir("troubleshoot"))


def _converse(
    knowledge: Knowledge,
    terminal: Terminal,
    unit: str | None,
    profiles: tuple[str, ...],
    folder: Path,
    routine: bool,
) -> int:
    visits = folder / "visits"
    try:
        opened = _opened(knowledge, terminal, visits, unit or "")
        if opened is None:
            return KEPT
        with opened.journal as journal:
            book = VisitBook(knowledge, journal.path.stem, journal, list(journal.events))
            try:
                if opened.danger is not None:
                    raise DangerCalled(opened.danger)
                if book.begun:
                    _resume(terminal, book, profiles)
                else:
                    if opened.unit and not book.state.name:
                        book.add({"event": "named", "name": opened.unit})
                    begin(knowledge, terminal, book, opened.unit, profiles, routine)
            except DangerCalled as called:
                report_danger(book, opened.unit, str(called))
            # All that reasons is imported here: the first questions need none of it.
            from troubleshoot.cli.conversation import Conversation

            return Conversation(knowledge, book, terminal).run()
    except EndOfInput:
        terminal.say("Nothing more to read. What has been answered is kept.")
        return KEPT
    except Leave:
        terminal.say(VISIT_IS_KEPT)
        return KEPT


@dataclass(frozen=True, slots=True)
class _Opened:
    """A journal to go on in. `danger`: what was reported before there was one."""

    journal: Journal
    unit: str = ""
    danger: str | None = None


def _opened(knowledge: Knowledge, terminal: Terminal, visits: Path, unit: str) -> _Opened | None:
    """The journal of the visit that is gone on with, or of a new one.

    None where a STOP stands over the unit and waits for its hand-over's result.
    """
    standing = tuple(standing_visits(knowledge, visits))
    tell_unreadable(terminal, standing)
    unusable = frozenset(each.path for each in standing if isinstance(each, Unreadable))
    try:
        journal = _go_on(knowledge, terminal, visits, unusable)
        if journal is None:
            terminal.say_all(WELCOME)
            terminal.say()
            unit = unit or ask_unit(terminal)
            stopped = meet_standing(terminal, standing, unit)
        else:
            unit = _name(journal) or unit
            stopped = met_by(knowledge, terminal, journal.path, unit)
    except DangerCalled as called:
        return _Opened(_new_journal(knowledge, visits), unit, str(called))
    if stopped is not None:
        if journal is not None:
            journal.close()
        return _Opened(Journal.open(stopped.path), unit) if goes_on(stopped) else None
    return _Opened(journal or _new_journal(knowledge, visits), unit)


def _name(journal: Journal) -> str:
    """The unit's name as it was given last: at the start, or not before the hand-over."""
    named = (e for e in reversed(journal.events) if e["event"] in ("start", "named"))
    return next((e["name"] for e in named if isinstance(e.get("name"), str)), "")


def _go_on(
    knowledge: Knowledge, terminal: Terminal, visits: Path, unusable: frozenset[Path]
) -> Journal | None:
    """The open visit the person wants to go on with, if there is one."""
    waiting = [path for path in open_visits(visits) if path not in unusable]
    for path in waiting[:1]:
        answer = terminal.ask(f"Visit {path.stem} is open. Go on with it? (y/n)").lower()
        if not answer.startswith("n"):
            journal = Journal.open(path)
            if journal.notice:
                terminal.say(journal.notice)
            return journal
    for path in waiting:
        _say_left_open(knowledge, terminal, path)
    return None


def _say_left_open(knowledge: Knowledge, terminal: Terminal, path: Path) -> None:
    """What a visit that is not gone on with has left on its unit, in one line; else nothing."""
    from troubleshoot.visit.events import replay
    from troubleshoot.visit.understanding import understood
    from troubleshoot.visit.work_state import open_items

    state = replay(knowledge, understood(knowledge, read_visit(path).events).events)
    left = open_items(state.work)
    if left:
        unit = f", {state.name}" if state.name else ""
        terminal.say(f"Visit {path.stem}{unit}, stays open. Left there: {'; '.join(left)}.")


def _resume(terminal: Terminal, book: VisitBook, profiles: tuple[str, ...]) -> None:
    """Whoever goes on says who they are; what others could have changed since is asked again."""
    terminal.say_all(book.notices)
    book.resume(profiles or ask_profiles(terminal))
    terminal.say("Going on. States that others could have changed are asked again.")
    if not book.state.closing:
        show_call_cautions(terminal, book.knowledge, book.state.complaint)


def _new_journal(knowledge: Knowledge, visits: Path) -> Journal:
    today = f"{clock.now():%Y-%m-%d}"
    header = {"program": __version__, "rules": knowledge.digest, "date": today}
    return Journal.create(visits, next_name(visits, today), header)
