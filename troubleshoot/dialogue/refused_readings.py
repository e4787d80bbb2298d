"""What readings show that cannot be taken as the work stands: a danger does not wait for that.

They are judged by all that is known of the unit, as if they had been taken. What they would find
stands as a danger that was told; where only some of the tests that may be meant find it, or what
stops a step alone breaks no limit of the unit's own, it is asked about.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.readable import Spot
from troubleshoot.dialogue.said import Hinted, Voice
from troubleshoot.knowledge.gravity import gravest_first
from troubleshoot.knowledge.model import Hazard, Test
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.events import Answered, DangerReported, after
from troubleshoot.visit.state import VisitState

NOT_KNOWN: Final = ("not-known",)
CALLS_UP_A_DANGER: Final = "Taken or not, that reading calls up a danger."


class RefusedReadings:
    """Judges readings that are not taken, each as it was typed with the spots it may be of."""

    def __init__(self, book: VisitBook, voice: Voice, reasoner: Reasoner) -> None:
        self.book = book
        self.voice = voice
        self.reasoner = reasoner

    def bring(self, told: Iterable[tuple[str, Sequence[Spot]]]) -> bool:
        """Keep the dangers that readings show, or have it asked about; whether they show any."""
        is_any = False
        for text, spots in told:
            by_test = self._by_test(text, spots)
            certain = frozenset.intersection(*by_test) if by_test else frozenset()
            tests = [test for test, _ in spots]
            hazards = (self.book.knowledge.hazards[name] for name in certain)
            hazards = (each for each in hazards if self._is_plain(each, tests))
            for hazard in reversed(gravest_first(hazards)):
                self.voice.say(CALLS_UP_A_DANGER, strong=True)
                self.book.add(DangerReported.of(hazard, f"{spots[0][0].name}: {text}"))
                is_any = True
            is_any = is_any or self.ask_about(text, [(text, spots)])
        return is_any

    def ask_about(self, typed: str, told: Iterable[tuple[str, Sequence[Spot]]]) -> bool:
        """Have it asked whether there is a danger, where any of the readings may show one."""
        if any(any(self._by_test(text, spots)) for text, spots in told):
            self.voice.hinted = Hinted(self.book.knowledge, typed)
            return True
        return False

    def _is_plain(self, hazard: Hazard, tests: Sequence[Test]) -> bool:
        """Whether it stands without being asked: of a step alone, by no common limit.

        A common one judges where nobody has told that of this unit.
        """
        if hazard.stop is not None and hazard.stop.scope != "this-step":
            return True
        return not any(self._is_by_a_common_limit(hazard, test) for test in tests)

    def _is_by_a_common_limit(self, hazard: Hazard, test: Test) -> bool:
        told = {name for name, _ in self.book.state.unit.plate}
        found = {o for each in hazard.findings if each.test == test.id for o in each.outcomes}
        lines = (line for o in test.outcomes if o.id in found for line in o.limits)
        whens = (when for line in lines for when in (line.when, *(b.when for b in line.bounds)))
        wants = (name for when in whens for name, words in when.items() if words == NOT_KNOWN)
        return any(name in self.book.knowledge.plate_values and name not in told for name in wants)

    def _by_test(self, text: str, spots: Sequence[Spot]) -> list[frozenset[str]]:
        """For each test that may be meant the dangers that it would find, at whichever place."""
        found: dict[str, frozenset[str]] = {}
        for test, at in spots:
            answer = Answered(test.id, None if at is None else (str(at),), text=text)
            found[test.id] = found.get(test.id, frozenset()) | self._called_up(answer)
        return [*found.values()]

    def _called_up(self, answer: Answered) -> frozenset[str]:
        """The hazards that stop something and that an answer finds, beside those that stand."""
        now = after(self.book.knowledge, self.book.state, answer)
        return self._found(now) - self._found(self.book.state)

    def _found(self, state: VisitState) -> frozenset[str]:
        fired = conclude_visit(self.reasoner, state).hazards
        return frozenset(each.hazard.id for each in fired if each.stops)
