"""What has to be known before a step or a test is shown: facts it hangs on, values it is judged by.

One question a turn, since an answer may change what comes next.
"""

from __future__ import annotations

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.opened_for import opened_for
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Talk
from troubleshoot.dialogue.unit_facts import ask_fact, ask_plate
from troubleshoot.knowledge.model import Test
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.unit.places import Place, spoken
from troubleshoot.safety.facts_first import facts_to_settle, where_its_ports_are
from troubleshoot.safety.steps import Step
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.nameplate import facts_of_limits, facts_of_place, plate_to_ask
from troubleshoot.visit.deciding.next import Decider

NOT_KNOWN_COUNTS_AS_WORSE = "Before the next step. Enter if nobody knows: then the worse counts."
BEFORE_THE_TEST = "Before the next test. Enter if nobody knows."


class Beforehand:
    """Asks for what is not known yet. Each raises Back, Leave, DangerCalled."""

    def __init__(self, book: VisitBook, voice: Voice, decider: Decider) -> None:
        self.knowledge = book.knowledge
        self.book = book
        self.voice = voice
        self.decider = decider

    def settled(self, test: Test, step: Step | None) -> Talk[bool]:
        """Ask a fact on which a step, test or its cautions hang; True where one was asked."""
        facts = facts_to_settle(self.knowledge, self.book.state, test, step)
        if facts:
            yield from ask_fact(self.book, self.voice, facts[0], NOT_KNOWN_COUNTS_AS_WORSE)
        return bool(facts)

    def of_the_aim(self, decision: Decision) -> Talk[bool]:
        """Ask whether, and where, the unit has what is aimed at, and what judges it; True where
        one was asked.
        """
        state = self.book.state
        aimed = [] if decision.aim is None else [self.knowledge.tests[decision.aim[0]]]
        if decision.kind == "ask" and decision.test is not None:
            aimed.append(decision.test)
        for test in aimed:
            facts = facts_of_place(self.knowledge, state.unit, test, state.not_known)
            facts += where_its_ports_are(self.knowledge, state, test)
            if decision.kind == "ask":
                facts += facts_of_limits(self.knowledge, state.unit, test, state.not_known)
            if facts:
                yield from ask_fact(self.book, self.voice, facts[0], BEFORE_THE_TEST)
                return True
        return False

    def judged_ahead(self, decision: Decision, conclusions: Conclusions) -> Talk[bool]:
        """Before a panel is opened live ask what judges the reading; True where a turn went by."""
        for test, at in opened_for(self.decider, self.book.state, conclusions, decision):
            told = yield from self.settled(test, None)
            if told or (yield from self.plates(test, at, is_on=True)):
                return True
        return False

    def plates(self, test: Test, at: Place | None, is_on: bool) -> Talk[bool]:
        """Ask what the nameplate has to say; True where something else comes first by then.

        So long went by that states expired, or a command was given. `is_on`: the panel is, so that
        what stands behind it cannot be read.
        """
        state = self.book.state
        for value in plate_to_ask(self.knowledge, state.unit, test, at, state.not_known):
            if is_on and value.inside:
                continue
            where = spoken(at) if value.per else None
            answered = yield from ask_plate(self.book, self.voice, value, where)
            if not answered or self.book.state.work != state.work:
                return True
        return False
