"""Asking what the unit itself says: an equipment fact, a value from its nameplate."""

from __future__ import annotations

from collections.abc import Callable

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.prompts import AskFact, AskPlate
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Leave, Talk, words
from troubleshoot.knowledge.model import EquipmentFact, PlateValue
from troubleshoot.outside.numbers import choice

HELP = "Type what the unit says, or Enter if it is not known; q keeps the visit and leaves."


def ask_fact(book: VisitBook, voice: Voice, fact: EquipmentFact, why: str = "") -> Talk[None]:
    """One equipment fact, by number or word, asked until it is understood; Enter for not known."""

    def read(typed: str) -> object:
        number = None if fact.counts else choice(typed, len(fact.values))
        return typed if number is None else fact.values[number - 1]

    yield from _ask(book, voice, AskFact(fact, why), fact.id, read)


def ask_plate(book: VisitBook, voice: Voice, plate: PlateValue, at: str | None) -> Talk[None]:
    """One nameplate value, for one place where there are several; Enter for not known."""

    def read(typed: str) -> object:
        return {at: typed} if at else typed

    yield from _ask(book, voice, AskPlate(plate, at), plate.id, read)


def _ask(
    book: VisitBook,
    voice: Voice,
    prompt: AskFact | AskPlate,
    name: str,
    read: Callable[[str], object],
) -> Talk[None]:
    """Ask until it is understood. Raises Leave, DangerCalled."""
    offered = prompt.fact.values if isinstance(prompt, AskFact) else ()
    listener = Listener(book.knowledge, voice, offered=offered)
    while True:
        typed = yield from words(prompt)
        word = typed.lower()
        if word in ("q", "quit"):
            raise Leave
        if word in ("?", "h", "help", "how", "w", "why"):
            voice.say(HELP)
            continue
        problem = book.try_fact(name, None if word in ("", "s", "skip") else read(typed))
        if problem is None:
            return
        listener.not_understood(typed, problem)
