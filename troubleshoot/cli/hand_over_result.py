"""Asking what came of a hand-over: who made it safe, what they did, and what shows it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from troubleshoot.cli import clock
from troubleshoot.cli.terminal import Terminal
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.reopening import (
    NotAResult,
    as_read,
    fitting_roles,
    in_words,
    read_after,
    role,
    told,
    when_read,
)
from troubleshoot.visit.roles import ROLES
from troubleshoot.visit.visit_state import HandOverResult, StopMet

LEAVES: Final = ("q", "quit")
MISSING: Final = "That is still missing: give it, or q to leave the visit closed."


def ask_result(terminal: Terminal, met: StopMet, knowledge: Knowledge) -> HandOverResult | None:
    """The result of a STOP's hand-over; None where the person leaves before all of it is given."""
    names = fitting_roles(knowledge.hazards[met.hazard])
    for number, name in enumerate(names, start=1):
        terminal.say(f"{number} {ROLES[name]}", 2)
    by = _ask(terminal, "Who made it safe?", lambda typed: role(typed, names))
    done = by and _ask(
        terminal,
        "What did they find, and what did they do?",
        lambda typed: in_words(knowledge, typed),
    )
    reading = done and _ask(
        terminal,
        "Which reading or look shows that it is safe?",
        lambda typed: as_read(knowledge, typed),
    )
    when = reading and _ask(
        terminal,
        "When was that?",
        lambda typed: when_read(typed, read_after(knowledge, met), clock.now()),
    )
    return HandOverResult(by, done, reading, when) if when else None


def ask_told(terminal: Terminal) -> str:
    """Who was told, by role, and when; asked until somebody is named."""
    while True:
        try:
            return told(terminal.ask("Who was told, and when?"))
        except NotAResult as error:
            terminal.say(str(error))


def _ask(terminal: Terminal, question: str, understood: Callable[[str], str]) -> str:
    """One part of the result, asked until it is understood; empty where the person leaves.

    Nothing typed throws nothing away: what is missing is asked for again.
    """
    while True:
        typed = terminal.ask(question)
        if typed.lower() in LEAVES:
            return ""
        if not typed:
            terminal.say(MISSING)
            continue
        try:
            return understood(typed)
        except NotAResult as error:
            terminal.say(str(error))
