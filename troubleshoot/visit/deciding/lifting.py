"""The way to the fresh finding that may lift a STOP, while it stands: that way and no other.

The finding is taken as safely as any other: whatever it needs of the work state comes first, step
by step. A finding that is a safety step is taken when its turn comes on the way to dead work.
"""

from __future__ import annotations

from dataclasses import replace

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.conclude import Conclusions, FiredHazard
from troubleshoot.safety.needs import for_dead_work
from troubleshoot.safety.profiles import APPRENTICE, hand_over
from troubleshoot.safety.route import next_step
from troubleshoot.safety.steps import Step
from troubleshoot.safety.stops.lifting import is_all_clear, lifting_finding, not_yet_afresh
from troubleshoot.safety.stops.record import Spot
from troubleshoot.safety.transitions import refusals
from troubleshoot.visit.deciding.decision import Decision, beyond, like, nearer_to, to_ask, to_do
from troubleshoot.visit.state import VisitState

NOT_BY_AN_APPRENTICE = "hand over to the supervising technician"
LIFTS = "only this finding, taken afresh, lifts the STOP"


def towards_lifting(
    knowledge: Knowledge, state: VisitState, conclusions: Conclusions, standing: FiredHazard
) -> Decision | None:
    """The next thing on the way to the finding being taken afresh; none where it may not be.

    `standing`: the STOP to be told of. Where it may be lifted here so may any other that stands,
    and the finding may be that of another.
    """
    spot = state.fresh
    if spot is None or lifting_finding(knowledge, state, conclusions, standing) is None:
        return None
    lifted = next(
        (
            stop
            for stop in conclusions.standing_stops
            if lifting_finding(knowledge, state, conclusions, stop) == spot
        ),
        None,
    )
    if lifted is None or beyond_lifting(knowledge, state, spot) is not None:
        return None
    test = knowledge.tests[spot[0]]
    if test.kind == "step":
        found = _towards_step(knowledge, state, spot)
    else:
        found = _towards_test(knowledge, state, spot)
    return found and replace(found, aim=spot, reason=LIFTS, stop=lifted)


def beyond_lifting(knowledge: Knowledge, state: VisitState, spot: Spot) -> str | None:
    """To whom taking a finding afresh has to be handed over; None if to nobody.

    What was handed over is never taken back by an apprentice, whoever else is with them.
    """
    if APPRENTICE in state.profiles and any(met.reopened for met in state.stops):
        return NOT_BY_AN_APPRENTICE
    test = knowledge.tests[spot[0]]
    if test.kind != "step":
        return beyond(knowledge, state, (test,), spot[1])
    phrase = hand_over(test, state.profiles)
    found = None if phrase else _towards_step(knowledge, state, spot)
    if found is None or found.test is None:
        return phrase
    return hand_over(found.test, state.profiles)


def _towards_step(knowledge: Knowledge, state: VisitState, spot: Spot) -> Decision | None:
    """The step itself once its turn has come, else the next one on the way to dead work.

    An all-clear has no turn: it is somebody's word.
    """
    test = knowledge.tests[spot[0]]
    if is_all_clear(test):
        return to_ask(knowledge, state, test, spot[1])
    wanted = Step(test.id, _place_of(state, spot))
    if not refusals(state.work, wanted, state.at_work):
        return to_do(knowledge, state, wanted)
    step = next_step(state.work, for_dead_work(state.at_work), state.at_work)
    return None if step is None else to_do(knowledge, state, step)


def _place_of(state: VisitState, spot: Spot) -> str | None:
    """The place of a step in words, as it was when it was last done."""
    done = [asked for asked in state.asked if (asked.test, asked.at) == spot]
    return done[-1].place if done else None


def _towards_test(knowledge: Knowledge, state: VisitState, spot: Spot) -> Decision | None:
    """The test itself, or what a computed one is read from, with the way to it."""
    since = state.fresh_since
    missing: tuple[Test, ...] = not_yet_afresh(knowledge, state, spot, since)
    if not missing:
        return None
    at = like(spot[1], state.unit.layout.places(missing[0].per))
    return nearer_to(knowledge, state, missing[0], at)
