"""The more careful of two work states, tried on every state that some way leads to."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from tests.safety.work_state_neighbours import states_on_every_way
from tests.safety.work_state_samples import SAMPLES, UNIT
from troubleshoot.knowledge.model import Test
from troubleshoot.safety.guards import unmet
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.work_state import WorkState, cautious

STATES = st.sampled_from(states_on_every_way(UNIT))


@given(STATES, STATES, st.sampled_from(SAMPLES))
def test_hands_go_in_from_a_cautious_state_only_if_from_both(
    one: WorkState, other: WorkState, sample: tuple[Test, str | None]
) -> None:
    test, place = sample
    needs = needs_of(test, place, UNIT)
    if test.work_state == "locked-out" and not unmet(cautious(one, other), needs):
        assert not unmet(one, needs)
        assert not unmet(other, needs)


@given(STATES, STATES, STATES)
def test_being_cautious_does_not_depend_on_order(
    one: WorkState, other: WorkState, third: WorkState
) -> None:
    assert cautious(one, other) == cautious(other, one)
    assert cautious(one, one) == one
    assert cautious(cautious(one, other), third) == cautious(one, cautious(other, third))
