"""What a step is declared to bring, it brings; and what is led to is never out of its turn."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest

from tests.safety.work_state_neighbours import DEMANDING_UNIT, ready_for
from tests.safety.work_state_samples import SAMPLES
from troubleshoot.safety import step_guards as guards
from troubleshoot.safety.bringing import BROUGHT_BY, next_towards, stands
from troubleshoot.safety.declared import CONFIRMED, STEPS
from troubleshoot.safety.stages import STAGES
from troubleshoot.safety.step_guards import StepGuard
from troubleshoot.safety.steps import Step
from troubleshoot.safety.transitions import after_step, after_test, refusals
from troubleshoot.safety.work_state import UnitAtWork, WorkState

UNIT = replace(DEMANDING_UNIT, burns_gas=True, ports_outside=True)
"""With its ports outside nothing has to be dead for gauges: behind a panel stages make way."""
PLACES = {"circuit": ("circuit 1", "circuit 2"), "tap": ("inlet tap", "outlet tap")}
GUARDED = WorkState(
    roof="go", occupants_told=True, fire_panel="on-test", arc_clothing=True, area_clear=True
)  # fmt: skip


def places(guard: StepGuard) -> tuple[str | None, ...]:
    """Where a guard can be wanted: at each place of its kind, or on the unit as a whole."""
    of_unit = (guards.CHARGE_BACK, guards.TAPS_PLUGGED)
    kinds = {step.at for step in BROUGHT_BY[guard]} & PLACES.keys()
    return PLACES[kinds.pop()] if kinds and guard not in of_unit else (None,)


def brought(guard: StepGuard, place: str | None, state: WorkState) -> Iterator[WorkState]:
    """The states on the way to a guard standing, each step confirmed when its turn has come."""
    for _ in range(40):
        if stands(guard, place, state, UNIT):
            return
        step = next_towards(guard, place, state, UNIT)
        assert not refusals(state, step, UNIT), step
        yield (state := after_step(state, step, (CONFIRMED[step.id],), UNIT))
    pytest.fail(f"{guard.words}: never stands")


LATER = {
    guards.SHOWN_DEAD, guards.TESTED_DEAD_AGAIN, guards.DEAD_PROVED, guards.CALLED_TO_RUN,
    guards.GAUGES_ON, guards.CHARGE_BLED, guards.BLED_BEFORE_TESTING_AGAIN,
    guards.HOSE_ON, guards.PLUG_IN, guards.PLUG_TESTED, guards.TAPS_PLUGGED,
    guards.PANELS_CLOSED, guards.HOOKED_UP, guards.NOTHING_HOOKED_UP, guards.CLIPS_DEAD,
}  # fmt: skip
"""What is led to from some states alone: an earlier stage has made way for it."""


@pytest.mark.parametrize(
    "guard", [guard for guard in BROUGHT_BY if guard not in LATER], ids=lambda guard: guard.words
)
def test_whatever_can_be_brought_is_brought_by_steps_in_their_turn(guard: StepGuard) -> None:
    for index, (test, place) in enumerate(SAMPLES):
        ready = ready_for(index, UNIT)
        for state in (WorkState(), ready, after_test(ready, test, place, (), UNIT)):
            for where in places(guard):
                list(brought(guard, where, state))


GIVEN = {
    guards.EDGE_NEAR, guards.POWER_ON, guards.PANELS_NOT_ON, guards.CIRCUIT_CLOSED,
    guards.GAUGES_MAY_BE_ON, guards.CHARGE_WAS_OUT, guards.NOT_SAID_WHETHER_OPENED,
    guards.WAS_OPENED,
}  # fmt: skip
"""What only says which state a step is for."""


def test_whoever_is_refused_a_step_is_led_to_what_it_waits_for() -> None:
    waited_for = {guard for step in STEPS.values() for guard in step.after}
    assert {guard.words for guard in waited_for - BROUGHT_BY.keys()} == {g.words for g in GIVEN}


def test_the_stages_want_nothing_that_no_step_brings() -> None:
    assert {stage.guard for stage in STAGES} <= BROUGHT_BY.keys()


@pytest.mark.parametrize(
    ("guard", "state", "step"),
    [
        (guards.ROOF_SAFE, WorkState(), "roof-conditions"),
        (guards.ROOF_SAFE, WorkState(roof="edge-near"), "edge-protection"),
        (guards.PANELS_OFF, replace(GUARDED, calls="off"), "panels-off-energised"),
        (guards.PANELS_OFF, replace(GUARDED, power="locked-out"), "panels-off"),
        (guards.PANELS_OFF, replace(GUARDED, power="unsure", calls="off"), "lockout"),
        (guards.CHARGE_BACK, GUARDED.with_circuit("circuit 1", "under-vacuum"), "stop-by-controls"),
    ],
)  # fmt: skip
def test_of_several_steps_the_one_made_for_the_state_is_led_to(
    guard: StepGuard, state: WorkState, step: str
) -> None:
    assert next_towards(guard, None, state, UnitAtWork()) == Step(step)


def test_a_step_made_for_the_state_is_led_to_whatever_else_it_waits_for() -> None:
    unswept = replace(GUARDED, calls="off")
    step = next_towards(guards.PANELS_OFF, None, unswept, UnitAtWork(burns_gas=True))
    assert step == Step("combustible-gas-sweep")


OPENED = replace(
    GUARDED, power="locked-out", calls="off", panels="off", dead="proved", gas="shut",
    clear=frozenset({"combustible-gas-sweep"}),
)  # fmt: skip
TWO = frozenset({"b", "a"})


@pytest.mark.parametrize(
    ("guard", "state", "step"),
    [
        (guards.JUMPERS_OUT, replace(OPENED, jumpers=TWO), Step("jumper-out", "a")),
        (guards.TAPS_PLUGGED, replace(OPENED, taps_open=TWO), Step("manometer-off", "a")),
        (guards.CHARGE_BACK, OPENED.with_circuit("b", "charge-recovered"),
         Step("circuit-evacuated", "b")),
        (guards.CHARGE_BACK, OPENED.with_circuit("b", "evacuated"), Step("charge-put-back", "b")),
    ],
)  # fmt: skip
def test_what_is_left_in_a_unit_is_dealt_with_place_by_place(
    guard: StepGuard, state: WorkState, step: Step
) -> None:
    assert next_towards(guard, None, state, UnitAtWork()) == step


def test_a_charge_is_bled_at_each_place_that_still_holds_one() -> None:
    state = replace(
        GUARDED, power="locked-out", calls="off", panels="off", meter="proved", dead="shown"
    )
    found = []
    while not stands(guards.CHARGE_BLED, None, state, UNIT):
        found.append(step := next_towards(guards.CHARGE_BLED, None, state, UNIT))
        state = after_step(state, step, (CONFIRMED[step.id],), UNIT)
    assert found == [
        *(Step("capacitor-discharge", place) for place in UNIT.capacitors),
        *(Step("drive-discharge", place) for place in UNIT.drives),
    ]


def test_what_a_step_brings_again_is_said_to_be_the_second_time() -> None:
    again = {step.id: step.brings_again for step in STEPS.values() if step.brings_again}
    assert again.keys() == {"verified-dead", "tester-proof"}
    state = replace(
        GUARDED, power="locked-out", calls="off", panels="off", meter="proved", dead="shown",
        only_steps_since_proof=True,
        discharged=frozenset({*UNIT.capacitors, *UNIT.drives}),
    )  # fmt: skip
    step = next_towards(guards.TESTED_DEAD_AGAIN, None, state, UNIT)
    assert step == Step("verified-dead", again=True)
