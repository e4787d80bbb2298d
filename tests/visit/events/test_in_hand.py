"""What is in hand, on the way or on the screen, may have been begun by whoever leaves it."""

from __future__ import annotations

from dataclasses import replace
from functools import reduce

import pytest

from tests.visit.events.effects import DEAD, ONE, TWO, changed
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.places import Place, spoken
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.route import steps_to
from troubleshoot.safety.transitions import after_step
from troubleshoot.safety.work_state import WorkState
from troubleshoot.visit.events import (
    Aimed,
    Answered,
    Closing,
    DangerReported,
    NotUnderstood,
    Resumed,
    Shown,
    Skipped,
    StateGone,
    StepDone,
    after,
)
from troubleshoot.visit.events.event import Event
from troubleshoot.visit.events.way import put_aside
from troubleshoot.visit.state import VisitState

JUMPER = "call-jumpered-at-unit"
LEAVING = [
    Aimed("weather-pattern"),
    Closing(),
    Resumed(minutes_away=None, same_day=False),
    DangerReported("smoke-or-heat-now", "smoke", "all-clear"),
    NotUnderstood({"event": "nothing of today"}),
]


def with_in_hand(
    shipped: Knowledge, visit: VisitState, test: str, at: Place | None = None
) -> VisitState:
    """The visit with a test on the screen, and every step before it done."""
    needs = needs_of(shipped.tests[test], spoken(at), visit.at_work)
    way = steps_to(WorkState(), needs, visit.at_work)
    work = reduce(
        lambda work, step: after_step(work, step, (CONFIRMED[step.id],), visit.at_work),
        way, WorkState(),
    )  # fmt: skip
    return replace(visit, work=work, aim=(test, at))


@pytest.mark.parametrize("leaves", LEAVING)
def test_whoever_leaves_a_test_in_hand_may_have_begun_it(
    leaves: Event, shipped: Knowledge, visit: VisitState
) -> None:
    """`done` at the jumper test put panels on and power back, and never asked for the jumper."""
    in_hand = with_in_hand(shipped, visit, JUMPER)
    assert after(shipped, in_hand, leaves).work.jumpers == {JUMPER}
    on_the_way = replace(in_hand, work=replace(in_hand.work, roof="not-checked"))
    assert after(shipped, on_the_way, leaves).work.jumpers == frozenset()


@pytest.mark.parametrize("leaves", LEAVING)
def test_a_reading_that_was_in_hand_for_a_computed_test_may_have_been_begun(
    leaves: Event, shipped: Knowledge, visit: VisitState
) -> None:
    """Regression: the meter still counted as just proved, and the test for dead came without."""
    line = with_in_hand(shipped, visit, "suction-line-temperature", ONE)
    proved = replace(line.work, meter="proved", only_steps_since_proof=True)
    on_the_way = replace(line, work=proved, aim=("superheat", ONE))
    in_hand = after(shipped, on_the_way, Shown("suction-line-temperature", "circuit 1"))
    assert not after(shipped, in_hand, leaves).work.only_steps_since_proof
    below = replace(in_hand, work=replace(proved, roof="not-checked"))
    if isinstance(leaves, Aimed | Closing):
        assert after(shipped, below, leaves).work.only_steps_since_proof


@pytest.mark.parametrize("leaves", [*LEAVING, StateGone(("second-source-locked",), "one more")])
def test_a_look_put_before_what_is_aimed_at_may_have_been_begun_too(
    leaves: Event, shipped: Knowledge, visit: VisitState
) -> None:
    """Regression: a look was left as another feed was told of, and nobody asked for its door."""
    on_the_way = replace(with_in_hand(shipped, visit, JUMPER), aim=("vacuum-decay", ONE))
    in_hand = after(shipped, on_the_way, Shown(JUMPER))
    assert after(shipped, in_hand, leaves).work.jumpers == {JUMPER}
    if not isinstance(leaves, StateGone):
        assert after(shipped, in_hand, leaves).shown is None


def test_what_is_shown_is_in_hand_until_it_is_answered_or_left(
    shipped: Knowledge, visit: VisitState
) -> None:
    """Another that is shown, a step and what is skipped leave it; another reading does not."""
    on_the_way = with_in_hand(shipped, visit, JUMPER)
    changed(shipped, on_the_way, Shown("suction-pressure"), shown=("suction-pressure", None))
    at_one = Shown("suction-pressure", "circuit 2")
    changed(shipped, on_the_way, at_one, shown=("suction-pressure", TWO))
    at_both = Shown("suction-pressure", ("circuit 1", "circuit 2"))
    changed(shipped, on_the_way, at_both, shown=("suction-pressure", ONE))
    shown = replace(on_the_way, aim=None, shown=(JUMPER, None))
    begun = {
        event: after(shipped, shown, event)
        for event in (at_one, Skipped("weather-pattern"), StepDone("roof-conditions", ("safe",)))
    }
    assert [state.shown for state in begun.values()] == [("suction-pressure", TWO), None, None]
    assert begun[at_one].work.jumpers == {JUMPER}
    assert begun[Skipped("weather-pattern")].work.jumpers == {JUMPER}
    kept = after(shipped, shown, Answered("weather-pattern", outcomes=("always",)))
    assert kept.shown == (JUMPER, None)
    assert after(shipped, shown, Answered(JUMPER, outcomes=("starts",))).shown is None


