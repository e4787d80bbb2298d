"""The order of work at 480 V and at the gas train: who is there, what is worn, what is swept."""

from __future__ import annotations

from dataclasses import replace
from itertools import product
from typing import Any

import pytest

from tests.safety.work_state_neighbours import ready_for
from tests.safety.work_state_samples import (
    BURNING,
    ENERGISED,
    GAS_SHUT,
    GAS_UNIT,
    HANDS_IN,
    HANDS_IN_LOOK,
    JUMPERED,
    MANIFOLD,
    RUNNING,
    RUNNING_OPEN,
    SAMPLES,
    WATCHED_UNIT,
    a_test,
)
from tests.safety.work_state_ways import done, way
from troubleshoot.knowledge.model import Test
from troubleshoot.safety import step_guards as guards
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.route import steps_to_leave
from troubleshoot.safety.steps import LOCK_OFF, RESTART, Step
from troubleshoot.safety.transitions import after_step, after_test, refusals
from troubleshoot.safety.work_state import UnitAtWork, WorkState


def test_a_watched_480_volt_unit_with_flammable_refrigerant_asks_for_more() -> None:
    line = a_test("line-volts", work_state="energised-open", exposes="line")
    assert way(WorkState(), line, WATCHED_UNIT) == [
        "roof-conditions",
        "tell-occupants",
        "tell-fire-panel",
        "second-person",
        "arc-clothing-on",
        "refrigerant-sweep-a2l",
        "tester-proof",
        "stop-by-controls",
        "panels-off-energised",
    ]


@pytest.mark.parametrize("volts_480", [True, False])
def test_what_is_not_yet_proved_dead_at_480_volts_is_opened_in_arc_rated_clothing(
    volts_480: bool,
) -> None:
    # NFPA 70E 120.5: live until it has been tested dead (from memory).
    unit = UnitAtWork(volts_480=volts_480)
    steps = way(WorkState(), HANDS_IN, unit)
    dressed = ["arc-clothing-on"] if volts_480 else []
    at = steps.index("lockout") + 1
    assert steps[at:][: 2 + len(dressed)] == [*dressed, "panels-off", "verified-dead"]
    opened = done(WorkState(panels="off"), *steps[:at], unit=unit)
    assert way(opened, HANDS_IN, unit)[: 1 + len(dressed)] == [*dressed, "verified-dead"]


def test_nobody_dresses_in_front_of_an_open_live_panel() -> None:
    """The power is locked out first, and put back once all of it is on."""
    unit = UnitAtWork(volts_480=True)
    open_live = WorkState(panels="off", calls="off", roof="go", occupants_told=True)
    steps = way(replace(open_live, second_person=True, meter="proved"), ENERGISED, unit)
    assert steps == ["lockout", "arc-clothing-on", "tools-clear", "lock-off"]
    on = replace(open_live, second_person=True, meter="proved", arc_clothing=True)
    assert way(on, ENERGISED, unit) == []


def test_who_goes_live_from_dead_work_dresses_and_fetches_help_right_before_the_switch() -> None:
    """What was on for the test for dead comes off for work by hand; it was never asked again."""
    unit = UnitAtWork(volts_480=True)
    dead = done(WorkState(), *way(WorkState(), HANDS_IN, unit), unit=unit)
    assert dead.arc_clothing
    looked_in = after_test(dead, HANDS_IN_LOOK, None, (), unit)
    assert way(looked_in, ENERGISED, unit) == [
        "doors-shut", "second-person", "arc-clothing-on", "tools-clear", "lock-off"
    ]  # fmt: skip
    leads_off = after_test(dead, HANDS_IN, None, (), unit)
    steps = way(leads_off, ENERGISED, unit)
    assert steps == ["leads-back", *way(looked_in, ENERGISED, unit)]
    stuck = replace(looked_in, calls="stuck-on")
    assert way(stuck, ENERGISED, unit) == [
        "doors-shut", "second-person", "arc-clothing-on", "stop-by-controls", "tools-clear",
        "lock-off",
    ]  # fmt: skip


@pytest.mark.parametrize("outcome", ["on", "cannot"])
def test_a_step_with_hands_in_a_dead_unit_has_the_clothing_and_the_help_asked_for_again(
    outcome: str,
) -> None:
    """Regression: only a test with hands in did; after a manometer was put on nobody was asked."""
    unit = UnitAtWork(volts_480=True, burns_gas=True)
    steps = way(WorkState(), MANIFOLD, unit)
    opened = steps.index("manometer-on")
    assert {"second-person", "arc-clothing-on"} <= set(steps[opened:])
    dead = done(WorkState(), *steps[:opened], unit=unit)
    assert dead.arc_clothing
    tried = after_step(dead, Step("manometer-on", "outlet tap"), (outcome,), unit)
    assert (tried.arc_clothing, tried.second_person) == (False, False)


def test_what_is_done_by_hand_once_dead_is_proved_is_declared_so() -> None:
    by_hand = {step.id for step in STEPS.values() if step.by_hand}
    once_dead = {step.id for step in STEPS.values() if guards.DEAD_PROVED in step.after}
    assert by_hand >= once_dead - {"fuse-clips-dead"}  # tested in the gloves for an arc
    assert by_hand - {"leads-back", "hook-up-dead", "manometer-on", "manometer-off"} == {
        "circuit-held",
        "charge-recovered", "circuit-to-zero", "circuit-evacuated", "charge-put-back",
    }  # fmt: skip


