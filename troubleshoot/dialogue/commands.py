"""What a person may type at any prompt besides an answer: explanations, undo, notes, choices."""

from __future__ import annotations

from itertools import islice

from troubleshoot.dialogue.asides import SKIPS, keep_note, keep_weighing, weighed
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.command_words import forbids
from troubleshoot.dialogue.intake import begin_anew, may_begin_anew
from troubleshoot.dialogue.looking_again import may_look_again
from troubleshoot.dialogue.meaning import WHICH, fault_meant, fault_repaired, spot_meant
from troubleshoot.dialogue.picking import pick
from troubleshoot.dialogue.repairing import about_to_repair, repaired
from troubleshoot.dialogue.said import Causes, HowTo, OtherTest, Voice, WhatToType
from troubleshoot.dialogue.taking_back import take_back
from troubleshoot.dialogue.talk import BACK, Talk
from troubleshoot.dialogue.unit_told import list_told, put_right
from troubleshoot.outside.numbers import choice
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.evidence.ranking import Cause
from troubleshoot.reasoning.unit.places import spoken
from troubleshoot.safety.declared import CONFIRMED, ENTER_CONFIRMS
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Aimed, Closing, Skipped
from troubleshoot.visit.telling.account import listed_causes
from troubleshoot.visit.telling.explain import because, what_if, why_not

OTHER_TESTS = 8
NO_OTHER_TEST = "A STOP stands: no other test before the finding that may lift it."
ON_THE_WAY_BACK = "It is on the way back: so the unit is left as it was found, or off and locked."
NAME_IT = "No cause is listed. Say what was repaired: repaired, and words of the cause's name."
GONE = "By what was told since, the unit has no such part. tests lists what could be done."
NO_QUESTION = "No question is open here. tests lists what else could be done."