@pytest.mark.parametrize("leaves", LEAVING)
def test_a_computed_test_that_is_asked_for_itself_may_have_been_begun(
    leaves: Event, shipped: Knowledge, visit: VisitState
) -> None:
    """Regression: airflow off the blower's table was in hand, and the meter as just proved."""
    asked = with_in_hand(shipped, visit, "airflow-by-blower-table")
    proved = replace(asked.work, meter="proved", only_steps_since_proof=True)
    in_hand = replace(asked, work=proved)
    assert not after(shipped, in_hand, leaves).work.only_steps_since_proof


@pytest.mark.parametrize("leaves", LEAVING)
def test_what_is_read_while_a_burner_tries_may_have_been_begun(
    leaves: Event, shipped: Knowledge, visit: VisitState
) -> None:
    """Regression: trials were being watched, and the meter still counted as just proved."""
    watched = with_in_hand(shipped, visit, "ignition-trials")
    no_flame = replace(watched.work, meter="proved", only_steps_since_proof=True, unburnt=True)
    for tries in (True, False):
        in_hand = replace(watched, work=no_flame, trying=tries)
        left = after(shipped, in_hand, leaves).work
        if isinstance(leaves, Aimed | Closing):
            assert left.only_steps_since_proof is not tries
        else:
            assert not (tries and left.only_steps_since_proof)


@pytest.mark.parametrize("leaves", [Aimed("weather-pattern"), Closing()])
def test_no_other_test_is_shown_on_the_gas_of_a_try_nor_begun_on_it(
    leaves: Event, shipped: Knowledge, visit: VisitState
) -> None:
    """The meter is still just proved: that gas had to be waited out before it was shown."""
    line = with_in_hand(shipped, visit, "airflow-by-blower-table")
    proved = replace(line.work, meter="proved", only_steps_since_proof=True)
    for unburnt in (True, False):
        in_hand = replace(line, work=replace(proved, unburnt=unburnt), trying=True)
        assert after(shipped, in_hand, leaves).work.only_steps_since_proof is unburnt


@pytest.mark.parametrize("leaves", LEAVING)
def test_a_test_shown_beside_what_is_hooked_up_may_have_been_begun_too(
    leaves: Event, shipped: Knowledge, visit: VisitState
) -> None:
    """Regression: on a round the meter in the rod's lead hid that a pressure was in hand."""
    alone = with_in_hand(shipped, visit, "gas-manifold-pressure")
    lead = frozenset({"flame rod lead"})
    hooked = replace(
        alone.work, hooked_up=lead, leads_off=lead, meter="proved", only_steps_since_proof=True
    )
    in_hand = replace(alone, work=hooked)
    assert not after(shipped, in_hand, leaves).work.only_steps_since_proof


@pytest.mark.parametrize("leaves", [*LEAVING, Resumed(minutes_away=5, same_day=True)])
def test_a_finding_to_be_taken_afresh_may_have_been_begun_like_any_test(
    leaves: Event, shipped: Knowledge, visit: VisitState
) -> None:
    """A danger called at it left the meter as just proved, and the test for dead came without."""
    in_hand = with_in_hand(shipped, visit, JUMPER)
    afresh = replace(in_hand, aim=None, fresh=in_hand.aim)
    assert after(shipped, afresh, leaves).work.jumpers == {JUMPER}
    assert not after(shipped, afresh, leaves).work.only_steps_since_proof
    on_the_way = replace(afresh, work=replace(in_hand.work, roof="not-checked"))
    assert after(shipped, on_the_way, leaves).work.jumpers == frozenset()


@pytest.mark.parametrize("leaves", LEAVING)
def test_the_leads_of_a_test_in_hand_may_be_off_where_it_was(
    leaves: Event, shipped: Knowledge, visit: VisitState
) -> None:
    there = visit.unit.layout.places("capacitor")[-1]
    in_hand = with_in_hand(shipped, visit, "capacitance-out-of-circuit", there)
    assert after(shipped, in_hand, leaves).work.leads_off == {str(there)}


def test_a_test_in_hand_that_is_aimed_at_anew_is_not_left(
    shipped: Knowledge, visit: VisitState
) -> None:
    """It is still on the screen: nobody may have begun it who has not answered it."""
    in_hand = with_in_hand(shipped, visit, JUMPER)
    again = Aimed(JUMPER, reason="it tells most", chosen=True)
    changed(shipped, in_hand, again, aim_reason="it tells most")


@pytest.mark.parametrize("leaves", [Aimed("weather-pattern"), Closing()])
def test_a_sweep_that_was_chosen_once_more_and_left_still_stands_as_it_was_read(
    leaves: Event, shipped: Knowledge, visit: VisitState
) -> None:
    """No hands were in the unit, and nobody has read anything else; whoever skips it says so."""
    sweep = "combustible-gas-sweep"
    in_hand = replace(visit, work=replace(DEAD, clear=frozenset({sweep})), aim=(sweep, None))
    assert after(shipped, in_hand, leaves).work == in_hand.work
    assert after(shipped, in_hand, Skipped(sweep)).work.clear == frozenset()


def test_what_is_put_aside_is_no_more_on_the_screen_though_nothing_was_aimed_at(
    shipped: Knowledge, visit: VisitState
) -> None:
    shown = replace(visit, aim=None, shown=("weather-pattern", None))
    assert put_aside(shipped, shown).shown is None


def test_a_look_beside_a_tap_that_is_still_open_may_have_been_begun(
    shipped: Knowledge, visit: VisitState
) -> None:
    """With its manometer off the tap holds up a pressure, and no look at anything else."""
    work = WorkState(area_clear=True, taps_open=frozenset({"inlet tap"}))
    state = replace(visit, work=work, aim=None, fresh=None)
    skipped = after(shipped, state, Skipped("weather-pattern"))
    assert skipped.work == replace(work, area_clear=False)
