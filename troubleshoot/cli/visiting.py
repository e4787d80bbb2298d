"""Holding a visit at the terminal: prompts are shown and answers taken until it ends."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

from troubleshoot.cli.failures import INTERRUPTED, JOURNAL_FAILED, KEPT, USAGE, Failure
from troubleshoot.cli.journal_shelf import JournalShelf
from troubleshoot.cli.screens.prompts import show_prompt, show_said, sign_of
from troubleshoot.cli.terminal import EndOfInput, Terminal
from troubleshoot.dialogue.dialogue import Dialogue
from troubleshoot.dialogue.opening import Visitor, visit
from troubleshoot.dialogue.prompts import Ended, Prompt
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Talk
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.kept.journal import JournalError


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
            return hold(knowledge, Terminal(), lambda voice: visit(shelf, voice, visitor))
    except JournalError as error:
        raise Failure([str(error)], JOURNAL_FAILED) from None


def hold(knowledge: Knowledge, terminal: Terminal, talk: Callable[[Voice], Talk[Ended]]) -> int:
    """Show what is asked and said, take what is typed; returns the exit code."""
    dialogue = Dialogue(talk)
    show_said(terminal, knowledge, dialogue.said)
    shown: Prompt | None = None
    try:
        while not isinstance(dialogue.prompt, Ended):
            if dialogue.prompt is not shown:
                show_prompt(terminal, knowledge, dialogue.prompt)
            if not dialogue.asks_aside:  # else it would be shown anew, whatever has lapsed since
                shown = dialogue.prompt
            typed = terminal.ask(sign_of(dialogue.prompt))
            show_said(terminal, knowledge, dialogue.answer(typed))
    except EndOfInput:
        show_said(terminal, knowledge, dialogue.leave())
    except JournalError:
        show_said(terminal, knowledge, dialogue.unheard())
        raise
    except KeyboardInterrupt:
        terminal.say()
        show_said(terminal, knowledge, dialogue.leave())
        return INTERRUPTED
    terminal.say_held()
    assert isinstance(dialogue.prompt, Ended)
    return KEPT if dialogue.prompt.how == "kept" else 0


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
