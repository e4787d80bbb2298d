"""A visit whose technician does what is asked and does it well; what is read, a unit says."""

from __future__ import annotations

from abc import abstractmethod
from typing import Final

from troubleshoot.dialogue.driven import DrivenVisit
from troubleshoot.dialogue.prompts import AskTest, AtStop, DoStep, Ended, Prompt, Settled
from troubleshoot.dialogue.talk import Reply
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.events import Event, StepDone

NOT_KNOWN: Final = ""


class LedVisit(DrivenVisit):
    """Steps go well, whoever is asked knows nothing more, and a STOP or an ending ends it.

    `tests`: how many were answered. `stopped`: a STOP ended it.
    """

    def __init__(self, reasoner: Reasoner, start: Event) -> None:
        super().__init__(reasoner, start)
        self.tests = 0
        self.stopped = False

    def reply(self, prompt: Prompt) -> Reply | None:
        """What the unit shows; None at an ending or a STOP."""
        if isinstance(prompt, AtStop):
            self.stopped = True
        if isinstance(prompt, AtStop | Settled | Ended):
            return None
        if isinstance(prompt, DoStep):
            step = prompt.decision.step
            assert step is not None
            return StepDone.of(step, (CONFIRMED[step.id],))
        return self._shown(prompt.decision) if isinstance(prompt, AskTest) else NOT_KNOWN

    @abstractmethod
    def _shown(self, decision: Decision) -> Event:
        """What the unit shows at the test that is decided on."""
