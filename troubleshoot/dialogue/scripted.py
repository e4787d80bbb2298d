"""A visit answered from a file: the same decisions as with a person, no questions asked.

What the file does not answer is skipped. Safety steps that it does not mention are taken as done so
that the account can go on, and the account says of each that nobody said so.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from typing import Any, Final

from troubleshoot.dialogue.answering import shown_at
from troubleshoot.dialogue.driven import DrivenVisit
from troubleshoot.dialogue.prompts import AskTest, AtStop, DoStep, Prompt, Settled
from troubleshoot.dialogue.stopped import keep_stop
from troubleshoot.dialogue.talk import Reply
from troubleshoot.knowledge.model import Test
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.unit.places import Place, like, spoken
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.profiles import FULLY_QUALIFIED
from troubleshoot.safety.steps import Step
from troubleshoot.visit.cases.alarming import Alarming, alarming
from troubleshoot.visit.cases.nothing_lifts import conclude_file, with_stops_of_steps
from troubleshoot.visit.cases.rows import rows_of
from troubleshoot.visit.cases.spoken import dangers_told
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.events import (
    Aimed,
    Answered,
    DangerReported,
    Event,
    Skipped,
    Started,
    StepDone,
)
from troubleshoot.visit.hearing.metered import TOO_LITTLE
from troubleshoot.visit.telling.account import FILE, NOT_EXAMINED, Plain, ending_of
from troubleshoot.visit.telling.whole_visit import visit_account

CERTIFIES: Final = (
    "This account certifies no safety work that the file does not hold: what it marks as not in "
    "the file was only taken as done to go on, and nobody has said that it was. Nor does anything "
    "in it lift a STOP."
)
NOT_KNOWN: Final = ""
"""What a file answers where a fact of the unit is asked: those it holds are known by then."""


class ScriptedVisit(DrivenVisit):
    """Runs one visit to its ending on the answers of a case. `said_by`: who says what was done."""

    said_by = FILE

    def __init__(self, reasoner: Reasoner, case: Case, start: Event) -> None:
        super().__init__(reasoner, start)
        self.unused: dict[str, list[Answer]] = {}
        for answer in case.answers:
            waiting = self.unused.setdefault(answer.test, [])
            if answer.why_invalid not in TOO_LITTLE:
                waiting.append(answer)
        self.passed: list[Answer] = []
        self.failed: set[tuple[str, str | None]] = set()
        self.file = case
        self.alarming = self.alarming_in(case)

    def run(self) -> Plain:
        """Play the visit; returns its account."""
        for answer in self.alarming.first:
            self.book.add(self._unasked(answer))
            conclusions = self.concluded()
            for fired in conclusions.standing_stops:
                keep_stop(self.book, conclusions, fired)
        for hazard, words in dangers_told(self.knowledge, self.file):
            self.book.add(DangerReported.of(hazard, words))
        self.drive()
        return self._account()

    def alarming_in(self, case: Case) -> Alarming:
        """The answers that call up a hazard: each speaks, whether or not it is asked for."""
        return alarming(self.decider.reasoner, case)

    def _unasked(self, answer: Answer) -> Event:
        """The event of an answer that the visit has not asked for, which is used up.

        A step that went well before it in the file is not done again behind it.
        """
        waiting = self.unused[answer.test]
        at = waiting.index(answer)  # one of it: the file may hold several alike
        before = waiting[:at]
        done = before if answer.test in CONFIRMED else []
        here = [each for each in done if not {*each.places}.isdisjoint(answer.places)]
        self.passed += here
        self.unused[answer.test] = [a for a in before if a not in here] + waiting[at + 1 :]
        if answer.test not in CONFIRMED:
            return Answered.by(answer)
        step = Step(answer.test, spoken(answer.places[0]))
        return self._step(step, answer, self._outcomes(step, answer))

    def reply(self, prompt: Prompt) -> Reply | None:
        """What the file answers a prompt; None where the visit ends with it."""
        if isinstance(prompt, Settled):
            return self._more() or self._failed() or self._not_asked()
        if isinstance(prompt, AtStop):
            return None
        if isinstance(prompt, DoStep | AskTest):
            return self.take(prompt.decision)
        return NOT_KNOWN

    def _more(self) -> Event | None:
        """Towards a test that the file answers although none pays by itself any more.

        A technician may choose any worthwhile test; a file of readings chooses those it holds.
        """
        conclusions = self.concluded()
        if conclusions.named is not None:
            return None
        asking = self.decider.asking(self.state, conclusions)
        for candidate in self.decider.candidates(self.state, conclusions):
            ways = asking.ways(candidate.test, candidate.at, conclusions.values)
            direct = any(self.unused.get(test) for test in (candidate.test.id, *candidate.asks))
            held = direct or self._held(ways)
            if held and self.decider.handed_over(self.state, candidate) is None:
                return Aimed(candidate.test.id, spoken(candidate.at))
        return None

    def _failed(self) -> Event | None:
        """What the file says has failed and the visit had no need to ask: a meter's proof.

        What was read with it does not count, whether or not the proof would have been asked for.
        """
        for name, outcome in CONFIRMED.items():
            for answer in self.unused.get(name, ()):
                step = Step(name, spoken(answer.places[0]))
                if answer.valid is False or self._outcomes(step, answer) != (outcome,):
                    return self._unasked(answer)
        return None

    def _not_asked(self) -> Event | None:
        """What calls up a hazard and the visit had no need to ask, whoever may read it."""
        for answer in self.alarming.others:
            if answer in self.unused[answer.test]:
                return self._unasked(answer)
        return None

    def _held(self, ways: Iterable[tuple[Test, ...]]) -> tuple[Test, ...]:
        """The first of these sets of tests that the file answers whole; empty if it does none."""
        return next((way for way in ways if all(self.unused.get(t.id) for t in way)), ())

    def take(self, decision: Decision) -> Event | None:
        """The answer to one decision from the file; None where the visit ends with it."""
        assert decision.test is not None
        answer = self._from_file(decision)
        if decision.step is not None:
            return self._step_done(decision, decision.step, answer)
        if answer is not None:
            return Answered.by(answer)
        return self._round(decision.test, decision.at)

    def holds(self, test: str) -> bool:
        """Whether there is an answer to a test at all: the way to one that has none is not gone."""
        return bool(self.unused.get(test))

    def _round(self, test: Test, at: Place | None) -> Event:
        """Towards what the file holds in a test's stead, or past the test."""
        conclusions = self.concluded()
        asking = self.decider.asking(self.state, conclusions)
        inputs = self._held(asking.ways(test, at, conclusions.values))
        if not inputs:
            return Skipped.over(test.id, at)
        where = like(at, self.state.unit.layout.places(inputs[0].per))
        return Aimed(inputs[0].id, spoken(where))

    def _from_file(self, decision: Decision) -> Answer | None:
        """The file's next answer for the test asked, or for the test it is asked for."""
        assert decision.test is not None
        at = decision.at
        if decision.kind == "step" and decision.step is not None:
            return self._next(decision.test.id, decision.step.place)
        if decision.aim is not None and decision.aim[0] != decision.test.id:
            direct = self._next(decision.aim[0], decision.aim[1])
            if direct is not None:
                return direct
        return self._next(decision.test.id, at)

    def _next(self, test: str, at: Place | str | None) -> Answer | None:
        waiting = self.unused.get(test, [])
        for index, answer in enumerate(waiting):
            where = {spoken(place) for place in answer.places}
            if at is None or str(at) in where or None in where:
                return waiting.pop(index)
        return None

    def _step_done(self, decision: Decision, step: Step, answer: Answer | None) -> Event | None:
        """A step as the file tells it; None where the visit cannot go on without it.

        What the file says has failed is never taken as done.
        """
        if answer is not None:
            return self._step(step, answer, self._outcomes(step, answer))
        if (step.id, step.place) not in self.failed:
            return self.unsaid(step)
        return Skipped.over(*decision.aim) if decision.aim is not None else None

    def unsaid(self, step: Step) -> Event:
        """A step of which the file says nothing."""
        return replace(StepDone.of(step, (CONFIRMED[step.id],)), nobody=True)

    def _outcomes(self, step: Step, answer: Answer) -> tuple[str, ...]:
        return answer.outcomes or shown_at(self.knowledge, self.state, step, answer.text or "")

    def _step(self, step: Step, answer: Answer, outcomes: tuple[str, ...]) -> Event:
        """A step as the file tells it."""
        if answer.valid is False or outcomes != (CONFIRMED[step.id],):
            self.failed.add((step.id, step.place))
        event = StepDone.of(step, outcomes, answer.text)
        return event if answer.valid is not False else replace(event, valid=False)

    def _account(self) -> Plain:
        conclusions = self.concluded()
        decision = self.decider.decide(self.state, conclusions)
        if self.said_by == FILE:
            file = conclude_file(self.decider.reasoner, self.file)
            conclusions = with_stops_of_steps(conclusions, file)
        ending = "stopped" if decision.kind == "stop" else ending_of(conclusions)
        if ending == "nothing-wrong" and all(asked.nobody for asked in self.state.asked):
            ending = NOT_EXAMINED
        candidates = (
            self.decider.candidates(self.state, conclusions) if ending == "shortlist" else ()
        )
        plain = visit_account(
            self.knowledge,
            self.state,
            conclusions,
            ending=ending,
            stop=decision.stop,
            candidates=candidates,
            said_by=self.said_by,
            timed=False,
        )
        if self.said_by != FILE:
            return plain
        return {"certifies": CERTIFIES, **plain, "unread": self._unread()}

    def _unread(self) -> list[Plain]:
        """What the file holds and the visit had no need to ask, or could not take."""
        left = [*self.passed, *(answer for waiting in self.unused.values() for answer in waiting)]
        left += [answer for answer in self.file.answers if answer.why_invalid in TOO_LITTLE]
        unread = [answer for answer in self.file.answers if any(answer is a for a in left)]
        return rows_of(self.decider.reasoner, self.file, unread)


def start_event(
    case: Case, data: Mapping[str, Any], profiles: Iterator[str] | None = None
) -> Started:
    """The first event of a visit on a case file's plain data."""
    return Started(
        complaint=case.complaint,
        routine=case.routine,
        profiles=tuple(sorted(profiles or FULLY_QUALIFIED)),
        unit=dict(data.get("unit") or {}),
        own_record=dict(data.get("own-record") or {}),
        counts={k: n for k, n in case.unit.layout.counts if k in ("circuit", "condenser-fan")},
        conditions=dict(case.conditions),
        repaired=tuple(case.repaired),
    )
