"""What came of a test or a safety step, and what turned out to be no answer."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field, replace
from typing import ClassVar

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.places import Place, spoken
from troubleshoot.safety.closed_ways import came_about, failures
from troubleshoot.safety.declared import CONFIRMED, sound_outcomes
from troubleshoot.safety.steps import BEFORE_BLEEDING, LOCKOUT, NO_FLAME, RESTART, Step
from troubleshoot.safety.transitions import after_step, after_test, failed
from troubleshoot.visit.events.called import unit_as_called
from troubleshoot.visit.events.event import ALWAYS, Event
from troubleshoot.visit.events.places import At, is_reached, places_from, step_place, unless_reached
from troubleshoot.visit.state import Asked, VisitState


class SaysNothing(ValueError):
    """An answer without outcome or reading: nothing is kept as one."""


@frozen
class Answered(Event):
    """What came of a test, as outcomes, as the text of a reading, or both.

    `valid`: False where it counts for nothing, `why_invalid` says why; None where nobody said.
    `shared`: one reading that holds for every place. `conditions`: quantities that held, as typed.
    """

    kind: ClassVar[str] = "answer"
    reports: ClassVar[bool] = True

    test: str
    at: At = field(default=None, metadata=ALWAYS)
    outcomes: tuple[str, ...] = ()
    text: str | None = None
    valid: bool | None = None
    shared: bool = False
    instrument: str | None = None
    why_invalid: str = ""
    conditions: Mapping[str, str] = field(default_factory=dict)

    @classmethod
    def by(cls, answer: Answer) -> Answered:
        """An answer with all that is known of it."""
        return cls(
            answer.test,
            tuple(str(place) for place in answer.places if place is not None) or None,
            answer.outcomes,
            answer.text,
            answer.valid,
            answer.shared,
            answer.instrument,
            answer.why_invalid,
            dict(answer.conditions),
        )

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        """Raises SaysNothing where it names no outcome and holds no reading.

        What nobody chose is not held to: every answer may make another test tell more.
        """
        test = knowledge.tests[self.test]
        if not self.outcomes and not self.text:
            raise SaysNothing(f"an answer to {test.id} names no outcome and holds no reading")
        places = places_from(self.at, test.per, state.unit)
        answer = Answer(
            test.id,
            self.outcomes,
            self.text,
            places,
            self.shared,
            self.valid,
            self.instrument,
            self.why_invalid,
            dict(self.conditions),
            repairs=state.mended_here,
        )
        counts = self.valid is not False
        outcomes = _shown(knowledge, state, self) if counts else ()
        came = outcomes if test.id in CONFIRMED else _may_have_come(knowledge, state, self)
        called = unit_as_called(knowledge, state)
        work = after_test(state.work, test, spoken(places[0]), came, called)
        gone = state.failed_steps
        if test.id in CONFIRMED:
            step = Step(test.id, spoken(places[0]))
            gone = failures(gone, step, outcomes, work, state.at_work)
        return replace(
            state,
            answers=(*state.answers, answer),
            asked=(*state.asked, self._asked(test, places[0])),
            work=work,
            work_before=state.work,
            failed_steps=gone,
            aim=unless_reached(state.aim, test.id) if state.aim_chosen else None,
            shown=unless_reached(state.shown, test.id),
            fresh=unless_reached(state.fresh, test.id),
            fresh_read=_read_afresh(state, test, outcomes),
            trying=False,
        )

    def _asked(self, test: Test, place: Place | None) -> Asked:
        return Asked(
            test.id,
            None if self.shared else place,
            ", ".join(self.outcomes) or None,
            self.text,
            self.valid is not False,
            test.minutes,
            test.work_state,
            time=self.time,
        )


def _shown(knowledge: Knowledge, state: VisitState, answer: Answered) -> tuple[str, ...]:
    """What came of a test; of a sweep that was read off a detector what its number shows."""
    if answer.outcomes or answer.test not in CONFIRMED or not answer.text:
        return answer.outcomes
    # Reading a number takes the reasoning, which most visits need not have imported here.
    from troubleshoot.visit.hearing.metered import metered

    place = places_from(answer.at, knowledge.tests[answer.test].per, state.unit)[0]
    return metered(knowledge, state.case, answer.test, place, answer.text)


def _may_have_come(knowledge: Knowledge, state: VisitState, answer: Answered) -> tuple[str, ...]:
    """What may have come of a test, whether or not it counts: a light that failed has failed.

    Of a number whatever it may show; all that the test knows where it shows nothing.
    """
    test = knowledge.tests[answer.test]
    if answer.outcomes or not answer.text or not test.leaves_unburnt:
        return answer.outcomes
    # Reading a number takes the reasoning, which most visits need not have imported here.
    from troubleshoot.visit.hearing.metered import may_show

    place = places_from(answer.at, test.per, state.unit)[0]
    shown = may_show(knowledge, state.case, answer.test, place, answer.text)
    return tuple(sorted(shown)) or tuple(outcome.id for outcome in test.outcomes)


@frozen
class StepDone(Event):
    """A safety step done, and what came of it.

    `text`: what was read off a meter, or how else it was told: where a lock hangs.
    `place`: in the step's own words. `nobody`: nobody says that it was done; it was taken as done
    so that an account can go on. `valid`: False where it counts for nothing.
    """

    kind: ClassVar[str] = "step"
    reports: ClassVar[bool] = True

    step: str
    outcomes: tuple[str, ...]
    place: str | None = field(default=None, metadata=ALWAYS)
    again: bool = field(default=False, metadata=ALWAYS)
    text: str | None = None
    valid: bool | None = None
    nobody: bool = False

    @classmethod
    def of(cls, step: Step, outcomes: tuple[str, ...], text: str | None = None) -> StepDone:
        """What came of a step."""
        return cls(step.id, outcomes, step.place, step.again, text)

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        step = Step(self.step, self.place, self.again)
        counts = self.valid is not False
        outcomes = self.outcomes if counts else ()
        work = after_step(state.work, step, outcomes, unit_as_called(knowledge, state))
        test = knowledge.tests[step.id]
        asked = Asked(
            step.id,
            step_place(step, state.unit),
            ", ".join(self.outcomes),
            self.text,
            counts,
            test.minutes + test.wait_minutes,
            test.work_state,
            step.place,
            self.nobody,
            self.time,
        )
        valid = None if counts else False
        text = self.text if test.reads else None
        answer = Answer(step.id, self.outcomes, text, (asked.at,), valid=valid)
        confirmed = counts and self.outcomes == (CONFIRMED[step.id],)
        held_to = counts and state.aim_chosen and came_about(step, work, state.at_work)
        goes_on = confirmed or held_to or (counts and self._leads_on(knowledge, state))
        return replace(
            state,
            work=work,
            work_before=state.work,
            lock_by=state.profiles if confirmed and self.step == LOCKOUT else state.lock_by,
            asked=(*state.asked, asked),
            answers=(*state.answers, answer),
            failed_steps=failures(state.failed_steps, step, outcomes, work, state.at_work),
            aim=state.aim if goes_on else None,
            shown=None,
            fresh=unless_reached(state.fresh, step.id),
            fresh_read=_read_afresh(state, test, outcomes),
            trying=counts and self.step == RESTART and outcomes == (NO_FLAME,),
        )

    def _leads_on(self, knowledge: Knowledge, state: VisitState) -> bool:
        """Whether an outcome that confirms nothing is on the way to what is aimed at all the same:
        a charge before it is bled, a burner that tries, where that is what is read."""
        if self.outcomes == (BEFORE_BLEEDING,):
            return True
        tries = self.step == RESTART and self.outcomes == (NO_FLAME,)
        return tries and state.aim is not None and knowledge.tests[state.aim[0]].in_trial


def _read_afresh(state: VisitState, test: Test, outcomes: tuple[str, ...]) -> bool:
    """Whether the way to the rest of a STOP's findings is open: nothing unsound lies on it."""
    if not is_reached(state.fresh, test.id):
        return state.fresh_read
    return sound_outcomes(test).issuperset(outcomes)


@frozen
class MarkedInvalid(Event):
    """The last answer stays on record but counts for nothing; a proof, step or sweep has failed."""

    kind: ClassVar[str] = "invalid"

    reason: str

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        last = replace(state.answers[-1], valid=False, why_invalid=self.reason)
        changed = replace(state, answers=(*state.answers[:-1], last), trying=False)
        if last.test not in CONFIRMED:
            return changed
        asked = replace(state.asked[-1], valid=False)
        step = Step(last.test, asked.place or spoken(asked.at))
        called = unit_as_called(knowledge, state)
        work = failed(state.work_before, state.work, step, called)
        return replace(changed, asked=(*state.asked[:-1], asked), work=work)
