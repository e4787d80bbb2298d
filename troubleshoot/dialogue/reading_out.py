"""Readings typed by their short words at a prompt that asks for something else, one or several.

Each is echoed with what it was taken for and where, judged, and kept as an answer of its test; what
was asked stays open. What the work as it stands does not let anybody read is no reading: it is told
and kept as a note.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.doubting import reading_as_meant
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.picking import pick
from troubleshoot.dialogue.plate_read_out import take_plate
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.taking_up import protects
from troubleshoot.dialogue.talk import Back, DangerCalled, Leave, Talk
from troubleshoot.dialogue.telling import Telling
from troubleshoot.dialogue.yes_no import YesNo, yes_or_no
from troubleshoot.knowledge.model import Test
from troubleshoot.quantities.units import unit as unit_of
from troubleshoot.reasoning.unit.places import (
    Place,
    PlaceNotUnderstood,
    like,
    parse_place,
    spoken,
    with_place,
)
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.guards import unmet
from troubleshoot.safety.needs import BURNER_AREAS, HEAT_IS_ON, needs_of
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Aimed, Answered, Noted
from troubleshoot.visit.events.called import unit_as_called
from troubleshoot.visit.hearing.read_out import Line, ReadOut, read_out
from troubleshoot.visit.telling.as_read import as_read

Spot = tuple[Test, Place | None]
KEPT_AS_A_NOTE: Final = "Kept as a note."
ELECTRICAL: Final = frozenset({"voltage", "current", "resistance", "capacitance"})
"""Kinds of units that the tester shows, which is proved before it is believed."""
AT_A_STEP: Final = "a step is asked for"
BY_ITSELF: Final = "it shows whether a danger is gone, and is read when it is asked for"
A_STOP_STANDS: Final = "a STOP stands"
NO_SUCH_PLACE: Final = "this unit has no such place for it"


class ReadingOut:
    """Takes readings by their short words in one conversation."""

    def __init__(self, book: VisitBook, voice: Voice, decider: Decider, telling: Telling) -> None:
        self.book = book
        self.voice = voice
        self.decider = decider
        self.telling = telling

    def take(
        self, listener: Listener, typed: str, decision: Decision, why_not: str
    ) -> Talk[str | None]:
        """Take the readings of a line; None where that was done, else why it is no answer.

        `why_not`: why it is none to what was asked. Raises Leave, DangerCalled.
        """
        if listener.speaks_of_danger(typed):
            return why_not
        line = read_out(self.book.knowledge, self.book.state.unit, typed, self._asked(decision))
        if not line.readings or (line.unread and decision.step is not None):
            return line.why or why_not
        try:
            if line.unread and not (yield from self._is_understood(listener, line, typed)):
                return None
            kept = yield from self._each(listener, line.readings, decision)
        except (Leave, DangerCalled):
            self._note(typed)
            raise
        if kept:
            self.telling.what_follows()
            self._go_on_with(decision)
        return None

    def _asked(self, decision: Decision) -> Test | None:
        """The test whose number needs no word: what protects somebody is typed as it is read."""
        test = decision.test
        if test is None or decision.step is not None or protects(self.book.knowledge, test):
            return None
        return test

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

    def _each(self, listener: Listener, told: tuple[ReadOut, ...], decision: Decision) -> Talk[int]:
        """Take one after the other; how many were kept. What cannot be read is told at the end."""
        kept = 0
        refused: dict[str, list[tuple[str, str]]] = {}
        for one in told:
            spots = self._spots(one, decision)
            if why := self._why_none(spots, decision):
                named = self._named(one, *spots[0]) if spots else _as_said(one)
                refused.setdefault(why, []).append((named, _as_said(one)))
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
                continue
            self._echo(meant, at)
            if one.plate:
                take_plate(self.book, self.voice, test, at, one.plate)
            self.telling.keep_reading(meant)
            kept += 1
            if conclude_visit(self.decider.reasoner, self.book.state).standing_stops:
                break
        for why, of in refused.items():
            self.voice.say(f"Not taken: {'; '.join(n for n, _ in of)}: {why}. {KEPT_AS_A_NOTE}")
            self._note(", ".join(said for _, said in of))
        return kept

    def _why_none(self, spots: list[Spot], decision: Decision) -> str:
        """Why nothing of a reading can be taken as the work stands; empty where it can."""
        return self._why_not(decision, *spots[0]) if spots else NO_SUCH_PLACE

    def _which(self, one: ReadOut, spots: list[Spot]) -> Talk[Spot | None]:
        """The test and the place that are meant, asked for where they may be several."""
        if len(spots) == 1:
            return spots[0]
        layout = self.book.state.unit.layout
        names = [with_place(test.name, layout.shown(test.per, at)) for test, at in spots]
        question = f"{one.words} {one.text}: which is it?"
        index = yield from pick(self.book, self.voice, question, names)
        return None if index is None else spots[index]

    def _spots(self, one: ReadOut, decision: Decision) -> list[Spot]:
        """Every test and place that a reading may be of; those that can be read now, if any can.

        What is asked for is meant where it may be; where the words name no place, that of the
        question is.
        """
        spots = [
            (test, at)
            for test, kind in zip(one.tests, one.kinds, strict=True)
            if not self._is_of_heat(test)
            for at in self._places(one, test, kind, decision)
        ]
        asked = [spot for spot in spots if spot == (decision.test, decision.at)]
        now = [spot for spot in spots if not self._why_not(decision, *spot)]
        return asked or now or spots

    def _places(
        self, one: ReadOut, test: Test, kind: str | None, decision: Decision
    ) -> tuple[Place | None, ...]:
        layout = self.book.state.unit.layout
        places = tuple(p for p in layout.places(test.per) if kind is None or (p and p.kind == kind))
        if one.at is not None:
            try:
                named = parse_place(one.at, test.per, layout)
            except PlaceNotUnderstood:
                return ()
            return tuple(place for place in places if place in named)
        here = like(decision.at, places) if decision.test is not None else None
        return places if here is None else (here,)

    def _is_of_heat(self, test: Test) -> bool:
        """Whether it is read with the heat on, which is not called for."""
        heats = test.area in BURNER_AREAS or test.id in HEAT_IS_ON
        called = unit_as_called(self.book.knowledge, self.book.state)
        return called.called_to_cool and heats and test.work_state.startswith("running")

    def _why_not(self, decision: Decision, test: Test, at: Place | None) -> str:
        """Why nothing of that can have been read as the work stands; empty where it can."""
        if decision.stop is not None:
            return A_STOP_STANDS
        if decision.step is not None:
            return AT_A_STEP
        state = self.book.state
        if protects(self.book.knowledge, test) and (test, at) != (decision.test, decision.at):
            return BY_ITSELF
        if first := self._unmet(test, at):
            return f"first {', '.join(first)}"
        beyond = self.decider.beyond(state, test.id, spoken(at))
        if beyond is not None:
            return f"beyond you: {beyond}"
        conclusions = conclude_visit(self.decider.reasoner, state)
        return self.decider.forbidden(conclusions, test.id, spoken(at)) or ""

    def _unmet(self, test: Test, at: Place | None) -> tuple[str, ...]:
        """What the work lacks for a reading; a gauge reads whether or not the tester is proved."""
        state = self.book.state
        if test.id in CONFIRMED:
            return ()
        needs = needs_of(test, spoken(at), state.at_work)
        electrical = unit_of(self.book.knowledge.quantities[test.reads[0].quantity].unit).kind
        return unmet(state.work, needs if electrical in ELECTRICAL else replace(needs, meter=False))

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

    def _go_on_with(self, decision: Decision) -> None:
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