class Commands:
    """Serves commands in one conversation. `offered` are the tests last listed, by number."""

    def __init__(self, book: VisitBook, voice: Voice, decider: Decider) -> None:
        self.knowledge = book.knowledge
        self.book = book
        self.voice = voice
        self.decider = decider
        self.offered: tuple[tuple[str, str | None], ...] = ()
        self.done_said = False

    def serve(self, typed: str, decision: Decision, conclusions: Conclusions) -> Talk[bool]:
        """Serve a command; False where the words are an answer. Raises Leave, DangerCalled."""
        word, _, rest = typed.partition(" ")
        said, word = typed.lower(), word.lower()
        self.book.changed = False
        self.done_said = self.done_said and said == "done"
        if word == "do" and forbids(rest):
            return False
        if said in ("?", "how"):
            self._how(decision)
        elif said in ("w", "why"):
            self._why(decision)
        elif said in ("h", "help"):
            self.voice.tell(WhatToType())
        elif said == "causes":
            self.voice.tell(Causes(conclusions))
        elif word == "because":
            yield from self._because(rest, conclusions)
        elif said.startswith("why not "):
            yield from self._why_not(typed[8:], conclusions)
        elif said.startswith("what if "):
            self._what_if(typed[8:], decision, conclusions)
        elif decision.stop is not None and (said == "tests" or word == "do"):
            self.voice.say(NO_OTHER_TEST)
        elif said == "tests":
            self._other_tests(conclusions)
        else:
            return (yield from self._changing(said, word, rest, decision, conclusions))
        return True

    def serve_beside(self, typed: str) -> Talk[bool]:
        """Serve a command where no test, step or ending is asked about: at a fact, at a proof."""
        conclusions = conclude_visit(self.decider.reasoner, self.book.state)
        stop = self.decider.decide(self.book.state, conclusions).stop
        return (yield from self.serve(typed, Decision("ending", stop=stop), conclusions))

    def _changing(
        self, said: str, word: str, rest: str, decision: Decision, conclusions: Conclusions
    ) -> Talk[bool]:
        """Commands that change the visit. `said`: all that was typed, in small letters."""
        if said in BACK and may_begin_anew(self.book):
            yield from begin_anew(self.book, self.voice)
        elif said in BACK:
            take_back(self.book, self.voice, self.decider.reasoner)
        elif said in SKIPS:
            self._skip(decision)
        elif said == "done":
            return self._done(decision)
        elif word == "note" and rest:
            keep_note(self.book, self.voice, rest)
            self.book.changed = False
        elif weighing := weighed(f"{word} {rest}"):
            keep_weighing(self.book, self.voice, weighing)
            self.book.changed = False
        elif word == "invalid":
            self.voice.say(self.book.mark_last_invalid(rest))
        elif word == "unit":
            return self._unit(rest)
        elif word == "do" and rest:
            yield from self._do(rest)
        elif said == "again":
            yield from self._again()
        elif said == "repair":
            yield from self._repair_of_the_list(conclusions)
        elif word == "repaired" and rest:
            yield from self._repaired(rest, conclusions)
        elif word == "repaired":
            yield from self._repaired_of_the_list(conclusions)
        else:
            return False
        return True

    def _unit(self, said: str) -> bool:
        """Put right what was told of the unit, or list it; False where no such thing is named."""
        if said:
            return put_right(self.book, self.voice, self.decider.reasoner, said)
        list_told(self.book, self.voice)
        return True

    def _done(self, decision: Decision) -> bool:
        """Close the visit. At a step it may mean the step, so there it is asked for twice."""
        if decision.step is not None and decision.step.id in ENTER_CONFIRMS:
            return False
        if decision.step is not None and not self.done_said:
            self.done_said = True
            word = self.knowledge.tests[decision.step.id].spoken(CONFIRMED[decision.step.id])
            self.voice.say(
                f'Is the step done? Type "{word}". Type done again to put the unit back and close.'
            )
            return True
        self.done_said = False
        self.book.add(Closing(chosen=True))
        return True

    def _skip(self, decision: Decision) -> None:
        if decision.kind == "step":
            self._skip_aim(decision)
        elif decision.test is None:
            self.voice.say(NO_QUESTION)
        else:
            self.book.add(Skipped.over(decision.test.id, decision.at))

    def _skip_aim(self, decision: Decision) -> None:
        """No safety step is skipped; the test that it leads to may be."""
        if decision.aim is None or decision.stop is not None:
            self.voice.say("A safety step cannot be skipped. q keeps the visit and leaves.")
            return
        self.book.add(Skipped.over(*decision.aim))
        self.voice.say(f"Without: {self.knowledge.tests[decision.aim[0]].name}.")

    def _how(self, decision: Decision) -> None:
        if decision.test is None:
            self.voice.say(NO_QUESTION)
        else:
            self.voice.tell(HowTo(decision.test, decision.cautions))

    def _why(self, decision: Decision) -> None:
        if decision.kind == "step" and decision.aim is not None:
            aim = self.knowledge.tests[decision.aim[0]]
            self.voice.say(f"It comes before: {aim.name}.", 1)
        elif decision.kind in ("step", "ending") and not decision.reason:
            self.voice.say(ON_THE_WAY_BACK if decision.kind == "step" else NO_QUESTION, 1)
        if decision.reason:
            self.voice.say(f"Why: {decision.reason.removesuffix('.')}.", 1)

    def _because(self, rest: str, conclusions: Conclusions) -> Talk[None]:
        fault = yield from fault_meant(self.book, self.voice, conclusions, rest or "1")
        causes = [c for c in conclusions.causes if fault is not None and c.fault.id == fault.id]
        if fault is not None and not causes:
            self.voice.say("No such cause here. Give its number, or words of its name.")
        for cause in causes[:1]:
            self.voice.say_all(because(conclusions, cause))

    def _why_not(self, rest: str, conclusions: Conclusions) -> Talk[None]:
        fault = yield from fault_meant(self.book, self.voice, conclusions, rest)
        if fault is not None:
            self.voice.say_all(why_not(conclusions, fault.id))

    def _what_if(self, rest: str, decision: Decision, conclusions: Conclusions) -> None:
        test = decision.test
        outcomes = () if test is None else conclusions.hypotheses.outcomes(test.id)
        if test is None or not outcomes:
            self.voice.say(NO_QUESTION)
            return
        word = rest.strip().lower().replace(" ", "-")
        matching = [o for o in outcomes if o == word] or [o for o in outcomes if o.startswith(word)]
        if len(matching) != 1:
            self.voice.say("Say one of: " + ", ".join(map(test.spoken, outcomes)))
            return
        lines = what_if(self.decider.reasoner, conclusions, test, decision.at, matching[0])
        self.voice.say_all(lines)

    def _other_tests(self, conclusions: Conclusions) -> None:
        for other in self.others_to_do(conclusions):
            self.voice.tell(other)
        self.voice.say("do N takes one of them.", 1)

    def others_to_do(
        self, conclusions: Conclusions, most: int = OTHER_TESTS
    ) -> tuple[OtherTest, ...]:
        """The call's first looks that still pay, in its order, then what tells most for its
        minutes; from here on do N takes one of them.
        """
        state, first = self.book.state, conclusions.first_tests
        all_of_them = self.decider.candidates(state, conclusions)
        in_order = sorted(
            all_of_them, key=lambda c: first.index(c.test.id) if c.test.id in first else len(first)
        )
        mine = (c for c in in_order if self.decider.handed_over(state, c) is None)
        found = tuple(islice(mine, most))
        self.offered = tuple((c.test.id, spoken(c.at)) for c in found)
        layout = state.unit.layout
        return tuple(
            OtherTest(n, c.test, layout.shown(c.test.per, c.at), c.minutes + c.switch_minutes)
            for n, c in enumerate(found, start=1)
        )

    def _do(self, said: str) -> Talk[None]:
        """Take a test by its number in the list, or by its words and place."""
        if (number := choice(said, len(self.offered))) is not None:
            listed, where = self.offered[number - 1]
            places = self.book.state.unit.layout.places(self.knowledge.tests[listed].per)
            if where is not None and where not in map(spoken, places):
                self.voice.say(GONE)
            else:
                yield from self._aim(listed, where)
            return
        spot = yield from spot_meant(self.book, self.voice, said)
        if spot is not None:
            test, at = spot
            yield from self._aim(test.id, spoken(at))

    def _again(self) -> Talk[None]:
        """Read the last reading once more, of those whose place the unit still has."""
        unit, tests = self.book.state.unit, self.knowledge.tests
        last = next(
            (
                answer
                for answer in reversed(self.book.state.answers)
                if answer.text
                and answer.places[0] in (unit.layout.places(tests[answer.test].per) or (None,))
            ),
            None,
        )
        if last is None:
            self.voice.say("There is no reading to take again.")
            return
        yield from self._aim(last.test, spoken(last.places[0]))

    def _aim(self, test: str, at: str | None) -> Talk[None]:
        phrase = self.decider.beyond(self.book.state, test, at)
        if phrase is not None:
            self.voice.say(f"That is beyond you: {phrase}.")
            return
        conclusions = conclude_visit(self.decider.reasoner, self.book.state)
        forbidden = self.decider.forbidden(conclusions, test, at)
        if forbidden is not None:
            self.voice.say(f"Not now: {forbidden}. Only a fresh finding takes it away.")
            return
        chosen = self.knowledge.tests[test]
        if (yield from may_look_again(self.book, self.voice, conclusions, chosen)):
            self.book.add(Aimed(test, at, "you chose it", chosen=True))

    def _repaired(self, said: str, conclusions: Conclusions) -> Talk[None]:
        """A repair of what is not named, or not yet, is told and proved as any other."""
        fault = yield from fault_repaired(self.book, self.voice, conclusions, said)
        if fault is not None:
            repaired(self.book, self.voice, fault)

    def _repaired_of_the_list(self, conclusions: Conclusions) -> Talk[None]:
        """A repair said without its name is of the cause named, or of one of those listed."""
        cause = yield from self._of_the_list(conclusions)
        if cause is not None:
            repaired(self.book, self.voice, cause.fault)

    def _repair_of_the_list(self, conclusions: Conclusions) -> Talk[None]:
        """What is about to be repaired is the cause named, or one of those listed."""
        cause = yield from self._of_the_list(conclusions)
        if cause is not None:
            about_to_repair(self.book, self.voice, cause.fault, spoken(cause.at) or "")

    def _of_the_list(self, conclusions: Conclusions) -> Talk[Cause | None]:
        """The cause named, or the one that is picked of those listed; None for none."""
        listed = (conclusions.named,) if conclusions.named else listed_causes(conclusions)
        causes = [*{cause.fault.id: cause for cause in reversed(listed)}.values()][::-1]
        if not causes:
            self.voice.say(NAME_IT)
            return None
        if len(causes) == 1:
            return causes[0]
        names = [cause.fault.name for cause in causes]
        index = yield from pick(self.book, self.voice, WHICH, names)
        return None if index is None else causes[index]
