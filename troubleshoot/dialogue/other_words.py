"""What came of a test told in other words than the list's: taken with an echo, or asked about.

Where hands may be in, words that may tell that a state has gone are asked of as that first, and
what was found after it. What is sound is never taken from other words, nor does anything here
confirm a step or lift a STOP.
"""

from __future__ import annotations

import re
from dataclasses import replace
from string import digits

from troubleshoot.dialogue.beside_work import ask_if_all_stands
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.by_word import NotAnAnswer
from troubleshoot.dialogue.clauses import plainly
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.in_clauses import by_clauses
from troubleshoot.dialogue.in_part import THINGS, InPart, beside_words, in_part
from troubleshoot.dialogue.may_be_meant import agrees
from troubleshoot.dialogue.one_clause import part_that_answers
from troubleshoot.dialogue.other_looks import OtherLooks, Seen
from troubleshoot.dialogue.picking import pick
from troubleshoot.dialogue.prompts import AskTest, DoStep
from troubleshoot.dialogue.reading_out import ReadingOut
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.taking_up import is_taken_as_typed, meant_answer, protects, taken_up
from troubleshoot.dialogue.talk import DangerCalled, Leave, Talk
from troubleshoot.dialogue.told_unsound import tells_only_good, tells_unsound
from troubleshoot.knowledge.model import Test
from troubleshoot.safety.facts_first import outcomes_that_stop
from troubleshoot.safety.hearing.among_words import told_among
from troubleshoot.safety.hearing.findings import tells_a_finding
from troubleshoot.safety.hearing.gone import may_name_a_state, something_happened
from troubleshoot.safety.hearing.looks import tells_of_looks
from troubleshoot.safety.hearing.small_talk import is_small_talk
from troubleshoot.safety.hearing.words import raw_words
from troubleshoot.visit.events import Noted

WHICH_IS_MEANT = "Which of these is meant?"
_DEED = r"(?:put in|put on|changed|replaced|swapped|cleaned|washed|installed|serviced)"
_THEN = (
    r"(?:(?:last|this) (?:week|month|year|spring|summer|fall|winter)|"
    r"(?:a|two|three|\d+) (?:weeks?|months?|years?) ago)"
)
_AGE = re.compile(
    r"\s+(?:after all|as well)\s*$|"
    rf"[,;]?\s+(?:(?:and|they|it|were|was|got|had been) )*{_DEED}(?: (?:out|new))? "
    rf"(?:in |back in )?{_THEN}\s*$|"
    rf"[,;]?\s+(?:(?:and|they|are|got|had) )*(?:new|fresh)(?: (?:ones|set))?"
    rf"(?: {_DEED})? {_THEN}\s*$",
    re.IGNORECASE,
)
"""How long ago a thing was put in, behind what was found: no happening of now."""


def without_its_age(typed: str) -> str:
    """What was typed without when the thing was last seen to: look new, put in last year."""
    return _AGE.sub("", typed)


