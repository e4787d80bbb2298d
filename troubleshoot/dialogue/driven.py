"""A visit that a program drives to its ending: a file of answers, an expert, a simulated unit."""

from __future__ import annotations

from abc import ABC, abstractmethod
from datetime import UTC, datetime
from typing import Final

from troubleshoot.dialogue.book import Forgotten, VisitBook
from troubleshoot.dialogue.dialogue import Dialogue
from troubleshoot.dialogue.opening import turns
from troubleshoot.dialogue.prompts import Prompt
from troubleshoot.dialogue.talk import Reply
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Event
from troubleshoot.visit.state import VisitState

LONGEST_VISIT: Final = 600
"""More replies than any visit has; a run that reaches it is a defect, not a long day."""


def at_once() -> datetime:
    """The time by a program's clock: it takes none."""
    return datetime.min.replace(tzinfo=UTC)


class DrivenVisit(ABC):
    """One visit that nobody is asked about. What each prompt is answered, a subclass says."""

    def __init__(self, reasoner: Reasoner, start: Event) -> None:
        self.knowledge = reasoner.knowledge
        self.decider = Decider(reasoner.knowledge, reasoner, self.holds)
        self.book = VisitBook(self.knowledge, "", Forgotten(), at_once)
        self.book.add(start)

    @property
    def state(self) -> VisitState:
        return self.book.state

    def concluded(self) -> Conclusions:
        """What follows from the visit as far as it has come."""
        return conclude_visit(self.decider.reasoner, self.state)

    def holds(self, test: str) -> bool:
        """Whether an answer to a test is there before it is asked for."""
        return False

    @abstractmethod
    def reply(self, prompt: Prompt) -> Reply | None:
        """The answer to a prompt; None where the visit ends with it."""

    def drive(self) -> None:
        """Answer prompt after prompt until there is no reply."""
        dialogue = Dialogue(lambda voice: turns(self.book, voice, decider=self.decider))
        for _ in range(LONGEST_VISIT):
            reply = self.reply(dialogue.prompt)
            if reply is None:
                return
            dialogue.answer(reply)
        raise RuntimeError("a driven visit did not come to an end")
