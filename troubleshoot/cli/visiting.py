"""Holding a visit at the terminal: prompts are shown and answers taken until it ends."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import timedelta
from pathlib import Path
from typing import Final

from troubleshoot.cli import clock
from troubleshoot.cli.attentive import VisitTerminal
from troubleshoot.cli.failures import INTERRUPTED, JOURNAL_FAILED, KEPT, USAGE, Failure
from troubleshoot.cli.journal_shelf import JournalShelf
from troubleshoot.cli.screens.prompts import show_again, show_prompt, show_said, sign_of
from troubleshoot.cli.terminal import EndOfInput, Terminal
from troubleshoot.dialogue.dialogue import Dialogue
from troubleshoot.dialogue.opening import Visitor, visit
from troubleshoot.dialogue.prompts import Ended, Prompt
from troubleshoot.dialogue.reporting_danger import CLEAR_FIRST, NOT_ON_RECORD
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import DangerCalled, Leave, Talk
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.kept.journal import JournalError

SOON: Final = timedelta(minutes=5)
"""Behind questions that were left longer, all together, nothing is shown again before the clock was
read."""
TIME_HAS_PASSED: Final = (
    "Some minutes have passed. Type what comes next; what still counts is looked at first."
)


def converse(
    knowledge: Knowledge,
    unit: str | None,
    profiles: tuple[str, ...],
    data: str | None,
    routine: bool = False,
) -> int:
    """Hold a visit at the terminal; returns the exit code."""
    visitor = Visitor(unit or "", profiles, routine)
    try:
        with JournalShelf(knowledge, data_folder(data) / "visits") as shelf:
            terminal = VisitTerminal(knowledge)
            return hold(knowledge, terminal, lambda voice: visit(shelf, voice, visitor))
    except JournalError as error:
        raise Failure([str(error)], JOURNAL_FAILED) from None


def hold(knowledge: Knowledge, terminal: Terminal, talk: Callable[[Voice], Talk[Ended]]) -> int:
    """Show what is asked and said, take what is typed; returns the exit code."""
    dialogue = Dialogue(talk)
    terminal.breaks_in = dialogue.told_gone
    try:
        with _what_was_said(terminal, knowledge, dialogue):
            _converse(terminal, knowledge, dialogue)
    except (EndOfInput, KeyboardInterrupt) as ended:
        if isinstance(ended, KeyboardInterrupt):
            terminal.say()
        with _what_was_said(terminal, knowledge, dialogue):
            said = dialogue.leave()
        terminal.pages = False  # nobody is there to turn them
        show_said(terminal, knowledge, said)
        if isinstance(ended, KeyboardInterrupt):
            return INTERRUPTED
    terminal.say_held()
    assert isinstance(dialogue.prompt, Ended)
    return KEPT if dialogue.prompt.how == "kept" else 0


@contextmanager
def _what_was_said(terminal: Terminal, knowledge: Knowledge, dialogue: Dialogue) -> Iterator[None]:
    """Where the storage fails, show first what was said until then; the failure goes on."""
    try:
        yield
    except JournalError:
        terminal.pages = False  # nothing is asked any more
        show_said(terminal, knowledge, dialogue.unheard())
        raise


def _converse(terminal: Terminal, knowledge: Knowledge, dialogue: Dialogue) -> None:
    """Until nothing more is asked. Raises EndOfInput, JournalError."""
    said, shown, was_aside, asked = dialogue.said, None, False, clock.now()
    while True:
        try:
            show_said(terminal, knowledge, said)
            if isinstance(dialogue.prompt, Ended):
                return
            if was_aside and dialogue.prompt is shown:
                if timedelta() <= clock.now() - asked < SOON:
                    show_again(terminal, knowledge, dialogue.prompt)
                else:
                    terminal.say(TIME_HAS_PASSED)
            goes_on_aside, was_aside = was_aside and dialogue.asks_aside, dialogue.asks_aside
            shown = _show(terminal, knowledge, dialogue, shown)
            if not goes_on_aside:
                asked = clock.now()
            said = dialogue.answer(terminal.ask(sign_of(dialogue.prompt)))
        except (DangerCalled, Leave) as between_pages:
            if isinstance(dialogue.prompt, Ended):
                terminal.say_all((CLEAR_FIRST, NOT_ON_RECORD))
                return
            said, shown, was_aside = dialogue.break_off(between_pages), None, False


def _show(
    terminal: Terminal, knowledge: Knowledge, dialogue: Dialogue, shown: Prompt | None
) -> Prompt | None:
    """Show what is asked, where it was not `shown` yet; returns what stands on the screen."""
    if dialogue.prompt is not shown:
        show_prompt(terminal, knowledge, dialogue.prompt)
    if dialogue.asks_aside:  # what was asked before is shown anew, whatever has lapsed since
        return shown
    return dialogue.prompt


def data_folder(data: str | None) -> Path:
    """Where visits and units are kept: as named, or the platform's own place.

    One that cannot be looked into would hide every STOP that is kept in it: that is a Failure.
    """
    folder = Path(data) if data is not None else _usual_folder()
    try:
        os.scandir(folder / "visits").close()
    except FileNotFoundError:
        pass  # nothing is kept there yet
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        problem = f"{folder}: no visits can be kept or read there ({reason})"
        raise Failure([f"{problem}; name another folder with --data"], USAGE) from None
    return folder


def _usual_folder() -> Path:
    from platformdirs import user_data_dir

    return Path(os.environ.get("TROUBLESHOOT_DATA") or user_data_dir("troubleshoot"))
