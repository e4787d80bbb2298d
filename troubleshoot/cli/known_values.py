"""Asking what the unit itself says: an equipment fact, a value from its nameplate."""

from __future__ import annotations

from collections.abc import Callable

from troubleshoot.cli.listening import Listener
from troubleshoot.cli.terminal import Leave, Terminal
from troubleshoot.cli.visit_book import VisitBook
from troubleshoot.knowledge.model import EquipmentFact
from troubleshoot.outside.numbers import choice

HELP = "Type what the unit says, or Enter if it is not known; q keeps the visit and leaves."


def ask_fact(terminal: Terminal, book: VisitBook, fact: EquipmentFact, why: str = "") -> None:
    """One equipment fact, by number or word, asked until it is understood; Enter for not known."""
    if why:
        terminal.say(why)
    choices = ", ".join(f"{n} {v}" for n, v in enumerate(fact.values, start=1))
    terminal.say(f"{fact.asks} ({choices})")

    def read(typed: str) -> object:
        number = None if fact.counts else choice(typed, len(fact.values))
        return typed if number is None else fact.values[number - 1]

    _ask(terminal, book, fact.id, read)


def ask_plate(terminal: Terminal, book: VisitBook, name: str, meaning: str, at: str | None) -> None:
    """One nameplate value, for one place where there are several; Enter for not known."""
    where = f", {at}" if at else ""
    terminal.say(f"From the nameplate{where}: {meaning}. Enter if it cannot be read.")
    _ask(terminal, book, name, lambda typed: {at: typed} if at else typed)


def _ask(terminal: Terminal, book: VisitBook, name: str, read: Callable[[str], object]) -> None:
    """Ask until it is understood. Raises Leave, DangerCalled."""
    listener = Listener(book.knowledge, terminal)
    while True:
        typed = terminal.ask(">")
        word = typed.lower()
        if word in ("q", "quit"):
            raise Leave
        if word in ("?", "h", "help", "how", "w", "why"):
            terminal.say(HELP)
            continue
        problem = book.try_fact(name, None if word in ("", "s", "skip") else read(typed))
        if problem is None:
            return
        listener.not_understood(typed, problem)
