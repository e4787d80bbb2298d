"""The turns of a visit: what comes next is asked, the answer kept, and what it means is told.

Every answer is kept before the next prompt is made.
"""

from __future__ import annotations

from functools import partial

from troubleshoot.dialogue.asking import LONG_SILENCE, Asking
from troubleshoot.dialogue.beforehand import Beforehand
from troubleshoot.dialogue.beside_work import doubt_at
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.breaks import tell_break
from troubleshoot.dialogue.closing import close, prove
from troubleshoot.dialogue.commands import Commands
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.intake import ask_the_call, wants_the_call
from troubleshoot.dialogue.on_round import OnRound
from troubleshoot.dialogue.prompts import AskTest, Caution, DoStep, Ended, Settled, cautions_of
from troubleshoot.dialogue.repairs_told import ask_repairs_told
from troubleshoot.dialogue.reporting_danger import report_danger
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.shelf import Shelf
from troubleshoot.dialogue.standing import met_by, met_meanwhile
from troubleshoot.dialogue.state_gone import ask_if_gone, gone_at, void, void_if_gone
from troubleshoot.dialogue.staying_off import StayingOff
from troubleshoot.dialogue.stopped import stopped
from troubleshoot.dialogue.taking_back import take_back
from troubleshoot.dialogue.talk import Back, DangerCalled, Leave, Talk, ToldGone
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.unit.places import spoken
from troubleshoot.safety.before_repair import caution_before_any
from troubleshoot.safety.cautions import POWER_UP, behind_panels, makes_live
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.steps import RESTART
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.left_off import found_standing
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.deciding.on_round import NO_WAY
from troubleshoot.visit.deciding.read_shut import has_come
from troubleshoot.visit.events import Aimed, Shown
from troubleshoot.visit.state import VisitState
from troubleshoot.visit.telling.account import causes_to_repair

MOST_LEFT = 3
"""Tests that an open ending offers by itself: `tests` lists more."""

AT_AN_ENDING = "repair, repaired, tests, done, because, why not CAUSE, or q."


