"""How a unit will be left, told before the steps that leave it so."""

from __future__ import annotations

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.said import Voice
from troubleshoot.reasoning.conclude import Conclusions
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.left_off import left_off_at, what_lifts
from troubleshoot.visit.deciding.next import TAKES_IT_AWAY


class StayingOff:
    """What stays off at the end of one visit, or stands over its repair; each is told once."""

    def __init__(self, book: VisitBook, voice: Voice) -> None:
        self.book = book
        self.voice = voice
        self.told_what_stays = False
        self.told_what_lifts = False

    def tell(self, decision: Decision, conclusions: Conclusions) -> None:
        """How the unit will be left; over a mended one first what still stands and what lifts it.

        Until that has been read afresh nobody knows how the unit will be left.
        """
        if not self.book.state.closing or self.told_what_stays:
            return
        off = left_off_at(self.book.knowledge, self.book.state, conclusions)
        if decision.reason != TAKES_IT_AWAY or decision.aim is None:
            self.told_what_stays = True
            self.voice.say_all(off.lines)
            self.voice.say_all(what_lifts(self.book.knowledge, conclusions, off))
        elif not self.told_what_lifts:
            self.told_what_lifts = True
            lifts = self.book.knowledge.tests[decision.aim[0]].name
            for fired in off.all:
                self.voice.say(
                    f"Over the repair still stands: {fired.hazard.spoken}. Before any proof: "
                    f"{lifts}. Read afresh and sound, it takes that away.",
                    strong=True,
                )
