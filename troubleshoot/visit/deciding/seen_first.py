"""What comes before the ladder, and what is seen from outside before a hand is on the unit.

Below and on the phone: what the call wants known, and telling the people inside. From outside: what
shows on a unit as it was found, with its panels on; once it is locked out that has gone.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING, Final

from troubleshoot.knowledge.model import Test
from troubleshoot.reasoning.choosing.choice_of_test import LED_RATE, choose
from troubleshoot.reasoning.choosing.next_test import Candidate, SwitchMinutes
from troubleshoot.reasoning.choosing.stopping import least_rate_on
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.unit.places import Place, spoken
from troubleshoot.safety.needs import IN_THE_BUILDING, STOPPED, needs_of
from troubleshoot.safety.steps import ROOF, TELL_OCCUPANTS, Step
from troubleshoot.safety.work_state import UnitAtWork, is_as_found
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.on_round import left_to_take
from troubleshoot.visit.state import VisitState

if TYPE_CHECKING:
    from troubleshoot.visit.deciding.next import Decider

CLIMB: Final = 10.0
"""Minutes down to the rooms and up again (common practice, no source)."""


def sooner_than(
    decider: Decider, state: VisitState, conclusions: Conclusions, found: Decision, wanted: Test
) -> Candidate | Step | None:
    """What is done before the next thing on the way to `wanted`; None where nothing is.

    A round has an order of its own. What somebody is on the way to, what is read afresh after a
    repair, and what the call names before all others wait for no look: before these only the people
    below are told.
    """
    climbs = _climbs(state, found.step)
    if found.step is None or not (climbs or is_as_found(state.work)):
        return None
    held_to = state.aim is not None or state.mended_here or state.closing
    held_to |= wanted.id in conclusions.before_others or state.walking is not None
    tells = climbs and not state.work.occupants_told
    if held_to and not tells:
        return None
    candidates = decider.candidates(state, conclusions)
    least = least_rate_on(conclusions.ranking)
    worth = tuple(c for c in candidates if c.pays(least))
    if not held_to:
        below = _found_out_below(state, conclusions, candidates) if climbs else None
        best = below or _seen_from_outside(state, conclusions, worth, wanted)
        if best and decider.handed_over(state, best) is None:
            return best
    if not tells:
        return None
    tests = (wanted, *_left(decider, state, conclusions, worth))
    stops = any(needs_of(test, None, state.at_work).occupants for test in tests)
    return Step(TELL_OCCUPANTS) if stops else None


def with_the_climb(state: VisitState, switch: SwitchMinutes) -> SwitchMinutes:
    """The minutes to the work state of a test, with the way down from the roof and up again."""
    if state.work.roof != "go":
        return switch

    def minutes(test: Test, at: Place | None) -> float:
        return switch(test, at) + (CLIMB if _is_below(test, state.at_work) else 0.0)

    return minutes


def _climbs(state: VisitState, step: Step | None) -> bool:
    """Whether the step is the first look at the roof, so that everybody is still below."""
    return step is not None and step.id == ROOF and all(each.test != ROOF for each in state.asked)


def _found_out_below(
    state: VisitState, conclusions: Conclusions, candidates: Sequence[Candidate]
) -> Candidate | None:
    """What is best asked or looked at below, of what this call will want.

    What the call looks at first, and a question that tells more in the same time than anything.
    """
    first, least = conclusions.first_tests, least_rate_on(conclusions.ranking)
    below = [
        c
        for c in candidates
        if not needs_of(c.test, spoken(c.at), state.at_work).roof and not c.switch_minutes
    ]
    best = max((c.rate for c in candidates), default=0.0)
    led = [c for c in below if c.test.id in first and c.rate >= LED_RATE * best]
    asked = (c for c in below if c.test.kind == "question" and c.pays(least) and c.rate >= best)
    return min(led, key=lambda c: first.index(c.test.id), default=None) or next(asked, None)


def _seen_from_outside(
    state: VisitState, conclusions: Conclusions, worth: Iterable[Candidate], wanted: Test
) -> Candidate | None:
    """The best look at the unit as it was found, before it is stopped or opened for `wanted`.

    Nothing that a step leads to, and nothing where a hand has been on the unit.
    """
    first, unit = conclusions.first_tests, state.at_work
    opens = needs_of(wanted, None, unit).energy in STOPPED
    if not opens or state.work.roof != "go" or not is_as_found(state.work):
        return None
    outside = (
        c
        for c in worth
        if not c.switch_minutes and needs_of(c.test, spoken(c.at), unit).roof
        if c.test.id in first
    )
    return choose(tuple(outside), conclusions.ranking, first)


def _left(
    decider: Decider, state: VisitState, conclusions: Conclusions, worth: Iterable[Candidate]
) -> Iterator[Test]:
    """The tests that this visit is likely to come to."""
    tests = decider.knowledge.tests
    yield from (candidate.test for candidate in worth)
    if state.walking is not None:
        yield from (tests[spot[0]] for spot, _ in left_to_take(decider, state, conclusions))


def _is_below(test: Test, unit: UnitAtWork) -> bool:
    """Whether a test is done in the rooms, or is a question to somebody there."""
    below = test.kind == "question" or test.area == IN_THE_BUILDING
    return below and not needs_of(test, None, unit).roof