class Turns:
    """The turns of one visit. `shelf`: where the unit's other visits are kept, if anywhere."""

    def __init__(
        self, book: VisitBook, voice: Voice, decider: Decider, shelf: Shelf | None = None
    ) -> None:
        self.knowledge = book.knowledge
        self.book = book
        self.voice = voice
        self.decider = decider
        self.shelf = shelf
        self.commands = Commands(book, voice, decider)
        voice.commands = self.commands.serve_beside
        self.was_open = self.was_live = False
        self.stop_stood = False
        self.staying_off = StayingOff(book, voice)
        self.beforehand = Beforehand(book, voice, decider)
        self.on_round = OnRound(book, voice, decider, shelf)
        self.asking = Asking(book, voice, decider, self.commands, self.on_round)
        voice.readings = self.asking.reading_out.take_beside

    def run(self) -> Talk[Ended]:
        """All turns, until the visit is closed or handed over. Raises Leave."""
        while True:
            try:
                ended = yield from self._listening()
            except ToldGone as told:
                yield from void(self.book, self.voice, told)
                continue
            except DangerCalled as called:
                void_if_gone(self.book, self.voice, str(called))
                self.voice.told_whole.clear()  # some may not have been read: it broke in on them
                yield from report_danger(self.book, self.voice, "", str(called))
                continue
            if ended is not None:
                return ended

    def _listening(self) -> Talk[Ended | None]:
        """One turn, at whose prompts it is heard that a state has gone."""
        self.voice.gone = partial(gone_at, self.book, lambda: self.stop_stood)
        self.voice.doubt = partial(doubt_at, self.book, self.voice, lambda: self.stop_stood)
        try:
            return (yield from self._turn())
        finally:
            self.voice.gone = self.voice.doubt = None

    def _turn(self) -> Talk[Ended | None]:
        """One prompt and its answer; what the visit has ended with, once it has."""
        self.book.watch_the_clock()
        tell_break(self.book, self.voice)
        state = self.book.state
        conclusions = conclude_visit(self.decider.reasoner, state)
        decision = self.decider.decide(state, conclusions)
        self._meet_others(stands=decision.stop is not None)
        if decision.stop is None:
            self.voice.tell_gone_with_it()
        if decision.stop is None and not conclusions.standing_stops and wants_the_call(state):
            yield from ask_the_call(self.book, self.voice)
            return None
        self.staying_off.tell(decision, conclusions)
        if decision.kind in ("step", "ask"):
            yield from self._put(decision, conclusions)
            return None
        if decision.kind == "stop":
            return (yield from stopped(self.book, self.voice, decision, conclusions, self.shelf))
        if decision.kind == "prove":
            cautions = self._cautions(decision, conclusions)
            yield from prove(self.book, self.voice, self.decider.reasoner, decision, cautions)
            self.asking.telling.hazards(conclude_visit(self.decider.reasoner, self.book.state))
            return None
        if decision.kind == "findings":
            yield from self.on_round.ask_what_now(decision, conclusions)
            return None
        if state.closing:
            self.on_round.tell_how_far(conclusions)
            close(self.book, self.voice, decision, conclusions)
            return Ended("closed")
        yield from self._settled(decision, conclusions)
        return None

    def _meet_others(self, stands: bool) -> None:
        """Once the last STOP here is lifted, that of another visit to the unit is met; one that is
        met in another window meanwhile, at once.

        Raises Leave where there is one.
        """
        lifted, self.stop_stood = self.stop_stood, stands
        if self.shelf is None or stands:
            return
        book = self.book
        if lifted:
            met = met_by(self.shelf, self.voice, book.visit_id, book.state.name) is not None
        else:
            met = met_meanwhile(self.shelf, self.voice, book)
        if met:
            raise Leave

    def _put(self, decision: Decision, conclusions: Conclusions) -> Talk[None]:
        """A step or a test, after what has to be known for it."""
        assert decision.test is not None
        known = _decided_on(self.book.state)
        try:
            if (yield from self.beforehand.settled(decision.test, decision.step)):
                return
            if (yield from self.beforehand.of_the_aim(decision)):
                return
            if (yield from self.beforehand.judged_ahead(decision, conclusions)):
                return
            self._on_record(decision, conclusions)
            asked = (decision.test, decision.at)
            if decision.kind == "ask" and (yield from self.beforehand.plates(*asked, is_on=False)):
                return
        except Back:
            take_back(self.book, self.voice, self.decider.reasoner)
            return
        self.book.watch_the_clock()
        if _decided_on(self.book.state) != known:
            return  # what was said or has expired meanwhile may bring something else first
        yield from self.asking.ask(self._prompt(decision, conclusions), conclusions)

    def _on_record(self, decision: Decision, conclusions: Conclusions) -> None:
        """What this is for, and the test itself where it is another: it is in hand from now on."""
        assert decision.test is not None
        aim, held = decision.aim, self.book.state.aim
        elsewhere = decision.stop is None and aim != held
        if aim is not None and elsewhere and self._aims_anew(conclusions):
            self.book.add(Aimed(aim[0], spoken(aim[1]), decision.reason))
        state, spot = self.book.state, (decision.test.id, decision.at)
        if decision.kind == "ask" and spot not in (state.aim, state.shown, state.fresh):
            self.book.add(Shown(decision.test.id, spoken(decision.at)))

    def _aims_anew(self, conclusions: Conclusions) -> bool:
        """Whether nothing is aimed at, or nothing leads on to it. Of what was chosen it is said."""
        state = self.book.state
        if state.aim is None:
            return True
        if self.decider.going_on(state, conclusions) is not None:
            return False
        if state.aim_chosen and not has_come(self.knowledge, state, conclusions):
            name = self.knowledge.tests[state.aim[0]].name
            self.voice.say(f"{name}: {NO_WAY}. do takes it up again.")
        return True

    def _prompt(self, decision: Decision, conclusions: Conclusions) -> AskTest | DoStep:
        assert decision.test is not None
        outcomes = conclusions.hypotheses.outcomes(decision.test.id)
        cautions = self._cautions(decision, conclusions)
        if decision.step is not None:
            step, told_before = decision.step, self.voice.told_whole
            told = step.id in told_before
            told_before.add(step.id)
            return DoStep(decision, step.place, outcomes, cautions, told)
        where = self.book.state.unit.layout.shown(decision.test.per, decision.at)
        progress = self.on_round.progress(decision, conclusions)
        return AskTest(decision, where, outcomes, cautions, progress)

    def _cautions(self, decision: Decision, conclusions: Conclusions) -> tuple[Caution, ...]:
        """Whole the first time, and again where their danger is new.

        That of what an open panel brings is when one has been closed, and once for each opening
        when power comes behind it. Before a call what was found and still stands is told again.
        """
        called = decision.step is not None and decision.step.id == RESTART
        standing = found_standing(conclusions) if called else ()
        is_open = self.book.state.work.panels == "off"
        test = decision.test
        live = test is not None and makes_live(self.book.state, test)
        was_shut = self.was_open and not is_open
        if was_shut or (live and not self.was_live):
            self.voice.told_whole -= behind_panels(self.knowledge)
        if was_shut:  # how it is opened again is told whole too, and how it is started is not
            self.voice.told_whole -= {*STEPS} - {*POWER_UP}
        self.was_live = is_open and (live or self.was_live)
        self.was_open = is_open
        self.voice.told_whole -= {hazard.id for hazard in standing}
        again = (hazard for hazard in standing if hazard not in decision.cautions)
        hazards = (*again, *decision.cautions)
        return cautions_of(hazards, self.voice.told_whole)

    def _before_repair(self, conclusions: Conclusions) -> str:
        state = self.book.state
        causes = [(each.fault, spoken(each.at)) for each in causes_to_repair(conclusions)]
        return caution_before_any(causes, state.work, state.at_work)

    def _ending(self, decision: Decision, conclusions: Conclusions) -> Settled:
        """How the search, or the round, has ended, and what may be done from there."""
        if decision.ending == "round":
            on = self.on_round
            return Settled(decision, conclusions, "", on.found(conclusions), on.kept(conclusions))
        before, in_search = self._before_repair(conclusions), self.book.state.round is not None
        is_open = decision.ending == "shortlist" and not conclusions.beyond
        left = self.commands.others_to_do(conclusions, MOST_LEFT) if is_open else ()
        return Settled(decision, conclusions, before, in_search=in_search, left=left)

    def _settled(self, decision: Decision, conclusions: Conclusions) -> Talk[None]:
        """An ending: repaired and gone on, another test, or close."""
        prompt = self._ending(decision, conclusions)
        listener = Listener(self.knowledge, self.voice)
        while True:
            reply = yield prompt
            if self.book.watch_the_clock():
                tell_break(self.book, self.voice)
                self.voice.say(LONG_SILENCE)
            if not isinstance(reply, str):
                self.book.add(reply)
                return
            if self.on_round.takes(reply, conclusions):
                return
            served = bool(reply) and (yield from self.commands.serve(reply, decision, conclusions))
            if not served and not (
                yield from ask_repairs_told(self.book, self.voice, reply, conclusions)
            ):
                yield from ask_if_gone(self.book, listener, prompt, reply)
                why = yield from self.asking.reading_out.take(
                    listener, reply, decision, AT_AN_ENDING
                )
                if why is None:
                    return
                listener.not_understood(reply, why)
            elif self.book.changed:
                return


def _decided_on(state: VisitState) -> tuple[object, ...]:
    """What a decision stands on: what hands have done, what the unit is, what was answered."""
    return state.work, state.at_work, state.answers
