"""The conversation: ask what comes next, take the answer, journal it, say what it means.

Every answer is in the journal before the next question is shown. End of input and Ctrl-C keep the
visit; starting again goes on from there.
"""

from __future__ import annotations

from troubleshoot.cli import clock
from troubleshoot.cli.answering import NotAnAnswer, answer_event_from, step_event_from
from troubleshoot.cli.closing import closed, repaired
from troubleshoot.cli.commands import Commands
from troubleshoot.cli.failures import INTERRUPTED, KEPT
from troubleshoot.cli.known_values import ask_fact, ask_plate
from troubleshoot.cli.listening import Listener, report_danger
from troubleshoot.cli.screens import (
    show_causes,
    show_cautions,
    show_choices,
    show_ending,
    show_standing,
    show_step_words,
    show_task,
    show_verdict,
)
from troubleshoot.cli.standing import met_by
from troubleshoot.cli.stopped import stopped
from troubleshoot.cli.terminal import (
    VISIT_IS_KEPT,
    DangerCalled,
    EndOfInput,
    Leave,
    Terminal,
)
from troubleshoot.cli.visit_book import VisitBook
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.conclude import Conclusions
from troubleshoot.reasoning.places import spoken
from troubleshoot.visit.decide import Decider
from troubleshoot.visit.decision import Decision
from troubleshoot.visit.guards import allowed
from troubleshoot.visit.nameplate import plate_to_ask, safety_facts_to_ask
from troubleshoot.visit.repeating import agreement
from troubleshoot.visit.standing import called_up
from troubleshoot.visit.steps import Step
from troubleshoot.visit.stops import conclude_visit
from troubleshoot.visit.work_state import open_items

LONG_SILENCE = (
    "A long silence. What others could have changed meanwhile is asked again; what you typed is "
    "kept as a note."
)
NOT_KNOWN_COUNTS_AS_WORSE = "Before the next step. Enter if nobody knows: then the worse counts."


