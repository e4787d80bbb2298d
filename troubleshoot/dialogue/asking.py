"""One step or test is asked until an answer is understood, and the answer is kept."""

from __future__ import annotations

from troubleshoot.dialogue.all_places import at_all_places
from troubleshoot.dialogue.answering import answers, said_by
from troubleshoot.dialogue.beside_work import told_at_work
from troubleshoot.dialogue.board_code import CODE_SHOWN, keep_code, tells_a_code
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.breaks import tell_break
from troubleshoot.dialogue.by_digit import is_meant
from troubleshoot.dialogue.by_word import NearlyAnAnswer, NotAnAnswer
from troubleshoot.dialogue.commands import Commands
from troubleshoot.dialogue.confirming import wanted, whether_meant
from troubleshoot.dialogue.confirming_words import confirms_some_step
from troubleshoot.dialogue.doubting import as_meant
from troubleshoot.dialogue.hearing import Listener, hear_among
from troubleshoot.dialogue.in_several import InSeveral
from troubleshoot.dialogue.left_in import BRINGS_ON, ask_if_left_in, out_first
from troubleshoot.dialogue.may_be_meant import taken_up_or_asked
from troubleshoot.dialogue.new_person import ask_if_new
from troubleshoot.dialogue.not_known import is_not_known
from troubleshoot.dialogue.on_round import OnRound
from troubleshoot.dialogue.other_words import OtherWords
from troubleshoot.dialogue.plain_talk import is_not_fitted
from troubleshoot.dialogue.prompts import AskTest, DoStep
from troubleshoot.dialogue.reading_out import ReadingOut
from troubleshoot.dialogue.repairs_told import ask_repairs_told
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.state_gone import ask_if_gone
from troubleshoot.dialogue.taking_up import not_taken, protects
from troubleshoot.dialogue.talk import Reply, Talk
from troubleshoot.dialogue.telling import Telling
from troubleshoot.dialogue.unit_told import takes_plate_line
from troubleshoot.dialogue.which_lock import AT_ITS_STEP, tells_another_lock
from troubleshoot.knowledge.model import Test
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.unit.places import spoken
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.guards import allowed
from troubleshoot.safety.hearing.good_answers import tells_good_news
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.deciding.no_lock import has_no_lock
from troubleshoot.visit.events import Answered, Event, Noted

LONG_SILENCE = (
    "A long silence. What others could have changed meanwhile is asked again; what you typed is "
    "kept as a note."
)
SKIPPED_WITH_S = (
    "Not known: s skips it, and other tests are asked in its stead. ? tells how it is done."
)
OF_ANOTHER_STEP = "Kept as a note: that is of another step."
NOT_FITTED = "Taken as not fitted: skipped, and kept as a note."


