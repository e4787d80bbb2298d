"""A STOP, a reported danger, the fresh finding and the reopening: what they do to a visit.

None of these lifts a STOP: the finding that called it up stays what it is until it is taken afresh.
"""

from __future__ import annotations

from dataclasses import field, replace
from typing import ClassVar

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.reasoning.unit.places import spoken
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.hearing.dangers import ANY_DANGER
from troubleshoot.safety.steps import Step
from troubleshoot.safety.stops.given_back import given_back_with
from troubleshoot.safety.stops.record import HandOverResult, Spot, StopMet
from troubleshoot.safety.transitions import after_stop, expire, failed
from troubleshoot.visit.events.event import ALWAYS, Event
from troubleshoot.visit.events.places import spot_of
from troubleshoot.visit.events.way import put_aside
from troubleshoot.visit.state import VisitState


@frozen
class Halted(Event):
    """A STOP halts the visit. `test`, `at`: the finding that shows whether it still stands.

    `on_record`: nothing that is understood today calls it up, so that it hangs on no finding.
    """

    kind: ClassVar[str] = "stop"

    hazard: str
    test: str | None = None
    at: str | None = field(default=None, metadata=ALWAYS)
    on_record: bool = False

    @classmethod
    def over(cls, hazard: str, spot: Spot | None) -> Halted:
        """The STOP of a hazard, with its finding where there is one."""
        return cls(hazard) if spot is None else cls(hazard, spot[0], spoken(spot[1]))

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        spot = None if self.on_record else _shown_by(knowledge, state, self)
        met = StopMet(
            self.hazard, len(state.answers), spot, time=self.time, on_record=self.on_record
        )
        return _halted(knowledge, state, _met_again(knowledge, state, met))


@frozen
class DangerReported(Event):
    """Somebody reports a danger, in their own words: it halts the visit like a STOP that was found.

    `test`: what shows the all-clear. `names_the_last`: it is what somebody names who had called for
    help, and stands instead of the call.
    """

    kind: ClassVar[str] = "danger"

    hazard: str
    words: str | None = None
    test: str | None = None
    at: str | None = field(default=None, metadata=ALWAYS)
    names_the_last: bool = False

    @classmethod
    def of(cls, hazard: Hazard, words: str, names_the_last: bool = False) -> DangerReported:
        """A hazard as it was reported."""
        return cls(hazard.id, words, hazard.all_clear, names_the_last=names_the_last)

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        """A closed visit is halted too.

        The step that would show the all-clear shows it no more: no rail here, and the roof is not
        safe.
        """
        if self.names_the_last and state.stops[-1:] and state.stops[-1].hazard == ANY_DANGER:
            state = replace(state, stops=state.stops[:-1])
        spot = _shown_by(knowledge, state, self)
        met = StopMet(self.hazard, len(state.answers), spot, self.words, self.time)
        state = replace(_halted(knowledge, state, met), ended=None)
        if self.test is None or self.test not in CONFIRMED:
            return state
        work = failed(state.work, state.work, Step(self.test), state.at_work)
        return replace(state, work=work)


@frozen
class DangerTakenBack(Event):
    """A call for help that named nothing was none; a danger that was named stays."""

    kind: ClassVar[str] = "danger-taken-back"

    words: str

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        if state.stops[-1:] and state.stops[-1].hazard == ANY_DANGER:
            return replace(state, stops=state.stops[:-1])
        return state


@frozen
class TakenAfresh(Event):
    """The finding that shows whether a STOP still stands is to be taken once more.

    `result`: of the hand-over, where an all-clear was given with it. `done`: what was done here to
    make it safe, in the words of whoever did it, who said yes to the questions `said_yes_to`.
    """

    kind: ClassVar[str] = "take-afresh"

    test: str
    at: str | None
    result: HandOverResult | None = None
    done: str = ""
    said_yes_to: tuple[str, ...] = ()

    @classmethod
    def of(cls, spot: Spot, done: str = "", said_yes_to: tuple[str, ...] = ()) -> TakenAfresh:
        """A finding to be taken once more."""
        return cls(spot[0], spoken(spot[1]), done=done, said_yes_to=said_yes_to)

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        stops = state.stops
        spot = spot_of(knowledge.tests[self.test], self.at, state.unit)
        if stops and self.result is not None:
            stops = (*stops[:-1], replace(stops[-1], result=self.result))
        if stops and self.done:
            last = replace(stops[-1], done_here=self.done, said_yes_to=self.said_yes_to)
            stops = (*stops[:-1], last)
        return replace(
            state, stops=stops, fresh=spot, fresh_read=False, fresh_since=len(state.answers)
        )


