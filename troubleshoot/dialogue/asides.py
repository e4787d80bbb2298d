"""What may be typed at any prompt besides an answer: leaving, help, a note.

No prompt traps anybody: whatever it asks for, q leaves with everything kept, a STOP still standing
among it. At a test, a step and an ending the commands serve the rest (`dialogue/commands.py`).
"""

from __future__ import annotations

from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import HOW_TO_CALL
from troubleshoot.dialogue.prompts import (
    AskFact,
    AskPlate,
    AskProof,
    AskTest,
    AtStop,
    Choose,
    DoStep,
    Prompt,
    Settled,
)
from troubleshoot.dialogue.said import NO_NOTES_YET, Voice
from troubleshoot.dialogue.talk import DangerCalled
from troubleshoot.safety.hearing.among_words import told_among
from troubleshoot.safety.hearing.dangers import spoken_of
from troubleshoot.visit.events import Noted

LEAVES: Final = ("q", "quit")
HELP: Final = ("?", "h", "help", "how", "w", "why")
SKIPS: Final = ("s", "skip")
ANYWHERE: Final = "q leaves with everything kept; note TEXT keeps a note."
NOT_SKIPPED: Final = "That is not skipped here."


def leaves(typed: str) -> bool:
    """Whether somebody wants to go."""
    return typed.lower() in LEAVES


def served(prompt: Prompt, typed: str, voice: Voice) -> bool:
    """Whether it was no answer to this prompt, and has been served. Raises DangerCalled.

    What the unit itself says has its own help, and may be left open.
    """
    if isinstance(prompt, AskTest | DoStep | Settled):
        return False
    word, _, rest = typed.partition(" ")
    if word.lower() == "note" and rest.strip():
        voice.note(rest.strip())
    elif isinstance(prompt, AskFact | AskPlate):
        return False
    elif typed.lower() in HELP:
        voice.say(f"{_what_would_do(prompt)} {ANYWHERE} {HOW_TO_CALL}")
    elif typed.lower() in SKIPS:
        voice.say(f"{NOT_SKIPPED} {_what_would_do(prompt)} {ANYWHERE}")
    else:
        return False
    return True


def _what_would_do(prompt: Prompt) -> str:
    if isinstance(prompt, AtStop):
        takes_afresh = prompt.lifted_by is not None and prompt.beyond is None
        return "again, over, or q." if takes_afresh else "over, or q."
    if isinstance(prompt, Choose):
        return "Its number, or the word for it." if prompt.options else "The word for it."
    if isinstance(prompt, AskProof):
        return "What was read, with its unit; Enter where it was not; u goes back."
    return "Say it in your own words."


def keep_note(book: VisitBook, voice: Voice, text: str) -> None:
    """Keep a note. Raises DangerCalled where it says that the job has to be stopped.

    Any other danger that it tells is asked about: it may be there, or written down for later.
    """
    if not book.begun:
        voice.say(NO_NOTES_YET)
        return
    book.add(Noted(text))
    told = told_among(book.knowledge, text)
    if any(hazard.stops_the_job for hazard in told):
        raise DangerCalled(text)
    asks = voice.ask_about(book.knowledge, text, is_told=bool(told))
    speaks = not asks and bool(spoken_of(book.knowledge, text))
    voice.say(f"Noted. {HOW_TO_CALL}" if speaks else "Noted.")


def takes_notes(book: VisitBook, voice: Voice) -> None:
    """Let a note that is given at any prompt go into this visit."""
    voice.keeper = lambda text: keep_note(book, voice, text)