class Conversation:
    """One visit, held at a terminal."""

    def __init__(self, knowledge: Knowledge, book: VisitBook, terminal: Terminal) -> None:
        self.knowledge = knowledge
        self.book = book
        self.terminal = terminal
        self.decider = Decider(knowledge)
        self.commands = Commands(knowledge, book, terminal, self.decider)
        self.shown_cautions: set[str] = set()
        self.was_open = False
        self.told_hazards: set[str] = set()
        self.stop_stood = False

    def run(self) -> int:
        """Hold the conversation; returns the exit code."""
        try:
            while self._turn_or_danger():
                pass
        except (EndOfInput, Leave):
            self._say_kept()
            return KEPT
        except KeyboardInterrupt:
            self.terminal.say()
            self._say_kept()
            return INTERRUPTED
        return 0

    def _say_kept(self) -> None:
        self.terminal.say(VISIT_IS_KEPT)
        for item in open_items(self.book.state.work):
            self.terminal.say(f"Still open on the unit: {item}", 2)

    def _turn_or_danger(self) -> bool:
        """A turn; a danger that is reported in it stops the visit before anything else is asked."""
        try:
            return self._turn()
        except DangerCalled as called:
            report_danger(self.book, self.terminal, "", str(called))
            return True

    def _turn(self) -> bool:
        """One question and its answer; False when the visit is over."""
        self.book.watch_the_clock()
        state = self.book.state
        conclusions = conclude_visit(self.decider.reasoner, state)
        decision = self.decider.decide(state, conclusions)
        self._meet_others(stands=decision.stop is not None)
        if decision.kind in ("step", "ask"):
            self._put_question(decision, conclusions)
            return True
        if decision.kind == "stop":
            return stopped(self.knowledge, self.book, self.terminal, decision, conclusions)
        if state.closing:
            return closed(self.book, self.terminal, decision)
        return self._settled(decision, conclusions)

    def _meet_others(self, stands: bool) -> None:
        """Once the last STOP here is lifted, that of another visit to the unit is met.

        Raises Leave where there is one.
        """
        if self.stop_stood and not stands:
            book = self.book
            if met_by(self.knowledge, self.terminal, book.path, book.state.name) is not None:
                raise Leave
        self.stop_stood = stands

    def _put_question(self, decision: Decision, conclusions: Conclusions) -> None:
        assert decision.test is not None
        if decision.step is not None and self._settle_first(decision.step):
            return
        if decision.aim is not None and decision.stop is None and self.book.state.aim is None:
            test, at = decision.aim
            reason = decision.reason
            self.book.add({"event": "aim", "test": test, "at": spoken(at), "reason": reason})
        if decision.kind == "ask" and self._ask_plates(decision):
            return
        terminal = self.terminal
        terminal.say()
        self._forget_cautions()
        show_cautions(terminal, decision.cautions, self.shown_cautions)
        where = self._where(decision)
        show_task(terminal, decision, where)
        if decision.reason and decision.kind == "ask":
            terminal.say(f"Why now: {decision.reason}", 2)
        self._ask(decision, conclusions)

    def _ask_plates(self, decision: Decision) -> bool:
        """Ask what the nameplate has to say; True where so long went by that states expired."""
        work = self.book.state.work
        for plate in self._plates(decision):
            ask_plate(self.terminal, self.book, *plate)
        return self.book.state.work != work

    def _settle_first(self, step: Step) -> bool:
        """Ask the facts on which a safety step hangs; True where that changed what comes next."""
        state = self.book.state
        facts = safety_facts_to_ask(self.knowledge, state.unit, step, state.not_known)
        if facts:
            ask_fact(self.terminal, self.book, facts[0], NOT_KNOWN_COUNTS_AS_WORSE)
        return bool(facts)

    def _forget_cautions(self) -> None:
        """Once the panels have been closed, cautions are told afresh when they are opened again."""
        is_open = self.book.state.work.panels == "off"
        if self.was_open and not is_open:
            self.shown_cautions.clear()
        self.was_open = is_open

    def _where(self, decision: Decision) -> str | None:
        assert decision.test is not None
        if decision.step is not None:
            return decision.step.place
        return self.book.state.unit.layout.shown(decision.test.per, decision.at)

    def _plates(self, decision: Decision) -> list[tuple[str, str, str | None]]:
        state = self.book.state
        assert decision.test is not None
        wanted = plate_to_ask(
            self.knowledge, state.unit, decision.test, decision.at, state.not_known
        )
        at = spoken(decision.at)
        return [(p.id, f"{p.meaning} ({p.unit})", at if p.per else None) for p in wanted]

    def _ask(self, decision: Decision, conclusions: Conclusions) -> None:
        """Ask until an answer is understood; commands are served on the way."""
        test = decision.test
        assert test is not None
        outcomes = conclusions.hypotheses.outcomes(test.id)
        if decision.kind == "ask":
            show_choices(self.terminal, self.knowledge, test, outcomes)
        else:
            show_step_words(self.terminal, test, outcomes)
        listener = Listener(self.knowledge, self.terminal)
        while True:
            typed = self.terminal.ask(">")
            too_late = self._too_late(decision, typed)
            if not too_late and self.commands.serve(typed, decision, conclusions):
                if self.book.changed:
                    return
                continue
            if too_late:
                return
            try:
                self._take(typed, decision, outcomes, conclusions)
                return
            except NotAnAnswer as error:
                listener.not_understood(typed, str(error))

    def _too_late(self, decision: Decision, typed: str) -> bool:
        """Whether so long a silence came before an answer that it is asked for again.

        What was typed is kept as a note. What needs nothing of the work state is taken as it is.
        """
        test = decision.test
        assert test is not None
        if not self.book.watch_the_clock(test.minutes + test.wait_minutes):
            return False
        state = self.book.state
        if decision.step is None and not allowed(
            state.work, test, spoken(decision.at), state.at_work
        ):
            return False
        self.terminal.say(LONG_SILENCE)
        Listener(self.knowledge, self.terminal).hear_cry(typed)
        if typed:
            self.book.add({"event": "note", "text": f"typed after a long silence: {typed}"})
        return True

    def _take(
        self,
        typed: str,
        decision: Decision,
        outcomes: tuple[str, ...],
        conclusions: Conclusions,
    ) -> None:
        test = decision.test
        assert test is not None
        if decision.step is not None:
            state = self.book.state
            self.book.add(
                step_event_from(self.knowledge, state, test, decision.step, typed, clock.now())
            )
            self._tell_hazards(conclude_visit(self.decider.reasoner, self.book.state))
            return
        event = answer_event_from(self.knowledge, test, decision.at, typed, outcomes)
        before = [a for a in self.book.state.answers if a.test == test.id and a.text]
        self.book.add(event)
        if before and before[-1].places == self.book.state.answers[-1].places:
            self._compare(test, before[-1].text or "", typed)
        after = conclude_visit(self.decider.reasoner, self.book.state)
        for reading in after.readings:
            if reading.test == test.id and reading.at == decision.at:
                show_verdict(self.terminal, reading, self.knowledge)
                if not reading.valid:
                    self.terminal.say(f"It does not count: {reading.why_invalid}", 1)
        self._tell_hazards(after)
        show_causes(self.terminal, after)

    def _tell_hazards(self, found: Conclusions) -> None:
        """What a finding or a likely fault has called up, once, as soon as it is known.

        STOPs that end or halt the visit are told where they do so.
        """
        halting = found.standing_stops
        for fired in found.hazards:
            if fired.hazard.id not in self.told_hazards and fired not in halting:
                self.told_hazards.add(fired.hazard.id)
                show_standing(self.terminal, called_up(found, fired))

    def _compare(self, test: Test, first: str, second: str) -> None:
        sentence = agreement(self.knowledge, test, first, second)
        if sentence is not None:
            self.terminal.say(sentence, 1)

    def _settled(self, decision: Decision, conclusions: Conclusions) -> bool:
        """An ending: repaired and gone on, another test, or close."""
        show_ending(self.terminal, conclusions, decision)
        self.terminal.say()
        self.terminal.say(
            "Type repaired when it has been put right and proved, tests for other tests, "
            "done to put the unit back and close, or q to keep the visit."
        )
        listener = Listener(self.knowledge, self.terminal)
        while True:
            typed = self.terminal.ask(">")
            if self.book.watch_the_clock():
                self.terminal.say(LONG_SILENCE)
            if typed == "repaired" and conclusions.named is not None:
                repaired(self.book, self.terminal, conclusions.named.fault)
                return True
            if not typed or not self.commands.serve(typed, decision, conclusions):
                reply = "repaired, tests, done, because, why not CAUSE, or q."
                listener.not_understood(typed, reply)
            elif self.book.changed:
                return True
