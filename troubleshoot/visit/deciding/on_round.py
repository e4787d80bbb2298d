"""What comes next on a routine round: what is not sound is decided on first, then the next test.

The order is that of `visit/round/points.py`; the way to each test, and whether it may be shown at
all, is that of any test.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Final

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.knowledge.vocabulary import Need
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.evidence.hypotheses import Hypothesis
from troubleshoot.reasoning.evidence.sought import showing
from troubleshoot.reasoning.unit.places import like, spoken
from troubleshoot.safety.at_ports import GAUGES_ON
from troubleshoot.safety.closed_ways import closed, is_closed
from troubleshoot.safety.hazard_words import forbids
from troubleshoot.safety.needs import left_on, needs_of, with_needs
from troubleshoot.safety.reaching import is_blocked
from troubleshoot.safety.stops.record import Spot
from troubleshoot.safety.stops.standing import Forbidden
from troubleshoot.visit.deciding.nameplate import plate_to_ask
from troubleshoot.visit.deciding.read_shut import with_needs_if_it_may
from troubleshoot.visit.round.found import PointFound, latest, points_found, unsound
from troubleshoot.visit.round.points import in_walking_order, points_here
from troubleshoot.visit.state import VisitState

if TYPE_CHECKING:
    from troubleshoot.visit.deciding.next import Decider

HOOKED: Final[tuple[Need, ...]] = (
    *("manometer-at-inlet", "manometer-at-outlet"),
    *("meter-in-rod-lead", "clamp-on-heater-lead"),
)
"""What is hooked up dead to be read live."""
SKIPPED = "skipped"
NO_WAY = "no safe way leads there as the unit stands"
INPUTS_MISSING = "what it is computed from is not known"
NOT_WALKED = "not come to"


def new_findings(
    knowledge: Knowledge, state: VisitState, conclusions: Conclusions
) -> tuple[Spot, ...]:
    """What was found not to be sound and nothing has been decided about yet."""
    on = state.walking
    if on is None:
        return ()
    return tuple(
        spot
        for spot in unsound(knowledge, state, conclusions)
        if spot not in on.kept and spot not in on.searched
    )


def left_to_take(
    decider: Decider, state: VisitState, conclusions: Conclusions
) -> Iterator[tuple[Spot, str]]:
    """The tests of the round that are neither taken nor out of reach, in the order of work.

    With each, why it is asked: its point.
    """
    if state.round is None:
        return
    points = points_here(decider.knowledge, state.unit, state.round.season)
    taken = latest(conclusions)
    for spot, here in in_walking_order(decider.knowledge, points, state.at_work):
        if spot not in taken and not why_not_taken(decider, state, conclusions, spot):
            yield spot, f"point {here.number} of the {state.round.season} round: {here.point.point}"


def hooked_up_once(
    decider: Decider, state: VisitState, conclusions: Conclusions, test: Test
) -> Test:
    """A test that is read on what is hooked up dead, with whatever else is to be read so.

    Each lock-out with its proofs costs more than the readings: manometers and meter go on together,
    and stay until the last of them is read.
    """
    if state.walking is None:
        return test
    if not {*test.needs_state} & {*HOOKED}:
        return _gauged_while_dead(decider, state, conclusions, test)
    tests = decider.knowledge.tests
    left = (tests[spot[0]] for spot, _ in left_to_take(decider, state, conclusions))
    others = (each for each in left if each.per is None and each.work_state == test.work_state)
    wanted = {need for each in others for need in each.needs_state}
    return with_needs(test, (need for need in HOOKED if need in {*wanted, *left_on(state.work)}))


def _gauged_while_dead(
    decider: Decider, state: VisitState, conclusions: Conclusions, test: Test
) -> Test:
    """A test that ends dead work, with gauges on before it where some are left to be read inside.

    They would want a lock-out of their own behind a panel. Not for whoever may not put them on.
    """
    unit = state.at_work
    ends_it = state.work.dead == "proved" and needs_of(test, None, unit).energised
    if unit.ports_outside or not ends_it:
        return test
    tests = decider.knowledge.tests
    left = (tests[spot[0]] for spot, _ in left_to_take(decider, state, conclusions))
    if not any(GAUGES_ON in each.needs_state for each in left):
        return test
    return with_needs_if_it_may(decider.knowledge, state, test, None, (GAUGES_ON,))


def why_not_taken(decider: Decider, state: VisitState, conclusions: Conclusions, spot: Spot) -> str:
    """Why a test of the round is not taken, in a phrase; empty where it may be."""
    knowledge = decider.knowledge
    test = knowledge.tests[spot[0]]
    if spot in state.skipped:
        return SKIPPED
    asked = decider.asking(state, conclusions).asks(test, spot[1], conclusions.values)
    unread = plate_to_ask(knowledge, state.unit, test, spot[1], state.not_known)
    if not asked and not unread:
        return INPUTS_MISSING
    forbidden = Forbidden(conclusions)
    for each in asked or (test,):
        at = like(spot[1], state.unit.layout.places(each.per))
        if (phrase := decider.beyond(state, each.id, spoken(at))) is not None:
            return phrase
        if (hazard := forbidden.even_if_chosen(each, at)) is not None:
            return forbids(hazard)
        if is_closed(state, each, at):
            names = (knowledge.tests[step].name for step in closed(state))
            return f"it failed each time: {'; '.join(names)}"
        if is_blocked(state, each, at):
            return NO_WAY
    return ""


def round_found(
    decider: Decider, state: VisitState, conclusions: Conclusions
) -> tuple[PointFound, ...]:
    """All points of the round as they stand, with why a test was not taken."""

    def why_not(spot: Spot) -> str:
        return why_not_taken(decider, state, conclusions, spot) or NOT_WALKED

    return points_found(decider.knowledge, state, conclusions, why_not)


def apart_from(
    knowledge: Knowledge, state: VisitState, conclusions: Conclusions, search: tuple[Spot, ...]
) -> tuple[Spot, ...]:
    """What else was found unsound that no cause of these findings shows, by the cards.

    One fault at a time is ranked: findings of two that have nothing to do with each other would
    speak against both.
    """
    read, hypotheses = latest(conclusions), conclusions.hypotheses

    def by(spot: Spot) -> Iterator[Hypothesis]:
        seen = frozenset(read[spot].seen) if spot in read else frozenset[str]()
        return showing(hypotheses, spot[0], spot[1], seen)

    causes = {(h.fault.id, h.at) for spot in search for h in by(spot)}
    others = (spot for spot in unsound(knowledge, state, conclusions) if spot not in search)
    return tuple(spot for spot in others if causes.isdisjoint((h.fault.id, h.at) for h in by(spot)))
