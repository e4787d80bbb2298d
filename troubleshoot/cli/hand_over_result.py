"""Asking what came of a hand-over: who made it safe, what they did, and what shows it."""

from __future__ import annotations

from collections.abc import Callable

from troubleshoot.cli import clock
from troubleshoot.cli.terminal import Terminal
from troubleshoot.visit.reopening import ROLES, NotAResult, in_words, role, when_read
from troubleshoot.visit.visit_state import HandOverResult


def ask_result(terminal: Terminal, stopped_at: str) -> HandOverResult | None:
    """The hand-over's result; None where any of it is missing."""
    for number, name in enumerate(ROLES.values(), start=1):
        terminal.say(f"{number} {name}", 2)
    by = _ask(terminal, "Who made it safe?", role)
    done = by and _ask(terminal, "What did they find, and what did they do?", in_words)
    reading = done and _ask(terminal, "Which reading or look shows that it is safe?", in_words)
    when = reading and _ask(
        terminal,
        "When was that?",
        lambda typed: when_read(typed, stopped_at, clock.now()),
    )
    return HandOverResult(by, done, reading, when) if by and done and reading and when else None


def _ask(terminal: Terminal, question: str, understood: Callable[[str], str]) -> str:
    """One part of the result, asked until it is understood; empty where it is not known."""
    while True:
        typed = terminal.ask(question)
        if not typed:
            return ""
        try:
            return understood(typed)
        except NotAResult as error:
            terminal.say(str(error))
