"""Readings typed by their short words at a prompt that asks for something else, one or several.

Each is echoed with what it was taken for and where, judged, and kept as an answer of its test; what
was asked stays open. What the work as it stands does not let anybody read is no reading: it is told
and kept as a note.
"""

from __future__ import annotations

from string import digits
from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.doubting import reading_as_meant
from troubleshoot.dialogue.gauges_read import ask_if_gauges_are_on
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.high_over_low import as_they_stand
from troubleshoot.dialogue.picking import pick
from troubleshoot.dialogue.plate_read_out import take_plate
from troubleshoot.dialogue.readable import Readable, Spot
from troubleshoot.dialogue.refused_readings import RefusedReadings
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.taking_back import lifts_a_stop
from troubleshoot.dialogue.taking_up import protects
from troubleshoot.dialogue.talk import Back, DangerCalled, Leave, Talk
from troubleshoot.dialogue.telling import Telling
from troubleshoot.dialogue.yes_no import YesNo, yes_or_no
from troubleshoot.knowledge.model import Test
from troubleshoot.reasoning.unit.places import (
    Place,
    spoken,
    with_place,
)
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import GAUGES_ON
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.safety.work_state import WorkState
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Aimed, Answered, Noted, ReadingWithdrawn
from troubleshoot.visit.hearing.read_out import Line, ReadOut, read_out
from troubleshoot.visit.hearing.with_reading import impossible_with
from troubleshoot.visit.telling.as_read import as_read

SUCTION: Final = "suction-pressure"
KEPT_AS_A_NOTE: Final = "Kept as a note."
_OF_THE_NEW: Final = frozenset(
    {"brand", "can", "draws", "measures", "new", "pulls", "shows", "tests", "the"}
)
"""Words that say of a reading only that it is of the new part: the new can measures 10.1."""


