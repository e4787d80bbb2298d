"""A unit that always answers alike: all sound, nothing known, the first outcome, or the last."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from troubleshoot.dialogue.driven import DrivenVisit
from troubleshoot.dialogue.prompts import (
    AskTest,
    AtStop,
    Choose,
    DoStep,
    Ended,
    Prompt,
    Settled,
)
from troubleshoot.dialogue.talk import Reply
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.reaching import steps_before
from troubleshoot.visit.events import Answered, Skipped, Started, StepDone
from troubleshoot.visit.telling.account import listed_causes

Mode = Literal["sound", "unknown", "first", "last"]
MODES: tuple[Mode, ...] = ("sound", "unknown", "first", "last")


class ConstantVisit(DrivenVisit):
    """Every step is done; every test is answered as the mode says, or skipped.

    `mends`: at its first ending the likeliest cause is said to be repaired, no proof is read, and
    the complaint is still there. `cannot`: what was asked that the work state did not allow;
    `unrecorded`: that the record does not show to be in hand.
    """

    def __init__(
        self,
        reasoner: Reasoner,
        unit: Mapping[str, object],
        complaint: str,
        mode: Mode,
        *,
        mends: bool = False,
        words: str = "",
    ) -> None:
        start = Started(unit=dict(unit), complaint=complaint, words=words)
        super().__init__(reasoner, start)
        self.mode = mode
        self.mends = mends
        self.prompts = 0
        self.cannot: list[str] = []
        self.unrecorded: list[str] = []
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
        if isinstance(prompt, Settled) and self.mends and listed_causes(prompt.conclusions):
            self.mends = False
            return "repaired"
        if isinstance(prompt, Choose):
            return "1" if prompt.options else "y"
        if isinstance(prompt, Settled | AtStop | Ended):
            self.end = prompt
            return None
        return ""

    def _answer(self, prompt: AskTest) -> Reply:
        test, at = prompt.decision.test, prompt.decision.at
        assert test is not None
        self.asked.append((test.id, at))
        if steps_before(self.state, test, at):
            self.cannot.append(test.id)
        if (test.id, at) not in (self.state.aim, self.state.shown, self.state.fresh):
            self.unrecorded.append(test.id)
        sound = [outcome for outcome in prompt.outcomes if outcome in test.healthy]
        chosen = {"first": prompt.outcomes[:1], "last": prompt.outcomes[-1:], "sound": sound[:1]}
        outcomes = tuple(chosen.get(self.mode, ()))
        if not outcomes:
            return Skipped.over(test.id, at)
        return Answered.by(Answer(test.id, outcomes, places=(at,)))
