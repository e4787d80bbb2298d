"""Keeping an answer, and telling what it means: the verdict, the dangers, the causes."""

from __future__ import annotations

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.prompts import AskTest, DoStep
from troubleshoot.dialogue.said import Agreement, Causes, Danger, Verdict, Voice
from troubleshoot.knowledge.model import Test
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.measuring import read_with
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.safety.stops.standing import called_up
from troubleshoot.visit.events import Answered, Event, StepDone
from troubleshoot.visit.events.places import places_from
from troubleshoot.visit.hearing.repeating import agreement
from troubleshoot.visit.telling.contradicting import computed_since, contradictions, named
from troubleshoot.visit.telling.expected_beside import expected_beside
from troubleshoot.visit.telling.judged_by import judged_by
from troubleshoot.visit.telling.reckoned import reckoned_otherwise


def _confirms(event: StepDone) -> bool:
    return CONFIRMED.get(event.step) in event.outcomes


class Telling:
    """What is told of the answers of one visit; each danger once."""

    def __init__(self, book: VisitBook, voice: Voice, reasoner: Reasoner) -> None:
        self.book = book
        self.voice = voice
        self.reasoner = reasoner
        self.told_hazards: set[str] = set()

    def keep(self, event: Event, prompt: AskTest | DoStep) -> None:
        """Keep an answer, and tell what it means."""
        chosen = self.book.state.aim if self.book.state.aim_chosen else None
        if isinstance(prompt, AskTest) and isinstance(event, Answered):
            self.keep_reading(event)
        else:
            self.book.add(event)
        if chosen is not None and isinstance(event, StepDone) and self.book.state.aim is None:
            name, test = self.book.knowledge.tests[chosen[0]].name, prompt.decision.test
            assert test is not None
            came = " and ".join(map(test.spoken, event.outcomes))
            self.voice.say(f"{name} waits for this: {test.name}: {came}. do takes it up again.")
        elif isinstance(event, StepDone) and event.text and not _confirms(event):
            came = " and ".join(map(self.book.knowledge.tests[event.step].spoken, event.outcomes))
            self.voice.say(f"{event.text} is taken as: {came}.")
        self.what_follows(causes=isinstance(prompt, AskTest))

    def keep_reading(self, event: Answered) -> None:
        """Keep an answer to a test, and tell what it was judged to be and what it contradicts."""
        test = self.book.knowledge.tests[event.test]
        at = places_from(event.at, test.per, self.book.state.unit)[0]
        repaired = self.book.state.repairs[-1:]  # a new part is no second reading of the old one
        since = repaired[0].answers if repaired else 0
        typed = [a for a in self.book.state.answers[since:] if a.test == test.id and a.text]
        before = conclude_visit(self.reasoner, self.book.state)
        self.book.add(event)
        after = conclude_visit(self.reasoner, self.book.state)
        last = self.book.state.answers[-1]
        if typed and typed[-1].places == last.places:
            self._compare(test, typed[-1].text or "", last.text or "")
        for sentence in (*contradictions(before, after), *reckoned_otherwise(before, after)):
            self.voice.tell(Agreement(sentence))
        computed = [*computed_since(before, after)]
        for reading in after.readings:
            if reading.test == test.id and reading.at == at and not (computed and not reading.seen):
                expected = expected_beside(reading, before, after)
                lacks = "" if reading.seen else self._lacks(test, at)
                with_what = read_with(test, self.book.knowledge, self.book.state.meters)
                self.voice.tell(Verdict(reading, "", expected, lacks, with_what))
        for reading in computed:
            expected = expected_beside(reading, before, after)
            self.voice.tell(Verdict(reading, named(after, reading), expected))

    def what_follows(self, causes: bool = True) -> None:
        """The dangers that what was kept calls up, and the causes.

        None of these while a round is walked, nor while a STOP stands that comes before them.
        """
        found = conclude_visit(self.reasoner, self.book.state)
        self.hazards(found)
        if causes and not found.standing_stops and self.book.state.walking is None:
            self.voice.tell(Causes(found))

    def hazards(self, found: Conclusions) -> None:
        """What a finding or a likely fault has called up, once, as soon as it is known.

        STOPs that end or halt the visit are told where they do so, and lesser dangers wait behind
        them: they are told when the visit goes on, and stand in its account where it does not.
        """
        if found.standing_stops:
            return
        for fired in found.hazards:
            if fired.hazard.id not in self.told_hazards:
                self.told_hazards.add(fired.hazard.id)
                self.voice.tell(Danger(called_up(found, fired)))

    def _lacks(self, test: Test, at: Place | None) -> str:
        return judged_by(self.book.knowledge, self.book.state.unit, test, at)

    def _compare(self, test: Test, first: str, second: str) -> None:
        sentence = agreement(self.book.knowledge, test, first, second)
        if sentence is not None:
            self.voice.tell(Agreement(sentence))
