"""Opening the journal of a visit: go on with the one that is open, or begin a new one."""

from __future__ import annotations

import os
from datetime import datetime
from pathlib import Path

from troubleshoot import __version__
from troubleshoot.cli import clock
from troubleshoot.cli.beginning import begin
from troubleshoot.cli.call import show_call_cautions
from troubleshoot.cli.failures import JOURNAL_FAILED, KEPT, Failure
from troubleshoot.cli.terminal import VISIT_IS_KEPT, EndOfInput, Leave, Terminal
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
        with _go_on(terminal, visits) or _new_journal(knowledge, visits) as journal:
            book = VisitBook(knowledge, journal.path.stem, journal, list(journal.events))
            _resume(terminal, book)
            if not book.events:
                begin(knowledge, terminal, book, unit or "", profiles, routine)
            # All that reasons is imported here: the first questions need none of it.
            from troubleshoot.cli.conversation import Conversation

            return Conversation(knowledge, book, terminal).run()
    except EndOfInput:
        terminal.say("Nothing more to read. What has been answered is kept.")
        return KEPT
    except Leave:
        terminal.say(VISIT_IS_KEPT)
        return KEPT


def _go_on(terminal: Terminal, visits: Path) -> Journal | None:
    """The open visit the person wants to go on with, if there is one."""
    for path in open_visits(visits)[:1]:
        answer = terminal.ask(f"Visit {path.stem} is open. Go on with it? (y/n)").lower()
        if not answer.startswith("n"):
            journal = Journal.open(path)
            if journal.notice:
                terminal.say(journal.notice)
            return journal
    return None


def _resume(terminal: Terminal, book: VisitBook) -> None:
    """What a person elsewhere could have changed since is asked again."""
    if not book.events:
        return
    terminal.say_all(book.notices)
    now, last = clock.now(), datetime.fromtimestamp(book.kept_at).astimezone()
    away = (now - last).total_seconds() / 60
    book.add(
        {"event": "resumed", "minutes_away": round(away, 1), "same_day": now.date() == last.date()}
    )
    terminal.say("Going on. States that others could have changed are asked again.")
    if not book.state.closing:
        show_call_cautions(terminal, book.knowledge, book.state.complaint)


def _new_journal(knowledge: Knowledge, visits: Path) -> Journal:
    today = f"{clock.now():%Y-%m-%d}"
    header = {"program": __version__, "rules": knowledge.digest, "date": today}
    return Journal.create(visits, next_name(visits, today), header)