class ReadingOut:
    """Takes readings by their short words in one conversation."""

    def __init__(self, book: VisitBook, voice: Voice, decider: Decider, telling: Telling) -> None:
        self.book = book
        self.voice = voice
        self.decider = decider
        self.telling = telling
        self.readable = Readable(book, decider)
        self.refused = RefusedReadings(book, voice, decider.reasoner)

    def take(
        self, listener: Listener, typed: str, decision: Decision, why_not: str
    ) -> Talk[str | None]:
        """Take the readings of a line; None where that was done, else why it is no answer.

        `why_not`: why it is none to what was asked. Raises Leave, DangerCalled.
        """
        if listener.speaks_of_danger(typed, read=False):
            return why_not
        line = read_out(self.book.knowledge, self.book.state.unit, typed, self._asked(decision))
        if not line.readings or (line.unread and decision.step is not None):
            if not listener.speaks_of_danger(typed):
                spots = [(one.text, self.readable.spots(one, decision)) for one in line.readings]
                self.refused.ask_about(typed, spots)
            return line.why if set(typed) & {*digits} and line.why else why_not
        try:
            is_whole = not line.unread or self._is_of_the_new(line, decision)
            if not (is_whole or (yield from self._is_understood(listener, line, typed))):
                return None
            yield from ask_if_gauges_are_on(
                self.book, listener, self.readable, line.readings, decision
            )
            kept = yield from self._each(listener, typed, line.readings, decision)
        except (Leave, DangerCalled):
            self._note(typed)
            raise
        if kept:
            self.telling.what_follows()
            self.go_on_with(decision)
        return None

    def take_beside(self, typed: str, own: Test | None) -> Talk[str | None]:
        """Take readings that are told by name where a test's reading is asked for in another way.

        What was read for `own`, which is not kept here; empty where it was not told, None where no
        reading is told by its name. Raises Leave, DangerCalled.
        """
        line = read_out(self.book.knowledge, self.book.state.unit, typed)
        if not line.readings or line.unread:
            return None
        mine = [one.text for one in line.readings if own in one.tests]
        others = tuple(one for one in line.readings if own not in one.tests)
        listener = Listener(self.book.knowledge, self.voice)
        if (yield from self._each(listener, typed, others, Decision("ending"))):
            self.telling.what_follows(causes=False)
        return mine[0] if len(mine) == 1 else None if mine else ""

    def _asked(self, decision: Decision) -> Test | None:
        """The test whose number needs no word: what protects somebody is typed as it is read."""
        test = decision.test
        if decision.step is not None and decision.step.id == GAUGES_ON:
            return self.book.knowledge.tests[SUCTION]  # both gauges at once: 94 / 290
        if test is None or decision.step is not None or protects(self.book.knowledge, test):
            return None
        return test

    def _is_of_the_new(self, line: Line, decision: Decision) -> bool:
        """Whether all else that is told is that it was read on the new part, after a repair."""
        asked = [one for one in line.readings if decision.test in one.tests]
        said = {word for text in line.unread for word in text.split()}
        is_new = "new" in said and said <= _OF_THE_NEW
        return is_new and len(asked) == len(line.readings) == 1 and self.book.state.mended_here > 0

    def _is_understood(self, listener: Listener, line: Line, typed: str) -> Talk[bool]:
        """Whether what was understood of a line is to be taken without the rest of it.

        The whole line is kept as a note. Raises Leave, DangerCalled.
        """
        listener.hear(typed)
        listener.ask_about(typed)
        taken = ", ".join(f"{one.words} {one.text}".strip() for one in line.readings)
        rest = ", ".join(f'"{text}"' for text in line.unread)
        question = YesNo(f"Understood: {taken}. Not understood: {rest}. Take what was understood?")
        try:
            meant = yield from yes_or_no(listener, question)
        except Back:
            meant = False
        self._note(typed)
        self.voice.say(f"The whole line is kept as a note{'' if meant else ', and nothing more'}.")
        return meant

    def _each(
        self, listener: Listener, typed: str, told: tuple[ReadOut, ...], decision: Decision
    ) -> Talk[int]:
        """Take one after the other; how many were kept. What cannot be read is told at the end."""
        told = yield from as_they_stand(listener, self.book.knowledge, told)
        kept: list[Answered] = []
        refused: dict[str, list[tuple[str, str]]] = {}
        earlier = yield from self._read_earlier(listener, told, decision)
        not_taken: list[tuple[str, list[Spot]]] = []
        for one in told:
            spots = self.readable.spots(one, decision)
            why = self.readable.why_none(one, spots, decision)
            if why and not self.readable.was_readable(earlier, spots):
                named = self._named(one, *spots[0]) if spots else _as_said(one)
                refused.setdefault(why, []).append((named, _as_said(one)))
                not_taken.append((one.text, spots))
                continue
            spot = yield from self._which(one, spots)
            if spot is None:
                self._note(_as_said(one))
                continue
            test, at = spot
            event = Answered(test.id, None if at is None else (str(at),), text=one.text)
            meant = yield from reading_as_meant(listener, self.book, self.decider.reasoner, event)
            if meant is None:
                self._note(_as_said(one))
                kept = self._without(event, kept)
                continue
            self._echo(meant, at)
            if one.plate:
                take_plate(self.book, self.voice, test, at, one.plate)
            self.telling.keep_reading(meant)
            kept.append(meant)
            if conclude_visit(self.decider.reasoner, self.book.state).standing_stops:
                break
        for why, of in refused.items():
            self.voice.say(f"Not taken: {'; '.join(n for n, _ in of)}: {why}. {KEPT_AS_A_NOTE}")
            self._note(", ".join(said for _, said in of))
        is_brought = self.refused.bring(not_taken)
        if not is_brought and not all(spots for _, spots in not_taken):
            listener.hear(typed)
        return len(kept)

    def _without(self, refused: Answered, kept: list[Answered]) -> list[Answered]:
        """What was kept of a line, without that beside which a reading of it cannot be.

        Who takes none of two numbers that were told in one breath has both read again.
        """
        found = impossible_with(self.book.knowledge, self.book.state, refused)
        beside = [told for told in (found.told if found else ()) if told.answer is not None]
        gone = [
            each
            for each in kept
            if any(t.answer is not None and t.answer.test == each.test for t in beside)
        ]
        for each in gone:
            event, before = ReadingWithdrawn(each.test, each.at), self.book.state
            after_it = event.apply(self.book.knowledge, before)
            if not lifts_a_stop(self.decider.reasoner, before, after_it):
                self.book.add(event)
                self.voice.say(f"Nor is this kept: {self._words(each)}.")
        return [each for each in kept if each not in gone]

    def _words(self, event: Answered) -> str:
        test = self.book.knowledge.tests[event.test]
        return f"{test.name}: {as_read(self.book.knowledge, test, event.text or '')}".rstrip(".")

    def _read_earlier(
        self, listener: Listener, told: tuple[ReadOut, ...], decision: Decision
    ) -> Talk[WorkState | None]:
        """The work before the step just done, where what is told was read then.

        It is asked, where it cannot have been read now and can have been then: the numbers of a
        run are often typed a prompt late. None where it was not. Raises Leave, DangerCalled.
        """
        state = self.book.state
        last = state.answers[-1].test if state.answers else ""
        if decision.stop is not None or last not in CONFIRMED:
            return None
        spots = [(one, self.readable.spots(one, decision)) for one in told]
        late = [
            _as_said(one)
            for one, each in spots
            if self.readable.why_none(one, each, decision)
            and self.readable.was_readable(state.work_before, each)
        ]
        if not late:
            return None
        step = self.book.knowledge.tests[last].name
        question = YesNo(f'{", ".join(late)}: was that read before "{step}"?')
        try:
            meant = yield from yes_or_no(listener, question)
        except Back:
            meant = False
        return state.work_before if meant else None

    def _which(self, one: ReadOut, spots: list[Spot]) -> Talk[Spot | None]:
        """The test and the place that are meant, asked for where they may be several."""
        if len(spots) == 1:
            return spots[0]
        layout = self.book.state.unit.layout
        names = [with_place(test.name, layout.shown(test.per, at)) for test, at in spots]
        question = f"{one.words} {one.text}: which is it?"
        index = yield from pick(self.book, self.voice, question, names)
        return None if index is None else spots[index]

    def _named(self, one: ReadOut, test: Test, at: Place | None) -> str:
        where = self.book.state.unit.layout.shown(test.per, at)
        return f"{with_place(test.name, where)}: {as_read(self.book.knowledge, test, one.text)}"

    def _echo(self, event: Answered, at: Place | None) -> None:
        """What a reading was taken for; by its quantity, where the test is named after that."""
        knowledge = self.book.knowledge
        test = knowledge.tests[event.test]
        quantity = knowledge.quantities[test.reads[0].quantity]
        name = quantity.spoken if quantity.id == test.id else test.name
        where = with_place(name, self.book.state.unit.layout.shown(test.per, at))
        read = as_read(knowledge, test, event.text or "")
        self.voice.say(f"Taken: {where}: {read.removesuffix('.')}.")

    def _note(self, words: str) -> None:
        self.book.add(Noted(f"typed, and not taken as a reading: {words.strip()}"))

    def go_on_with(self, decision: Decision) -> None:
        """What was asked stays asked, unless it was answered or follows from what was read."""
        state = self.book.state
        if decision.aim is None or state.aim is not None:
            return
        found = conclude_visit(self.decider.reasoner, state)
        test, at = decision.aim
        if found.standing_stops or any((r.test, r.at) == (test, at) for r in found.readings):
            return
        self.book.add(Aimed(test, spoken(at), decision.reason))


def _as_said(one: ReadOut) -> str:
    """A reading in the words it was typed in, its place before them."""
    return " ".join(filter(None, (one.at, one.words, one.text)))
