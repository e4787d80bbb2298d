"""In which condition of a refrigerant circuit each thing that a step waits for stands.

By hand. Refrigerant is recovered before a circuit is opened: 40 CFR 82.156, from memory; the rest
common practice.
"""

from __future__ import annotations

from typing import get_args

import pytest

from troubleshoot.safety import step_guards as guards
from troubleshoot.safety.step_guards import StepGuard
from troubleshoot.safety.work_state import Circuit, UnitAtWork, WorkState

CONDITIONS: tuple[Circuit, ...] = get_args(Circuit)
REPAIRED = {"opened", "opened-unsure"}
DRAWN_DOWN = {"under-vacuum", "evacuated"}
NOT_OURS = {"closed", "gauges-unsure"}
GUARDED: list[tuple[StepGuard, set[str]]] = [
    (guards.CIRCUIT_CLOSED, NOT_OURS),
    (guards.GAUGED, {*CONDITIONS} - NOT_OURS),
    (guards.GAUGES_ARE_OFF, {*CONDITIONS} - {"gauges-on", "gauges-unsure"}),
    (guards.GAUGES_ON, {"gauges-on", "charge-unsure"}),
    (guards.GAUGES_MAY_BE_ON, {"gauges-on", "gauges-unsure"}),
    (guards.CHARGE_IN, {*NOT_OURS, "gauges-on"}),
    (guards.CHARGE_IS_OUT, {"charge-recovered"}),
    (guards.CHARGE_WAS_OUT, {"under-nitrogen", *DRAWN_DOWN, *REPAIRED}),
    (guards.MAY_BE_EVACUATED, {"charge-recovered", "under-vacuum"}),
    (guards.EVACUATED, {"evacuated"}),
    # What nobody has said to be opened was opened, until it is said.
    (guards.WAS_OPENED, REPAIRED),
    (guards.OPENED_HOLDS, {*CONDITIONS} - REPAIRED),
    (guards.OPENED_KNOWN, {*CONDITIONS} - {"opened-unsure"}),
    (guards.NOT_SAID_WHETHER_OPENED, {"opened-unsure"}),
]


@pytest.mark.parametrize(("guard", "stands"), GUARDED, ids=[guard.words for guard, _ in GUARDED])
def test_a_circuit_is_ready_for_a_step_in_these_conditions_and_no_other(
    guard: StepGuard, stands: set[str]
) -> None:
    unit = UnitAtWork(circuits=("circuit 1", "circuit 2"))
    ready = {
        condition
        for condition in CONDITIONS
        if guard.stands(WorkState().with_circuit("circuit 1", condition), "circuit 1", unit)
    }
    assert ready == stands


@pytest.mark.parametrize("condition", CONDITIONS)
def test_no_lock_comes_off_a_unit_with_a_circuit_that_may_be_without_its_charge(
    condition: Circuit,
) -> None:
    """A compressor that runs on an empty circuit burns out, or draws air in."""
    state = WorkState().with_circuit("circuit 2", condition)
    holds = condition in {*NOT_OURS, "gauges-on"}
    assert guards.CHARGE_BACK.stands(state, "unit", UnitAtWork()) is holds
    assert state.circuits_without_charge == (() if holds else ("circuit 2",))
