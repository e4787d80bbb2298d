"""What may be typed at any prompt besides an answer: leaving, help, a note, a weight.

No prompt traps anybody: whatever it asks for, q leaves with everything kept, a STOP still standing
among it. At a test, a step and an ending the commands serve the rest (`dialogue/commands.py`).
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import HOW_TO_CALL
from troubleshoot.dialogue.prompts import (
    AskFact,
    AskPlate,
    AskProof,
    AskTest,
    AskWords,
    AtStop,
    Choose,
    DoStep,
    Prompt,
    Settled,
)
from troubleshoot.dialogue.said import HowTo, Voice
from troubleshoot.dialogue.talk import DangerCalled
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.equipment import Unit, read_unit
from troubleshoot.safety.hearing.among_words import told_among
from troubleshoot.safety.hearing.dangers import spoken_of
from troubleshoot.safety.hearing.gone import quotes_the_past
from troubleshoot.safety.hearing.not_here_and_now import here_and_now
from troubleshoot.visit.events import Noted, Weighed
from troubleshoot.visit.hearing.weighed import NotWeighed, circuits_of, weighing_told
from troubleshoot.visit.weights import cylinder_says, scale_of, weighing_words

LEAVES: Final = ("q", "quit")
HELP: Final = ("?", "h", "help", "how")
WHY: Final = ("w", "why")
SKIPS: Final = ("s", "skip")
ANYWHERE: Final = "q leaves with everything kept; note TEXT keeps a note."
NOT_SKIPPED: Final = "That is not skipped here."
WHAT_HANGS_ON_IT: Final = "What comes next hangs on it."
NOT_YET_WEIGHED: Final = "Not kept: tell it again once the unit is named and the call is told."
_WEIGHED: Final = re.compile(r"refrigerant[\s:]+((?:added|recovered)\b.*)", re.IGNORECASE)


def leaves(typed: str) -> bool:
    """Whether somebody wants to go."""
    return typed.lower() in LEAVES


def noted(typed: str) -> str:
    """What is to be kept as a note; empty where it is none."""
    word, _, rest = typed.partition(" ")
    return rest.strip() if word.lower() == "note" else ""


def weighed(typed: str) -> str:
    """What is told of refrigerant that was weighed; empty where nothing is."""
    found = _WEIGHED.fullmatch(typed.strip())
    return "" if found is None else found[1]


def served(prompt: Prompt, typed: str, voice: Voice) -> bool:
    """Whether it was no answer to this prompt, and has been served. Raises DangerCalled.

    What the unit itself says may be left open.
    """
    if isinstance(prompt, AskTest | DoStep | Settled):
        return False
    said, note = typed.lower(), noted(typed)
    if note:
        voice.note(note)
    elif words := weighed(typed):
        if not voice.weigh(words):
            voice.say(NOT_YET_WEIGHED)
    elif said in HELP:
        if isinstance(prompt, AskProof) and prompt.read_by is not None:
            voice.tell(HowTo(prompt.read_by, tuple(c.hazard for c in prompt.cautions)))
        voice.say(f"{_what_would_do(prompt)} {ANYWHERE} {HOW_TO_CALL}")
    elif said in WHY:
        voice.say(f"{_why(prompt)} {_what_would_do(prompt)}")
    elif said in SKIPS and not isinstance(prompt, AskFact | AskPlate):
        voice.say(f"{NOT_SKIPPED} {_why(prompt)} {_what_would_do(prompt)}")
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
    if isinstance(prompt, AskFact | AskPlate):
        return "What the unit says, or Enter where it is not known; u goes back."
    return "Say it in your own words."


def _why(prompt: Prompt) -> str:
    """What hangs on an answer, in a sentence."""
    if isinstance(prompt, AtStop):
        return "A danger stands, and nothing else comes before it is made safe."
    if isinstance(prompt, AskProof):
        return "It shows whether the repair holds."
    if isinstance(prompt, AskPlate):
        return "Readings are judged by it."
    if isinstance(prompt, AskFact):
        return prompt.why or "Which causes are likely, and which steps are wanted, hangs on it."
    said = prompt.why if isinstance(prompt, AskWords | Choose) else ""
    return said or WHAT_HANGS_ON_IT


def keep_note(book: VisitBook, voice: Voice, text: str) -> None:
    """Keep a note. Raises DangerCalled where it tells of what stops at a prompt."""
    book.add(Noted(text))
    _hear_note(book.knowledge, voice, text)


def _hear_note(knowledge: Knowledge, voice: Voice, text: str) -> None:
    """Say that a note is kept. Raises DangerCalled where it tells of what stops at a prompt."""
    voice.say(f"Noted. {HOW_TO_CALL}" if hears_danger(knowledge, voice, text) else "Noted.")


def hears_danger(knowledge: Knowledge, voice: Voice, text: str) -> bool:
    """Whether words that are only kept speak of a danger and nothing is asked about it.

    Raises DangerCalled where they tell of what stops at a prompt. What does not stop the whole
    job, and is told of the past, is asked about.
    """
    told = told_among(knowledge, here_and_now(text))
    if any(hazard.stops_the_job for hazard in told) or (told and not quotes_the_past(text)):
        raise DangerCalled(text)
    asks = voice.ask_about(knowledge, text, is_told=bool(told))
    return not asks and bool(spoken_of(knowledge, text))


def keep_weighing(book: VisitBook, voice: Voice, words: str) -> None:
    """Keep what was weighed, or say why not. Raises DangerCalled where it tells of what stops.

    It is a record: it opens no circuit, proves nothing and changes nothing of the work.
    """
    if hears_danger(book.knowledge, voice, words):
        voice.say(HOW_TO_CALL)
    try:
        weighing = weighing_told(book.knowledge, circuits_of(_as_known(book)), words)
    except NotWeighed as error:
        voice.say(f"Not kept: {error}.")
        return
    book.add(Weighed(weighing))
    voice.say(f"Kept: {weighing_words(book.knowledge, weighing)}. u takes it back.")
    voice.say_all(cylinder_says(book.knowledge, weighing, scale_of(book.state.meters)))


def _as_known(book: VisitBook) -> Unit:
    """The unit as it was told here, or by the register where its circuits were not."""
    state = book.state
    on_record = {**state.on_record.afresh, **state.on_record.trusted}
    return state.unit if "circuits" in state.unit.facts else read_unit(book.knowledge, on_record)


def takes_notes(book: VisitBook, voice: Voice) -> None:
    """Let a note or a weight that is given at any prompt go into this visit."""
    voice.keeper = lambda text: keep_note(book, voice, text)
    voice.weigher = lambda words: keep_weighing(book, voice, words)


def holds_notes(knowledge: Knowledge, voice: Voice) -> list[str]:
    """Let notes be given before there is a visit; they are gathered in what is returned."""
    notes: list[str] = []

    def hold(text: str) -> None:
        notes.append(text)
        _hear_note(knowledge, voice, text)

    voice.keeper = hold
    return notes
