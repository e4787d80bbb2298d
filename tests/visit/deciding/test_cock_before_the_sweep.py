"""The sweep that lifts a STOP for gas is made with gas on the joints: the cock is open first."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.visit.deciding.test_stops import next_of, start
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import COCK_LOOK, GAS_OPEN, GAS_SHUT, GAS_SWEEP
from troubleshoot.safety.stops.afresh import way_to
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.safety.stops.record import HandOverResult, Spot
from troubleshoot.safety.transitions import after_step
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import (
    Answered,
    Event,
    Halted,
    Reopened,
    Started,
    StepDone,
    TakenAfresh,
    VisitEnded,
    replay,
)

CLEAR: Spot = ("all-clear", None)
SWEEP: Spot = (GAS_SWEEP, None)
RESULT = HandOverResult("gas-fitter", "union tightened", "0 % LEL", "2026-11-26 09:30")
CLOSED = VisitEnded("stopped", "the gas utility, 9:20", "2026-11-25 09:21")
CLEARED = Answered("all-clear", None, ("cleared",))
UP = StepDone("roof-conditions", ("safe",))
NOTHING = Answered(GAS_SWEEP, None, (), text="0 % LEL")


@pytest.fixture(scope="module")
def decider(shipped: Knowledge) -> Decider:
    return Decider(shipped)


def smelled(*more: Event, who: tuple[str, ...] | None = None) -> list[Event]:
    """Gas was smelled by the caller; the job was handed over and came back."""
    back = Reopened.on("gas-odour", RESULT, CLEAR, who)
    return [*start("gas-smell"), Halted.over("gas-odour", CLEAR), CLOSED, back, *more]


def stands(decider: Decider, events: list[Event]) -> bool:
    return bool(conclude_visit(decider.reasoner, replay(decider.knowledge, events)).standing_stops)


def is_asked(decision: Decision, test: str) -> bool:
    return decision.test is not None and decision.test.id == test


def test_the_cock_is_seen_open_after_the_all_clear_and_before_the_sweep(decider: Decider) -> None:
    """Regression: the STOP went on a sweep of joints behind a cock that nobody had looked at."""
    assert is_asked(next_of(decider, smelled()), "all-clear")
    events = smelled(CLEARED, UP)
    decision = next_of(decider, events)
    assert is_asked(decision, COCK_LOOK) and decision.stop is not None and decision.aim == SWEEP
    events.append(StepDone(COCK_LOOK, ("open",)))
    assert is_asked(next_of(decider, events), GAS_SWEEP)
    assert not stands(decider, [*events, NOTHING])


def test_a_cock_found_shut_is_opened_by_who_may_before_the_sweep(decider: Decider) -> None:
    events = smelled(CLEARED, UP, StepDone(COCK_LOOK, ("shut",)))
    asked = []
    while not is_asked(decision := next_of(decider, events), GAS_SWEEP):
        assert decision.step is not None and decision.stop is not None
        asked.append(decision.step.id)
        events.append(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
    assert asked[-1] == GAS_OPEN and replay(decider.knowledge, events).work.gas == "on"
    assert GAS_SHUT not in asked


@pytest.mark.parametrize("seen", ["shut", "cannot-tell"])
def test_where_nobody_sees_it_open_the_stop_stands(seen: str, decider: Decider) -> None:
    """Who may not open it is led no further, and hands the job over."""
    events = smelled(CLEARED, UP, StepDone(COCK_LOOK, (seen,)), who=("technician",))
    decision = next_of(decider, events)
    assert not is_asked(decision, GAS_SWEEP) and stands(decider, events)
    assert decision.kind == ("stop" if seen == "shut" else "step")


def test_a_trace_that_was_made_good_is_swept_for_with_the_cock_open(decider: Decider) -> None:
    trace = Answered(GAS_SWEEP, None, (), text="4 % LEL")
    shut = StepDone(GAS_SHUT, ("shut",))
    events = [*start(), UP, trace, Halted.over("gas-trace", SWEEP), shut]
    assert next_of(decider, events).kind == "stop"
    events.append(TakenAfresh.of(SWEEP, "union remade by the gas fitter"))
    seen = []
    while not is_asked(decision := next_of(decider, events), GAS_SWEEP):
        assert decision.step is not None
        seen.append(decision.step.id)
        events.append(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
    assert seen[-1] == GAS_OPEN


def test_no_cock_is_opened_onto_an_open_tap(decider: Decider) -> None:
    state = replay(decider.knowledge, smelled(CLEARED, UP))
    shut = replace(state.work, gas="shut", taps_open=frozenset({"outlet tap"}))
    assert way_to(decider.knowledge, replace(state, work=shut), SWEEP) is None
    unsure = replace(shut, gas="unsure")
    way = way_to(decider.knowledge, replace(state, work=unsure), SWEEP)
    assert way is not None and [step.id for step in way.steps] == [COCK_LOOK]


@pytest.mark.parametrize("test", ["gas-manifold-pressure", "gas-inlet-pressure-all-firing"])
@pytest.mark.parametrize("tap", ["outlet tap", "inlet tap"])
def test_a_pressure_of_the_gas_train_is_taken_afresh_with_its_manometer_on_the_tap(
    test: str, tap: str, decider: Decider
) -> None:
    """Regression: with the manometer on, the way ended at a STOP, and its reading never came.

    A tap without one is plugged before the cock is opened.
    """
    knowledge, spot = decider.knowledge, (test, None)
    state = replay(knowledge, [*start(), UP])
    state = replace(state, work=replace(state.work, gas="shut", taps_open=frozenset({tap})))
    taken = []
    while (way := way_to(knowledge, state, spot)) is not None and way.steps:
        taken.append(way.steps[0].id)
        assert taken[-1] != GAS_OPEN or state.work.taps_open <= state.work.hoses_on
        work = after_step(state.work, way.steps[0], (CONFIRMED[way.steps[0].id],), state.at_work)
        state = replace(state, work=work)
    assert way is not None and way.reading == spot and GAS_OPEN in taken


def test_a_burner_that_was_over_fired_is_read_again_and_its_stop_goes(decider: Decider) -> None:
    """Regression: nobody who met that STOP could lift it."""
    manifold: Spot = ("gas-manifold-pressure", None)
    unit = {"heat": "gas", "fuel": "natural-gas", "manifold-rating": "3.5 in. w.c."}
    high = Answered(manifold[0], text="5.5 in. w.c.")
    stop = Halted.over("over-fired-or-wrong-fuel", manifold)
    again = TakenAfresh.of(manifold, "the gas fitter set the regulator")
    events = [*start(unit=unit), UP, high, stop, again]
    while (decision := next_of(decider, events)).step is not None:
        events.append(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
    assert is_asked(decision, manifold[0])
    events.append(Answered(manifold[0], text="3.5 in. w.c."))
    assert not stands(decider, events)


def test_any_other_finding_is_read_behind_the_cock_as_it_stands(decider: Decider) -> None:
    """Only a sweep shows nothing of the joints behind a shut one."""
    state = replay(decider.knowledge, [*start(), UP])
    shut = replace(state, work=replace(state.work, gas="shut"))
    way = way_to(decider.knowledge, shut, ("wiring-burn-marks", None))
    assert way is not None and way.steps
    assert not {GAS_OPEN, COCK_LOOK} & {step.id for step in way.steps}


def test_a_unit_that_burns_no_gas_has_no_cock_to_look_at(decider: Decider) -> None:
    call = replace(start("gas-smell")[0], unit={"heat": "electric"})
    assert isinstance(call, Started)
    state = replay(decider.knowledge, [call, *smelled(CLEARED, UP)[1:]])
    state = replace(state, work=replace(state.work, gas="unsure"))
    way = way_to(decider.knowledge, state, SWEEP)
    assert way is not None and not way.steps and way.reading == SWEEP
