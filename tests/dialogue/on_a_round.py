"""A unit on its routine round: sound, or with the outcomes that are named."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from tests.dialogue.constant import ConstantVisit
from troubleshoot.dialogue.prompts import AskTest, Choose, DoStep, Prompt, Settled
from troubleshoot.dialogue.talk import Reply
from troubleshoot.practice.sound import SoundUnit
from troubleshoot.practice.texts import sound_text
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.visit.events import Answered, RoundBegun

Does = Literal["keeps it", "looks for it", "mends it"]


class RoundVisit(ConstantVisit):
    """A round whose tests are sound but for `odd`; then the unit is put back. No season: a call.

    `odd`: a test, or a test at a place -> its outcome. `does`: what is done about what is not
    sound. `shown`: every test and step as it was shown.
    """

    def __init__(
        self,
        reasoner: Reasoner,
        unit: Mapping[str, object],
        season: str,
        odd: Mapping[str, str] | None = None,
        does: Does = "keeps it",
        complaint: str = "routine-inspection",
    ) -> None:
        super().__init__(reasoner, unit, complaint, "sound")
        self.odd = dict(odd or {})
        self.does = does
        self.offered: list[str] = []
        self.settled: list[Settled] = []
        self.shown: list[AskTest | DoStep] = []
        if season:
            self.book.add(RoundBegun(season))

    def reply(self, prompt: Prompt) -> Reply | None:
        if isinstance(prompt, AskTest | DoStep):
            self.shown.append(prompt)
        if isinstance(prompt, Choose) and prompt.question.startswith("Not sound"):
            self.prompts += 1
            self.offered.append(prompt.question)
            return "1" if self.does == "keeps it" else "2"
        if isinstance(prompt, Choose):
            self.prompts += 1
            return "1" if prompt.options else "n"
        if isinstance(prompt, Settled):
            self.prompts += 1
            self.settled.append(prompt)
            if prompt.decision.ending == "round":
                return "done"
            return "repaired" if self.does == "mends it" else "round"
        return super().reply(prompt)

    def _answer(self, prompt: AskTest) -> Reply:
        test, at = prompt.decision.test, prompt.decision.at
        assert test is not None
        odd = self.odd.get(f"{test.id} at {at}", self.odd.get(test.id))
        if odd is not None:
            self.asked.append((test.id, at))
            return Answered.by(Answer(test.id, (odd,), places=(at,)))
        if not {*prompt.outcomes} & {*test.healthy}:
            sound = SoundUnit(self.state.unit, self.concluded().values)
            text = sound_text(self.knowledge, sound, test, at)
            if text:
                self.asked.append((test.id, at))
                return Answered.by(Answer(test.id, text=text, places=(at,)))
        return super()._answer(prompt)
