"""A unit that always answers alike: all sound, nothing known, the first outcome, or the last."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from troubleshoot.dialogue.driven import DrivenVisit
from troubleshoot.dialogue.prompts import AskTest, AtStop, DoStep, Ended, Prompt, Settled
from troubleshoot.dialogue.talk import Reply
from troubleshoot.reasoning.answers import Answer
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.places import Place
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.visit.events import Answered, Skipped, Started, StepDone

Mode = Literal["sound", "unknown", "first", "last"]
MODES: tuple[Mode, ...] = ("sound", "unknown", "first", "last")


class ConstantVisit(DrivenVisit):
    """Every step is done; every test is answered as the mode says, or skipped."""

    def __init__(
        self, reasoner: Reasoner, unit: Mapping[str, object], complaint: str, mode: Mode
    ) -> None:
        start = Started(unit=dict(unit), complaint=complaint)
        super().__init__(reasoner, start)
        self.mode = mode
        self.prompts = 0
        self.asked: list[tuple[str, Place | None]] = []
        self.end: Prompt | None = None

    def reply(self, prompt: Prompt) -> Reply | None:
        self.prompts += 1
        if isinstance(prompt, DoStep):
            step = prompt.decision.step
            assert step is not None
            return StepDone.of(step, (CONFIRMED[step.id],))
        if isinstance(prompt, AskTest):
            return self._answer(prompt)
        if isinstance(prompt, Settled | AtStop | Ended):
            self.end = prompt
            return None
        return ""

    def _answer(self, prompt: AskTest) -> Reply:
        test, at = prompt.decision.test, prompt.decision.at
        assert test is not None
        self.asked.append((test.id, at))
        sound = [outcome for outcome in prompt.outcomes if outcome in test.healthy]
        chosen = {"first": prompt.outcomes[:1], "last": prompt.outcomes[-1:], "sound": sound[:1]}
        outcomes = tuple(chosen.get(self.mode, ()))
        if not outcomes:
            return Skipped.over(test.id, at)
        return Answered.by(Answer(test.id, outcomes, places=(at,)))
