"""How a unit will be left, told before the steps that leave it so."""

from __future__ import annotations

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.said import Voice
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.safety.stops.lifting import finding_of
from troubleshoot.safety.stops.record import Spot
from troubleshoot.safety.stops.standing import would_lift
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
            for fired in off.all:
                lifts = self._lifting(decision.aim, conclusions, fired)
                self.voice.say(
                    f"Over the repair still stands: {fired.hazard.spoken}. Before any proof: "
                    f"{'; '.join(lifts)}. Read afresh and sound, "
                    f"{'it takes' if len(lifts) == 1 else 'they take'} that away.",
                    strong=True,
                )

    def _lifting(self, aim: Spot, conclusions: Conclusions, fired: FiredHazard) -> list[str]:
        """What takes one danger away: all that ends it, else its own finding, else what is next."""
        knowledge = self.book.knowledge
        ends = dict.fromkeys(test for test, _ in would_lift(conclusions, fired))
        own = finding_of(knowledge, self.book.state, conclusions, fired)
        names = ends or (own[0] if own else aim[0],)
        return [knowledge.tests[name].name for name in names]
