"""Which way a visit goes: what is aimed at, shown on the way, and gone on without."""

from __future__ import annotations

from dataclasses import field, replace
from typing import ClassVar

from troubleshoot.frozen import changed, frozen
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.unit.places import Place, like, spoken
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.guards import allowed
from troubleshoot.safety.needs import left_on, with_needs
from troubleshoot.safety.steps import Step
from troubleshoot.safety.stops.record import Spot
from troubleshoot.safety.transitions import after_test, failed
from troubleshoot.safety.work_state import WorkState
from troubleshoot.visit.events.called import unit_as_called
from troubleshoot.visit.events.event import ALWAYS, Event
from troubleshoot.visit.events.places import At, places_from
from troubleshoot.visit.state import VisitState


@frozen
class Aimed(Event):
    """A test that is on the way. `chosen`: by the person, and not by what tells most."""

    kind: ClassVar[str] = "aim"

    test: str
    at: At = field(default=None, metadata=ALWAYS)
    reason: str = ""
    chosen: bool = False

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        test = knowledge.tests[self.test]
        place = places_from(self.at, test.per, state.unit)[0]
        skipped = state.skipped - {(test.id, place)} if self.chosen else state.skipped
        aim = (test.id, place if self.at else None)
        held = aim == state.aim and self.chosen == state.aim_chosen
        return replace(
            state if aim == state.aim else put_aside(knowledge, state),
            aim=aim,
            aim_reason=self.reason,
            aim_chosen=self.chosen,
            aim_since=state.aim_since if held else len(state.answers),
            repair_wanted=None if self.chosen else state.repair_wanted,
            skipped=skipped,
        )


@frozen
class Shown(Event):
    """A test on the screen that is not what is aimed at: put before it, or read to compute it."""

    kind: ClassVar[str] = "shown"

    test: str
    at: At = field(default=None, metadata=ALWAYS)

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        test = knowledge.tests[self.test]
        place = places_from(self.at, test.per, state.unit)[0]
        state = perhaps_begun(knowledge, state, state.shown)
        return replace(state, shown=(test.id, place if self.at else None))


@frozen
class Skipped(Event):
    """A test, or a step, gone on without."""

    kind: ClassVar[str] = "skip"
    reports: ClassVar[bool] = True

    test: str
    at: At = field(default=None, metadata=ALWAYS)

    @classmethod
    def over(cls, test: str, at: Place | None) -> Skipped:
        """What is gone on without at one place."""
        return cls(test, spoken(at))

    def apply(self, knowledge: Knowledge, state: VisitState) -> VisitState:
        state = perhaps_begun(knowledge, state, state.shown)
        test = knowledge.tests[self.test]
        places = places_from(self.at, test.per, state.unit)
        skipped = state.skipped | {(test.id, place) for place in places}
        aim = None if state.aim and _may_hang_on(knowledge, state.aim, test.id) else state.aim
        where = spoken(places[0])
        if test.id in CONFIRMED:
            called = unit_as_called(knowledge, state)
            work = failed(state.work, state.work, Step(test.id, where), called)
        else:
            work = _perhaps_begun(state, test, where)
        return replace(
            state,
            skipped=skipped,
            aim=aim,
            shown=None,
            fresh=None,
            fresh_read=False,
            work=work,
            trying=False,
        )


def put_aside(knowledge: Knowledge, state: VisitState) -> VisitState:
    """Nothing is on its way any more; what was in hand may have been begun: a jumper may be in."""
    state = in_hand_begun(knowledge, state)
    nothing = state.aim is None and state.shown is None
    return state if nothing else changed(state, aim=None, shown=None)


def in_hand_begun(knowledge: Knowledge, state: VisitState) -> VisitState:
    """The visit with all that was in hand begun, as it may have been.

    In hand is the test aimed at, what was shown on the way to it, and the finding that was to be
    taken afresh and has not been.
    """
    for spot in (state.aim, state.shown, state.fresh):
        state = perhaps_begun(knowledge, state, spot)
    return state


def perhaps_begun(knowledge: Knowledge, state: VisitState, spot: Spot | None) -> VisitState:
    """The visit once a test that was on its way is given up; no step begins by itself."""
    if spot is None or spot[0] in CONFIRMED:
        return state
    test, at = knowledge.tests[spot[0]], spot[1]
    where = spoken(like(at, state.unit.layout.places(test.per)))
    work = _perhaps_begun(state, test, where)
    return state if work is state.work else changed(state, work=work)


def _perhaps_begun(state: VisitState, test: Test, place: str | None) -> WorkState:
    """The work state once a test is given up: where it was allowed, hands may have begun.

    A round shows a test with what is hooked up for the readings beside it left on; what is read
    while a burner tries is shown on the gas of that try.
    """
    tries = state.trying and test.in_trial
    work = state.work.with_facts(unburnt=False) if tries else state.work
    as_shown = (test, with_needs(test, left_on(work)))
    if all(allowed(work, each, place, state.at_work) for each in as_shown):
        return state.work
    return after_test(state.work, test, place, (), state.at_work)


def _may_hang_on(knowledge: Knowledge, aim: Spot, skipped: str) -> bool:
    """Whether what is aimed at may need a test that was skipped, so that the way is sought afresh.

    What is computed may be had from other inputs. What gives no number for it, such as a look that
    was only put before it, holds up nothing.
    """
    is_computed = knowledge.tests[aim[0]].kind == "computed"
    return aim[0] == skipped or (is_computed and bool(knowledge.tests[skipped].reads))
