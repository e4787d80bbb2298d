"""Opening the journal of a visit: go on with the one that is open, or begin a new one."""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path

from troubleshoot import __version__
from troubleshoot.cli import clock
from troubleshoot.cli.beginning import WELCOME, ask_profiles, ask_unit, begin
from troubleshoot.cli.call import show_call_cautions
from troubleshoot.cli.failures import JOURNAL_FAILED, KEPT, Failure
from troubleshoot.cli.listening import Listener, report_danger
from troubleshoot.cli.standing import meet_standing, met_by
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
                if book.events:
                    _resume(terminal, book, profiles)
                else:
                    begin(knowledge, terminal, book, opened.unit, profiles, routine)
            except DangerCalled as called:
                report_danger(book, terminal, opened.unit, str(called))
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
    try:
        journal = _go_on(knowledge, terminal, visits)
        if journal is None:
            terminal.say_all(WELCOME)
            terminal.say()
            unit = unit or ask_unit(knowledge, terminal)
            stopped = meet_standing(knowledge, terminal, visits, unit)
        else:
            unit = _name(journal) or unit
            stopped = met_by(knowledge, terminal, journal.path, unit)
    except DangerCalled as called:
        return _Opened(_new_journal(knowledge, visits), unit, str(called))
    if stopped is not None:
        if journal is not None:
            journal.close()
        return None if stopped.over else _Opened(Journal.open(stopped.path), unit)
    return _Opened(journal or _new_journal(knowledge, visits), unit)


def _name(journal: Journal) -> str:
    """The unit's name as it was given last: at the start, or not before the hand-over."""
    named = (e for e in reversed(journal.events) if e["event"] in ("start", "named"))
    return next((e["name"] for e in named if isinstance(e.get("name"), str)), "")


def _go_on(knowledge: Knowledge, terminal: Terminal, visits: Path) -> Journal | None:
    """The open visit the person wants to go on with, if there is one."""
    for path in open_visits(visits)[:1]:
        answer = terminal.ask(f"Visit {path.stem} is open. Go on with it? (y/n)")
        Listener(knowledge, terminal).hear(answer)
        if not answer.lower().startswith("n"):
            journal = Journal.open(path)
            if journal.notice:
                terminal.say(journal.notice)
            return journal
    return None


def _resume(terminal: Terminal, book: VisitBook, profiles: tuple[str, ...]) -> None:
    """Whoever goes on says who they are; what others could have changed since is asked again."""
    terminal.say_all(book.notices)
    book.resume(profiles or ask_profiles(book.knowledge, terminal))
    terminal.say("Going on. States that others could have changed are asked again.")
    if not book.state.closing:
        show_call_cautions(terminal, book.knowledge, book.state.complaint)


def _new_journal(knowledge: Knowledge, visits: Path) -> Journal:
    today = f"{clock.now():%Y-%m-%d}"
    header = {"program": __version__, "rules": knowledge.digest, "date": today}
    return Journal.create(visits, next_name(visits, today), header)