class Asking:
    """Puts a step or a test. `telling` and `reading_out` serve at other prompts as well."""

    def __init__(
        self,
        book: VisitBook,
        voice: Voice,
        decider: Decider,
        commands: Commands,
        on_round: OnRound,
    ) -> None:
        self.knowledge = book.knowledge
        self.book = book
        self.voice = voice
        self.decider = decider
        self.commands = commands
        self.on_round = on_round
        self.telling = Telling(book, voice, decider.reasoner)
        self.reading_out = ReadingOut(book, voice, decider, self.telling)
        self.other_words = OtherWords(book, voice, self.reading_out)
        self.in_several = InSeveral(book, voice, self.reading_out, self.other_words)

    def ask(self, prompt: AskTest | DoStep, conclusions: Conclusions) -> Talk[None]:
        """Ask until an answer is understood; commands are served on the way."""
        decision = prompt.decision
        test = decision.test
        assert test is not None
        offered = answers(test, prompt.outcomes)
        own = said_by(test, prompt.outcomes)
        listener = Listener(self.knowledge, self.voice, offered=offered, own=own, asked=test)
        if decision.step is not None and decision.step.id in BRINGS_ON:
            yield from out_first(self.book, listener)
        work = self.book.state.work
        while self.book.state.work == work:  # what has expired may bring something else first
            reply = yield prompt
            if self._too_late(decision, reply):
                return
            if (yield from self._settled(listener, prompt, reply, conclusions)):
                return
            if self._too_late(decision, ""):  # something may have been asked meanwhile
                return

    def _settled(
        self, listener: Listener, prompt: AskTest | DoStep, reply: Reply, conclusions: Conclusions
    ) -> Talk[bool]:
        """Whether a reply leaves nothing to ask here: it was kept, or brings something else."""
        decision = prompt.decision
        test = decision.test
        assert test is not None
        if isinstance(reply, str):
            if self.on_round.goes_on(reply, conclusions):
                return True
            if (yield from self.commands.serve(reply, decision, conclusions)):
                return self.book.changed
            is_answer = reply in answers(test, prompt.outcomes)
            if decision.step is None and is_not_known(reply) and not is_answer:
                self.voice.say(SKIPPED_WITH_S)
                return False
        try:
            event = yield from taken_up_or_asked(self.book, listener, prompt, reply)
        except NearlyAnAnswer as error:
            self.voice.say(str(error))
            listener.ask_about(str(reply))
            return False
        except NotAnAnswer as error:
            assert isinstance(reply, str)
            return (yield from self._takes_otherwise(listener, prompt, reply, error, conclusions))
        return (yield from self._keeps(listener, prompt, reply, event))

    def _keeps(
        self, listener: Listener, prompt: AskTest | DoStep, reply: Reply, event: Event
    ) -> Talk[bool]:
        """Whether what a reply means was settled: it is so, it came too late, or it is doubted."""
        decision = prompt.decision
        test = decision.test
        assert test is not None
        meant: Event | None = event
        if isinstance(reply, str):
            if not (yield from is_meant(self.book, listener, test, reply, event)):
                return False
            event = at_all_places(self.voice, self.book.state.unit, test, reply, event)
            meant = yield from as_meant(listener, self.book, self.decider.reasoner, event)
        if meant is not None and not self._too_late(decision, reply):
            self.telling.keep(meant, prompt)
            if isinstance(reply, str) and _shows_a_code(meant, test, reply):
                yield from keep_code(self.book, listener, test, reply)
        return True

    def _takes_otherwise(
        self,
        listener: Listener,
        prompt: AskTest | DoStep,
        typed: str,
        error: NotAnAnswer,
        conclusions: Conclusions,
    ) -> Talk[bool]:
        """Whether what answers nothing asked here told something else, that was kept as such.

        A state that has gone, a plate, a repair, what is not fitted, readings of other tests.
        """
        decision = prompt.decision
        test = decision.test
        assert test is not None
        if decision.step is not None and (yield from ask_if_left_in(self.book, listener, typed)):
            return True
        if (yield from ask_if_new(self.book, listener, typed)):
            return True
        stands = yield from ask_if_gone(self.book, listener, prompt, typed)
        if not stands and told_at_work(self.book, decision, typed):
            self._let_be(listener, decision, typed, str(error), tells=True)
            return False
        if decision.step is None and tells_another_lock(typed) and has_no_lock(self.book.state):
            self._let_be(listener, decision, typed, AT_ITS_STEP, tells=False)
            return False
        if takes_plate_line(self.book, self.voice, self.decider.reasoner, typed):
            return True
        told = not listener.doubted and ask_repairs_told(self.book, self.voice, typed, conclusions)
        if told and (yield from told):
            return True
        if decision.step is None and self._is_not_fitted(listener, test, typed):
            yield from self.commands.serve("s", decision, conclusions)
            return True
        if (yield from self.in_several.take(listener, prompt, typed)):
            return True
        why = yield from self.reading_out.take(listener, typed, decision, str(error))
        if why is not None:
            is_look = decision.step is None and not test.reads
            is_no_reading = why == str(error) or is_look
            if is_no_reading and (
                yield from self.other_words.take(listener, prompt, typed, stands=stands)
            ):
                return True
            tells = decision.step is not None and is_no_reading and not stands
            self._let_be(listener, decision, typed, why, tells=tells)
        return why is None

    def _let_be(
        self, listener: Listener, decision: Decision, typed: str, why: str, *, tells: bool
    ) -> None:
        """Say why it is no answer. `tells`: it is asked whether there is a danger, and noted.

        Raises DangerCalled.
        """
        test = decision.test
        assert test is not None
        if tells and (tells_good_news(typed, listener.own) or confirms_some_step(typed)):
            self._say_what_is_wanted(listener, test, typed)
            return
        listener.asks_of_all = tells
        not_taken(self.book, listener, test, typed, why)
        if tells and self.voice.hinted is not None:
            at = "a test" if decision.step is None else "a safety step"
            self.book.add(Noted(f"told at {at}: {typed}"))

    def _say_what_is_wanted(self, listener: Listener, test: Test, typed: str) -> None:
        """Good news at a step is kept as a note, and confirms nothing. Raises DangerCalled."""
        listener.hear(typed)
        self.book.add(Noted(f"told at a safety step: {typed}"))
        confirmed = CONFIRMED[test.id]
        of_another = f"{OF_ANOTHER_STEP} Type {wanted(test, confirmed)}."
        elsewhere = confirms_some_step(typed)
        self.voice.say(of_another if elsewhere else whether_meant(test.spoken(confirmed)))

    def _is_not_fitted(self, listener: Listener, test: Test, typed: str) -> bool:
        """Whether the unit is said to have no such thing; that is kept as a note.

        What shows that a danger is gone is not left so.
        """
        if not is_not_fitted(test, typed) or protects(self.knowledge, test):
            return False
        if listener.speaks_of_danger(typed):
            return False
        self.book.add(Noted(f"{test.name}: {typed}"))
        self.voice.say(NOT_FITTED)
        return True

    def _too_late(self, decision: Decision, reply: Reply) -> bool:
        """Whether so long a silence came before an answer that it is asked for again.

        What was typed is kept as a note. What needs nothing of the work state is taken as it is.
        """
        test = decision.test
        assert test is not None
        is_long = self.book.watch_the_clock(test.minutes + test.wait_minutes)
        tell_break(self.book, self.voice)
        if not is_long:
            return False
        state = self.book.state
        if decision.step is None and not allowed(
            state.work, test, spoken(decision.at), state.at_work
        ):
            return False
        self.voice.say(LONG_SILENCE)
        if isinstance(reply, str):
            hear_among(self.knowledge, reply)
        if reply:
            self.book.add(Noted(f"typed after a long silence: {reply}"))
        return True


def _shows_a_code(event: Event, test: Test, reply: str) -> bool:
    """Whether a code is to be kept: one that says not what it stands for, or that was typed."""
    if not isinstance(event, Answered):
        return False
    return CODE_SHOWN in event.outcomes or tells_a_code(test, reply)
