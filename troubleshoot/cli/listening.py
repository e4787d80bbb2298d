"""Hearing a danger in what is typed at a prompt, whatever the prompt asks for.

Words that would do as an answer are an answer. Where any words would do, those that say little but
a danger are one; where nothing typed can be right, whatever speaks of one.
"""

from __future__ import annotations

from collections.abc import Collection

from troubleshoot.cli.terminal import DangerCalled, Leave, Terminal
from troubleshoot.cli.visit_book import VisitBook
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.dangers import cried, is_unnamed, reported, spoken_of
from troubleshoot.visit.event_shapes import danger_event, named_danger_event
from troubleshoot.visit.profiles import TECHNICIAN

HOW_TO_CALL = "If somebody is in danger: danger and what is wrong."
CLEAR_FIRST = "STOP. Get clear of it first, you and everybody else."
WHAT_IS_WRONG = "What is wrong? A few words, or Enter >"


class Listener:
    """Listens at one prompt. `standing`: hazards that have been told of, and are not told again."""

    def __init__(
        self, knowledge: Knowledge, terminal: Terminal, standing: Collection[str] = ()
    ) -> None:
        self.knowledge = knowledge
        self.terminal = terminal
        self.standing = standing
        self._told = False

    def hear(self, typed: str) -> None:
        """Raise DangerCalled where what was typed speaks of a danger."""
        self._call(typed, {hazard.id for hazard in spoken_of(self.knowledge, typed)})

    def hear_cry(self, typed: str) -> None:
        """Raise DangerCalled where words of any kind were wanted, and these cry danger."""
        self._call(typed, {hazard.id for hazard in cried(self.knowledge, typed)})

    def not_understood(self, typed: str, reply: str) -> None:
        """Say why that is no answer, and once how a danger is called. Raises DangerCalled."""
        self.hear(typed)
        hint = HOW_TO_CALL if typed and not self._told else ""
        self._told = self._told or bool(hint)
        self.terminal.say(f"{reply} {hint}".strip())

    def _call(self, typed: str, named: set[str]) -> None:
        if not named <= {*self.standing}:
            raise DangerCalled(typed)


def report_danger(book: VisitBook, terminal: Terminal, name: str, words: str) -> None:
    """Put a danger into the book, which may have nothing in it yet, and ask for one not named.

    Of several the gravest is put in last, since the last is told of first. Raises Leave.
    """
    if not book.events:
        book.add({"event": "start", "name": name, "profiles": [TECHNICIAN]})
    for hazard in reversed(reported(book.knowledge, words)):
        book.add(danger_event(hazard, words))
    if not is_unnamed(book.knowledge, words):
        return
    terminal.say()
    terminal.say(CLEAR_FIRST, strong=True)
    try:
        more = terminal.ask(WHAT_IS_WRONG)
    except DangerCalled as called:
        more = str(called)
    if more.lower() in ("q", "quit"):
        raise Leave
    if is_unnamed(book.knowledge, more):
        return
    first, *others = reversed(reported(book.knowledge, more))
    book.add(named_danger_event(first, more))
    for hazard in others:
        book.add(danger_event(hazard, more))