class OtherWords:
    """Takes outcomes in other words in one conversation."""

    def __init__(self, book: VisitBook, voice: Voice, reading_out: ReadingOut) -> None:
        self.book = book
        self.voice = voice
        self.telling = reading_out.telling
        self.other_looks = OtherLooks(book, voice, reading_out)

    def take(
        self, listener: Listener, prompt: AskTest | DoStep, typed: str, *, stands: bool
    ) -> Talk[bool]:
        """Whether words that answer nothing as typed were taken for what came of it, or of a look.

        `stands`: it was asked already whether all still does. Raises ToldGone, DangerCalled, Leave.
        """
        told, typed = typed, without_its_age(typed)
        if typed != told and self._is_answer(listener, prompt, typed):
            return True
        if part := part_that_answers(self.book, listener, prompt, typed):
            return (yield from self._takes_part(listener, prompt, typed, part))
        may_be_found = self._may_be_found(listener, prompt, typed)
        is_finding = may_be_found and tells_a_finding(typed)
        meant = self._meant(prompt, typed) if may_be_found else None
        elsewhere = may_be_found and meant is None
        seen = self.other_looks.told(prompt.decision, typed) if elsewhere else ()
        if len(seen) > 1 and (is_small_talk(typed) or tells_of_looks(typed)):
            seen = ()
        asks_later = not self._tells_of_it_alone(meant, typed)
        if not asks_later and (yield from self._take(listener, prompt, typed, meant, seen)):
            return True
        if is_finding:
            self.book.add(Noted(f"told at a test: {told}"))
            return False
        if not stands:
            yield from ask_if_all_stands(self.book, listener, prompt.decision, told)
        return asks_later and (
            yield from self._take(listener, prompt, typed, meant, seen, stands=True)
        )

    def is_of_it(self, listener: Listener, prompt: AskTest | DoStep, typed: str) -> bool:
        """Whether words are an answer to the test in hand, or may mean one."""
        try:
            told = meant_answer(self.book, listener, prompt, typed) is not None
        except NotAnAnswer:
            told = False
        if told or is_taken_as_typed(self.book, prompt, typed):
            return True
        test, meant = prompt.decision.test, self._meant(prompt, typed)
        return bool(test and meant and {*meant.outcomes}.isdisjoint(test.healthy))

    def _is_answer(self, listener: Listener, prompt: AskTest | DoStep, typed: str) -> bool:
        """Whether what is left without its age answers a test by itself, and was taken."""
        if prompt.decision.step is not None or listener.speaks_of_danger(typed):
            return False
        try:
            event = taken_up(self.book, listener, prompt, typed)
        except NotAnAnswer:
            return False
        self.telling.keep(event, prompt)
        return True

    def _takes_part(
        self, listener: Listener, prompt: AskTest | DoStep, typed: str, part: str
    ) -> Talk[bool]:
        """Take a clause that is agreed to; the whole line is kept as a note."""
        self.book.add(Noted(f"told at a test: {typed}"))
        asked = f'You typed "{typed}". Is "{part}" meant?'
        if not (yield from agrees(listener, asked, part)):
            return False
        self.telling.keep(taken_up(self.book, listener, prompt, part), prompt)
        return True

    def _may_be_found(self, listener: Listener, prompt: AskTest | DoStep, typed: str) -> bool:
        """Whether words may tell what was found: not at a step, nor of what hints at a danger."""
        if prompt.decision.step is not None or not set(plainly(typed)).isdisjoint(digits):
            return False
        if listener.speaks_of_danger(typed) or self.voice.hints(typed, listener.own):
            return False
        return not told_among(self.book.knowledge, typed)

    def _meant(self, prompt: AskTest | DoStep, typed: str) -> InPart | None:
        """What may be meant of the test in hand, by words that may tell what was found."""
        test = prompt.decision.test
        if test is None or is_small_talk(typed) or tells_of_looks(typed):
            return None
        meant = self._without_its_opposite(
            test, typed, in_part(self.book.knowledge, test, typed, prompt.outcomes)
        )
        if meant is not None and self._may_be_offered(test, typed, meant):
            return meant
        all_good = InPart((*test.healthy,), True, frozenset(), True)
        is_good = self._is_all_good(test, typed) and self._may_be_offered(test, typed, all_good)
        return all_good if is_good else None

    def _without_its_opposite(self, test: Test, typed: str, meant: InPart | None) -> InPart | None:
        """What may be meant without what is sound, where the words tell of what is not."""
        if meant is None or meant.are_all_meant or not tells_unsound(self.book.knowledge, typed):
            return meant
        unsound = tuple(each for each in meant.outcomes if each not in test.healthy)
        if not unsound or len(unsound) == len(meant.outcomes):
            return meant
        return replace(meant, outcomes=unsound, are_all_meant=len(unsound) == 1)

    def _is_all_good(self, test: Test, typed: str) -> bool:
        """Whether a finding in words of no outcome is that all is well, where that is one."""
        named = {*raw_words(" ".join((test.name, *test.words)))}
        others = {*raw_words(typed)} & THINGS - beside_words(test) - named
        known = len(test.healthy) == 1 and tells_a_finding(typed) and tells_only_good(typed)
        return known and not others and not tells_unsound(self.book.knowledge, typed)

    def _may_be_offered(self, test: Test, typed: str, meant: InPart) -> bool:
        """Whether none that may be meant shows a danger gone, or is the opposite of the words.

        What shows a danger gone is typed; and where it may be meant no other is a guess.
        """
        knowledge = self.book.knowledge
        if {*meant.outcomes}.isdisjoint(test.healthy):
            return tells_unsound(knowledge, typed) or not tells_only_good(typed)
        return not (protects(knowledge, test) or tells_unsound(knowledge, typed))

    def _tells_of_it_alone(self, meant: InPart | None, typed: str) -> bool:
        """Whether no word may tell of what the work stands on, nor of anything that happened."""
        if tells_a_finding(typed):
            return True
        if something_happened(typed, self.book.state.name):
            return False
        if meant is None:
            return True
        return meant.is_one_matter and not may_name_a_state(self.book.knowledge, meant.others)

    def _take(
        self,
        listener: Listener,
        prompt: AskTest | DoStep,
        typed: str,
        meant: InPart | None,
        seen: tuple[Seen, ...],
        *,
        stands: bool = False,
    ) -> Talk[bool]:
        """`stands`: it was agreed that all does, so that what else was said is no state."""
        test = prompt.decision.test
        if seen:
            return (yield from self.other_looks.take(listener, prompt.decision, typed, seen))
        if meant is None or test is None:
            return False
        answer = self._without_asking(test, typed, meant, stands=stands)
        if answer:
            self.voice.say(f'Taken as "{answer}".')
        else:
            try:
                answer = yield from self._asked(listener, test, typed, meant)
            except (Leave, DangerCalled):
                self.book.add(Noted(f"typed, and not confirmed: {typed}"))
                raise
        if not answer:
            return False
        self.telling.keep(taken_up(self.book, listener, prompt, answer), prompt)
        return True

    def _without_asking(self, test: Test, typed: str, meant: InPart, *, stands: bool) -> str:
        """The answer where all other words tell where or how much; empty where it is to be asked.

        So it is once all is agreed to stand, where none of them names a state. What is sound, or
        stops the job, is asked.
        """
        knowledge = self.book.knowledge
        asked = {*test.healthy, *outcomes_that_stop(knowledge, test)}
        if not asked.isdisjoint(meant.outcomes):
            return ""
        if stands and meant.are_all_meant and not may_name_a_state(knowledge, meant.others):
            return ", ".join(map(test.spoken, meant.outcomes))
        found = by_clauses(knowledge, test, typed, meant.outcomes, beside=beside_words(test))
        return ", ".join(map(test.spoken, found)) if {*found} == {*meant.outcomes} else ""

    def _asked(self, listener: Listener, test: Test, typed: str, meant: InPart) -> Talk[str]:
        """The answer that is agreed to; empty where none is."""
        names = [test.spoken(each) for each in meant.outcomes]
        if not meant.are_all_meant:
            index = yield from pick(self.book, self.voice, WHICH_IS_MEANT, names)
            return "" if index is None else names[index]
        answer = ", ".join(names)
        asked = f'You typed "{typed}". Is "{answer}" meant?'
        return answer if (yield from agrees(listener, asked, answer)) else ""
