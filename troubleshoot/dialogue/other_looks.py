"""What came of another look than is asked for, told by its name: filters are plugged solid.

Only what can be seen as the work stands was seen now; what needs another state is kept as a note.
What is sound, stops the job, or may be of several looks or places is asked about.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.in_clauses import by_clauses
from troubleshoot.dialogue.in_part import MOST, beside_words, names_of
from troubleshoot.dialogue.may_be_meant import agrees
from troubleshoot.dialogue.picking import pick
from troubleshoot.dialogue.reading_out import KEPT_AS_A_NOTE, ReadingOut
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.taking_up import protects
from troubleshoot.dialogue.talk import DangerCalled, Leave, Talk
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Test
from troubleshoot.reasoning.matching.lexicon import lexicon_of
from troubleshoot.reasoning.unit.places import Place, PlaceNotUnderstood, with_place
from troubleshoot.safety.facts_first import outcomes_that_stop
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.events import Answered, Noted
from troubleshoot.visit.hearing.tests_by_words import places_meant

WHICH: Final = "Which of these was seen?"


@frozen
class Seen:
    """What words say of a look at a place; `why_not`: why it cannot have been seen now."""

    test: Test
    at: Place | None
    outcomes: tuple[str, ...]
    why_not: str


class OtherLooks:
    """Takes what is told of other looks in one conversation."""

    def __init__(self, book: VisitBook, voice: Voice, reading_out: ReadingOut) -> None:
        self.book = book
        self.voice = voice
        self.reading_out = reading_out

    def told(self, decision: Decision, typed: str) -> tuple[Seen, ...]:
        """What the words may say of other looks: of those that can be seen now, if any can."""
        named = {test.id: self._named_by(test, typed) for test in self._looks(decision)}
        nearest = [
            name
            for name, words in named.items()
            if words and not any(words < other for other in named.values())
        ]
        tests = [self.book.knowledge.tests[name] for name in nearest]
        found = [each for test in tests for each in self._told_of(decision, test, typed)]
        if len({each.test.id for each in found}) > MOST:
            return ()
        return tuple(each for each in found if not each.why_not) or tuple(found[:1])

    def _looks(self, decision: Decision) -> Iterator[Test]:
        unit = self.book.state.unit
        for test in self.book.knowledge.tests.values():
            is_seen = test.kind in ("look", "measurement") and test.outcomes
            if is_seen and test != decision.test and unit.allows(test.exists_when):
                yield test

    def _named_by(self, test: Test, typed: str) -> frozenset[str]:
        """The words by which a look is named in what was typed, all of one of its names."""
        knowledge = self.book.knowledge
        lexicon, own = lexicon_of(knowledge), names_of(knowledge, test)
        said = {*lexicon.words(typed)}
        names = (own.intersection(lexicon.words(name)) for name in (test.name, *test.words))
        return max((n for n in names if n <= said), key=len, default=frozenset())

    def _told_of(self, decision: Decision, test: Test, typed: str) -> Iterator[Seen]:
        """What is said of one look, at each place that may be meant; no all-clear is taken so."""
        knowledge = self.book.knowledge
        outcomes = tuple(outcome.id for outcome in test.outcomes)
        found = by_clauses(knowledge, test, typed, outcomes, beside=beside_words(test))
        if not found or ({*found} & {*test.healthy} and protects(knowledge, test)):
            return
        for at in self._places(test, typed):
            yield Seen(test, at, found, self.reading_out.readable.why_not(decision, test, at))

    def _places(self, test: Test, typed: str) -> tuple[Place | None, ...]:
        try:
            return places_meant(self.book.knowledge, self.book.state.unit, test, typed)
        except PlaceNotUnderstood:
            return ()

    def take(
        self, listener: Listener, decision: Decision, typed: str, seen: tuple[Seen, ...]
    ) -> Talk[bool]:
        """Whether what was seen elsewhere was kept: as an answer of its look, or as a note.

        Raises Leave, DangerCalled.
        """
        try:
            chosen = yield from self._chosen(listener, typed, seen)
        except (Leave, DangerCalled):
            self.book.add(Noted(f"typed, and not confirmed: {typed}"))
            raise
        if chosen is None:
            return False
        if chosen.why_not:
            self.voice.say(f"Not taken: {self._named(chosen)}: {chosen.why_not}. {KEPT_AS_A_NOTE}")
            self.book.add(Noted(f"seen, and not taken: {typed}"))
            return True
        at = None if chosen.at is None else (str(chosen.at),)
        self.voice.say(f"Taken: {self._named(chosen)}.")
        telling = self.reading_out.telling
        telling.keep_reading(Answered(chosen.test.id, at, outcomes=chosen.outcomes))
        telling.what_follows()
        self.reading_out.go_on_with(decision)
        return True

    def _chosen(self, listener: Listener, typed: str, seen: tuple[Seen, ...]) -> Talk[Seen | None]:
        if len(seen) > 1:
            names = [self._named(each) for each in seen]
            index = yield from pick(self.book, self.voice, WHICH, names)
            return None if index is None else seen[index]
        (only,) = seen
        asked = {*only.test.healthy, *outcomes_that_stop(self.book.knowledge, only.test)}
        if only.why_not or asked.isdisjoint(only.outcomes):
            return only
        named = self._named(only)
        is_meant = yield from agrees(
            listener, f'You typed "{typed}". Is this meant: {named}?', named
        )
        return only if is_meant else None

    def _named(self, seen: Seen) -> str:
        layout = self.book.state.unit.layout
        where = with_place(seen.test.name, layout.shown(seen.test.per, seen.at))
        return f"{where}: {', '.join(map(seen.test.spoken, seen.outcomes))}"
