"""Asking what came of a hand-over: who made it safe, what they did, and what shows it."""

from __future__ import annotations

from collections.abc import Callable

from troubleshoot.cli import clock
from troubleshoot.cli.listening import Listener
from troubleshoot.cli.terminal import Terminal
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.reopening import (
    ROLES,
    NotAResult,
    fitting_roles,
    in_words,
    role,
    stopped_at,
    when_read,
)
from troubleshoot.visit.visit_state import HandOverResult, StopMet


def ask_result(terminal: Terminal, met: StopMet, knowledge: Knowledge) -> HandOverResult | None:
    """The result of a STOP's hand-over; None where any of it is missing. Raises DangerCalled."""
    listener = Listener(knowledge, terminal, (met.hazard,))
    names = fitting_roles(knowledge.hazards[met.hazard])
    for number, name in enumerate(names, start=1):
        terminal.say(f"{number} {ROLES[name]}", 2)
    by = _ask(listener, "Who made it safe?", lambda typed: role(typed, names))
    done = by and ask_in_words(listener, "What did they find, and what did they do?")
    reading = done and ask_in_words(listener, "Which reading or look shows that it is safe?")
    when = reading and _ask(
        listener,
        "When was that?",
        lambda typed: when_read(typed, stopped_at(met), clock.now()),
    )
    return HandOverResult(by, done, reading, when) if when else None


def ask_in_words(listener: Listener, question: str) -> str:
    """Words that somebody else can read something in; empty where nothing is known."""
    return _ask(listener, question, in_words)


def _ask(listener: Listener, question: str, understood: Callable[[str], str]) -> str:
    """One part of the result, asked until it is understood; empty where it is not known."""
    while True:
        typed = listener.terminal.ask(question)
        if not typed:
            return ""
        listener.hear_cry(typed)
        try:
            return understood(typed)
        except NotAResult as error:
            listener.not_understood(typed, str(error))