@frozen
class Reopened(Event):
    """A stopped visit goes on with the hand-over's result, and with a fresh finding first.

    `profiles`: who goes on, where it was asked. `called`: when whoever made it safe was told or
    came, where the record says that nobody had told them yet. `said_yes_to`: the questions to which
    whoever told the result said yes.
    """

    kind: ClassVar[str] = "reopened"
    reports: ClassVar[bool] = True

    hazard: str
    result: HandOverResult
    test: str
    at: str | None
    profiles: tuple[str, ...] | None = None
    called: str = ""
    said_yes_to: tuple[str, ...] = ()

    @classmethod
    def on(
        cls,
        hazard: str,
        result: HandOverResult,
        spot: Spot,
        profiles: tuple[str, ...] | None = None,
        called: str = "",
        said_yes_to: tuple[str, ...] = (),
    ) -> Reopened:
        """The hand-over of a hazard's STOP taken back, and the finding that comes first."""
        return cls(hazard, result, spot[0], spoken(spot[1]), profiles, called, said_yes_to)

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        """Nothing but a visit that was handed over at a STOP can be reopened.

        Whoever made it safe may have turned the gas cock: it is looked at, and the gas swept for,
        before anything runs.
        """
        if state.ended != "stopped":
            return state
        # Reasoning is imported only where a STOP was met: most visits need none of it here.
        from troubleshoot.safety.stops.parts import after_a_break

        stops = after_a_break(knowledge, state) or (StopMet(self.hazard, 0),)
        work = expire(state.work, "reopened")
        if state.unit.facts.get("heat", "gas") != "gas":
            work = replace(work, gas=state.work.gas, gas_swept=state.work.gas_swept)
        spot = spot_of(knowledge.tests[self.test], self.at, state.unit)
        last = replace(
            stops[-1],
            result=self.result,
            reopened=True,
            called=self.called,
            said_yes_to=self.said_yes_to,
            answers=len(state.answers),
            spot=stops[-1].spot or spot,
        )
        before = (given_back_with(knowledge, met, last, stops) for met in stops[:-1])
        return replace(
            state,
            stops=(*before, last),
            fresh=spot,
            fresh_read=False,
            profiles=state.profiles if self.profiles is None else frozenset(self.profiles),
            fresh_since=len(state.answers),
            work=work,
            failed_steps=(),
            aim=None,
            shown=None,
            closing=False,
            ended=None,
            given=(),
        )


def _halted(knowledge: Knowledge, state: VisitState, met: StopMet) -> VisitState:
    """Nothing is on its way where a STOP has been met."""
    state = put_aside(knowledge, state)
    work = after_stop(state.work, knowledge.hazards.get(met.hazard), state.at_work)
    stops = (*state.stops, met)
    return replace(state, stops=stops, fresh=None, fresh_read=False, work=work, given=())


def _met_again(knowledge: Knowledge, state: VisitState, met: StopMet) -> StopMet:
    """A STOP as it stood before another was told, where nothing of it was read meanwhile.

    It stands since it was met first. What may lift it is all read from now on.
    """
    before, hazard = state.met(met.hazard), knowledge.hazards.get(met.hazard)
    if before is None or before.spot is None or hazard is None or state.stops[-1] is before:
        return met
    # Reasoning is imported only where a STOP was met twice, as below.
    from troubleshoot.safety.stops.parts import not_yet_afresh, shown_by

    wanted = shown_by(knowledge, state, hazard, before.spot)
    if not all(not_yet_afresh(knowledge, state, each, before.answers) for each in wanted):
        return met
    kept = before if before.reopened else met
    return replace(kept, answers=met.answers, time=met.time, first_time=before.stands_since)


def _shown_by(
    knowledge: Knowledge, state: VisitState, event: Halted | DangerReported
) -> Spot | None:
    """What shows whether a STOP still stands: the finding that is named, else the likely one."""
    if event.test:
        return spot_of(knowledge.tests[event.test], event.at, state.unit)
    return _likely_spot(knowledge, state, knowledge.hazards[event.hazard])


def _likely_spot(knowledge: Knowledge, state: VisitState, hazard: Hazard) -> Spot | None:
    """What shows whether a STOP still stands, where the event does not say (journals of before)."""
    tests = [finding.test for finding in hazard.findings]
    for answer in reversed(state.answers):
        if answer.test in tests:
            return answer.test, answer.places[0]
    complaint = knowledge.complaints.get(state.complaint or "")
    called_up = any(trigger.complaint == state.complaint for trigger in hazard.triggers)
    if complaint is not None and called_up and complaint.all_clear is not None:
        return complaint.all_clear, None
    test = hazard.all_clear or next(iter(tests), None)
    return None if test is None else (test, None)