def test_after_a_break_hands_stay_out_of_an_open_live_480_volt_unit_undressed_or_alone() -> None:
    unit = UnitAtWork(volts_480=True)
    left = WorkState(panels="off", calls="off", roof="go", occupants_told=True)
    assert [step.id for step in steps_to_leave(left, unit)][:2] == ["lockout", "panels-on"]
    jumped = replace(left, calls="on", jumpers=frozenset({"contactor coil 1"}))
    first = [step.id for step in steps_to_leave(jumped, unit)][:3]
    assert first == ["second-person", "arc-clothing-on", "jumper-out"]
    low = UnitAtWork(volts_480=False)
    assert [step.id for step in steps_to_leave(left, low)][:2] == ["lockout", "panels-on"]


def test_the_panel_comes_off_a_unit_that_stands_still() -> None:
    steps = way(WorkState(), RUNNING_OPEN)
    assert steps.index("stop-by-controls") < steps.index("panels-off-energised")
    assert steps[-2:] == ["tools-clear", "restart-and-watch"]


def test_a_gas_train_is_opened_with_the_cock_shut_and_swept_and_lit_only_after_a_sweep() -> None:
    steps = way(WorkState(), GAS_SHUT)
    assert steps.index("gas-cock-shut") < steps.index("combustible-gas-sweep")
    # Regression: the call was left on, and a burner without gas tries to light again and again
    assert steps.index("stop-by-controls") < steps.index("gas-cock-shut")
    stuck = way(WorkState(calls="stuck-on"), GAS_SHUT)
    assert stuck.index("gas-cock-shut") < stuck.index("lockout")
    shut = ready_for(SAMPLES.index((GAS_SHUT, None)), GAS_UNIT)
    back = way(shut, BURNING, GAS_UNIT)
    assert back.index("gas-cock-open") < back.index("combustible-gas-sweep")
    assert back.index("combustible-gas-sweep") < back.index("lock-off")


@pytest.mark.parametrize("test", [RUNNING_OPEN, ENERGISED, JUMPERED, MANIFOLD], ids=lambda t: t.id)
def test_a_gas_unit_is_swept_before_its_panel_is_opened_live_and_before_anything_is_called_for(
    test: Test,
) -> None:
    # NFPA 54 and the lighting instructions of gas appliances (ANSI Z21 and Z83 series, from
    # memory): smell for gas before anything is lit. Before a live panel too: common practice.
    steps = way(WorkState(), test, GAS_UNIT)
    opened_live = "lock-off" if test is MANIFOLD else "panels-off-energised"
    assert steps.index("combustible-gas-sweep") < steps.index(opened_live)
    assert "combustible-gas-sweep" in way(WorkState(gas_swept=True), test, GAS_UNIT)


def test_a_gas_unit_is_swept_before_its_power_is_back_where_a_burner_may_be_lit() -> None:
    """Behind an open panel always, behind a shut one unless it is called to cool.

    Nobody smelt for gas before a call for heat that only put a unit back.
    """
    dead = ready_for(SAMPLES.index((HANDS_IN, None)), GAS_UNIT)
    cooling = replace(GAS_UNIT, called_to_cool=True)
    for test, unit in ((RUNNING_OPEN, GAS_UNIT), (RUNNING_OPEN, cooling), (RUNNING, GAS_UNIT)):
        steps = way(dead, test, unit)
        assert steps.index("combustible-gas-sweep") < steps.index("lock-off")
    assert "combustible-gas-sweep" not in way(dead, RUNNING, cooling)


@pytest.mark.parametrize("step", [LOCK_OFF, RESTART])
@pytest.mark.parametrize(
    ("panels", "gas", "called_to_cool", "waits"),
    [
        ("on", "on", True, False),
        ("on", "shut", False, False),
        ("on", "on", False, True),
        ("on", "unsure", False, True),
        ("off", "on", True, True),
        ("unsure", "on", True, True),
        ("off", "shut", False, True),
        ("unsure", "shut", False, True),
    ],
)
def test_power_and_a_call_wait_for_the_sweep_unless_a_closed_unit_cannot_light(
    step: str, panels: Any, gas: Any, called_to_cool: bool, waits: bool
) -> None:
    """A panel or a cock that is not known counts as open."""
    unit = replace(GAS_UNIT, called_to_cool=called_to_cool)
    unswept = WorkState(panels=panels, gas=gas)
    swept = replace(unswept, clear=frozenset({"combustible-gas-sweep"}))
    sweep = guards.GAS_SWEPT_BEFORE_A_CALL.words
    assert (sweep in refusals(unswept, Step(step), unit)) is waits
    assert sweep not in refusals(swept, Step(step), unit)
    assert sweep not in refusals(unswept, Step(step), replace(unit, burns_gas=False))


def test_a_live_cabinet_is_opened_upstream_before_it_is_closed() -> None:
    """Regression: it was closed live, with hands beside the belt, as it still was under 480 V."""
    # NFPA 70E (2024) 110.3 and 130.2(A) (from memory): an energised part is put in a safe state
    # before somebody works at it, where that can be done.
    # 29 CFR 1910.147(d): nor does anybody put a guard on beside a wheel that may turn.
    for unit, panels in product((UnitAtWork(volts_480=True), UnitAtWork()), ("off", "unsure")):
        live = WorkState(panels=panels, roof="go", arc_clothing=True, second_person=True)
        steps = [step.id for step in steps_to_leave(live, unit)]
        assert steps.index("lockout") < steps.index("panels-on") < steps.index("lock-off")
