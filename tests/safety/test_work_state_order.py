"""The order of work out to a test and back, what fails on the way, and what expires."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.safety.work_state_neighbours import ready_for
from tests.safety.work_state_samples import (
    ENERGISED,
    HANDS_IN,
    JUMPERED,
    PLAIN_UNIT,
    RUNNING,
    SAMPLES,
)
from tests.safety.work_state_ways import done, way
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.guards import allowed
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.route import steps_to, steps_to_leave, switch_minutes
from troubleshoot.safety.steps import Step
from troubleshoot.safety.transitions import (
    after_step,
    after_test,
    expire,
    resume_voids,
)
from troubleshoot.safety.work_state import UnitAtWork, WorkState, cautious, open_items

DEAD = ready_for(SAMPLES.index((HANDS_IN, None)), PLAIN_UNIT)


def test_hands_go_in_after_the_steps_of_osha_and_nfpa_in_their_order() -> None:
    # 29 CFR 1910.333(b)(2)(ii)-(iv) and NFPA 70E 120.5 (reference value SAF-002): stop and
    # disconnect, lock and tag, discharge capacitors, test with a proven tester, only then work.
    # The tester is verified before and after each test for absence of voltage (NFPA 70E 120.5, from
    # memory). The first test for dead, before the discharge: common practice, no source.
    assert way(WorkState(), HANDS_IN) == [
        "roof-conditions",
        "tell-occupants",
        "tester-proof",
        "stop-by-controls",
        "lockout",
        "panels-off",
        "verified-dead",
        "tester-proof",
        "capacitor-discharge",
        "verified-dead",
        "tester-proof",
    ]


def test_the_second_time_round_is_marked() -> None:
    steps = steps_to(WorkState(), needs_of(HANDS_IN, None, PLAIN_UNIT), PLAIN_UNIT)
    assert [step.id for step in steps if step.again] == [
        "tester-proof",
        "verified-dead",
        "tester-proof",
    ]


def test_the_way_back_puts_leads_and_panels_on_clears_people_and_only_then_takes_the_lock_off() -> (
    None
):
    # 29 CFR 1910.147(e) asks for the area to be clear before the lock comes off (from memory; the
    # order itself is common practice, no source).
    left = after_test(DEAD, HANDS_IN, "compressor 1", (), PLAIN_UNIT)
    assert [step.id for step in steps_to_leave(left, PLAIN_UNIT)] == [
        "leads-back",
        "panels-on",
        "tools-clear",
        "lock-off",
        "restart-and-watch",
    ]


def test_every_capacitor_and_drive_is_discharged_one_by_one() -> None:
    unit = UnitAtWork(("capacitor compressor 1", "capacitor blower"), ("blower drive",))
    steps = steps_to(WorkState(), needs_of(HANDS_IN, None, unit), unit)
    assert [(step.id, step.place) for step in steps if step.place] == [
        ("capacitor-discharge", "capacitor compressor 1"),
        ("capacitor-discharge", "capacitor blower"),
        ("drive-discharge", "blower drive"),
    ]


def test_the_roof_edge_needs_protection_within_15_ft() -> None:
    # 29 CFR 1910.28(b)(13) (reference value SAF-019); 6 to 15 ft: protected, or a warning line.
    roof = Step("roof-conditions")
    near = after_step(WorkState(), roof, ("edge-under-6-ft",), PLAIN_UNIT)
    assert way(near, HANDS_IN)[0] == "edge-protection"
    assert done(near, "edge-protection").roof == "go"
    assert after_step(near, roof, ("edge-6-to-15-ft",), PLAIN_UNIT).roof == "edge-near"
    assert after_step(near, roof, ("edge-under-6-ft", "lightning"), PLAIN_UNIT).roof == "no-go"


def test_a_meter_that_fails_its_proof_takes_back_all_that_it_proved() -> None:
    proof = Step("tester-proof")
    failed = after_step(DEAD, proof, ("failed",), PLAIN_UNIT)
    assert failed.dead == "not-shown"
    assert failed.discharged == frozenset()
    assert way(failed, HANDS_IN)[:2] == ["tester-proof", "verified-dead"]


def test_a_circuit_found_live_sends_to_the_second_source() -> None:
    live = after_step(DEAD, Step("verified-dead"), ("live",), PLAIN_UNIT)
    assert way(live, HANDS_IN)[:2] == ["second-source-locked", "verified-dead"]


@pytest.mark.parametrize("outcome", ["ghost-volts", "unexplained", "live"])
def test_only_dead_is_dead(outcome: str) -> None:
    assert after_step(DEAD, Step("verified-dead"), (outcome,), PLAIN_UNIT).dead == "not-shown"


def test_a_capacitor_that_holds_its_charge_is_bled_again_and_dead_is_tested_again() -> None:
    holds = Step("capacitor-discharge", "capacitor blower")
    charged = after_step(DEAD, holds, ("holds-charge",), PLAIN_UNIT)
    assert way(charged, HANDS_IN) == ["capacitor-discharge", "verified-dead", "tester-proof"]


def test_a_unit_that_does_not_stop_by_its_controls_can_still_be_locked_out() -> None:
    state = done(WorkState(), "roof-conditions", "tell-occupants")
    stuck = after_step(state, Step("stop-by-controls"), ("runs-on",), PLAIN_UNIT)
    assert "stop-by-controls" not in way(stuck, HANDS_IN)
    assert "the unit stopped so that nothing can start" in allowed(
        stuck, ENERGISED, None, PLAIN_UNIT
    )


def test_a_second_source_found_at_lock_out_is_locked_before_anything_else() -> None:
    state = done(WorkState(), "roof-conditions", "tell-occupants", "stop-by-controls")
    found = after_step(state, Step("lockout"), ("locked", "second-source"), PLAIN_UNIT)
    steps = way(found, HANDS_IN)
    assert steps.index("second-source-locked") < steps.index("verified-dead")


def test_a_temporary_jumper_is_counted_out_before_the_unit_is_left() -> None:
    state = after_test(WorkState(roof="go", panels="off"), JUMPERED, None, (), PLAIN_UNIT)
    assert "temporary jumper still in: call-by-jumper" in open_items(state)
    assert steps_to_leave(state, PLAIN_UNIT)[0] == Step("jumper-out", "call-by-jumper")


def test_lock_off_and_a_motor_that_ran_void_dead_and_discharged() -> None:
    assert expire(DEAD, "lock-off").energy == "running-open"
    for voided in (expire(DEAD, "lock-off"), expire(DEAD, "motor-ran")):
        assert voided.dead == "not-shown"
        assert voided.discharged == frozenset()


def test_an_hour_voids_what_was_seen_of_the_weather() -> None:
    assert expire(DEAD, "hour-passed") == replace(DEAD, roof="not-checked")


@pytest.mark.parametrize(
    ("minutes", "same_day", "voids"),
    [(29.9, True, False), (30.0, True, True), (5.0, False, True)],
)
def test_half_an_hour_or_another_day_away_voids(
    minutes: float, same_day: bool, voids: bool
) -> None:
    # common practice, no source
    assert resume_voids(minutes, same_day) is voids


def test_after_resuming_everything_that_others_could_change_is_asked_again() -> None:
    watched = replace(DEAD, fire_panel="on-test", second_source="locked", gas="shut")
    resumed = expire(replace(watched, leads_off=frozenset({"compressor 1"})), "resumed")
    assert way(resumed, HANDS_IN)[:5] == [
        "roof-conditions",
        "tell-occupants",
        "tester-proof",
        "stop-by-controls",
        "lockout",
    ]
    assert "second-source-locked" in way(resumed, HANDS_IN)
    assert resumed.fire_panel == "unsure"
    assert not resumed.gas_swept
    assert resumed.leads_off == {"compressor 1"}


def test_leads_left_off_overnight_are_put_back_dead_before_the_unit_runs() -> None:
    resumed = expire(replace(DEAD, leads_off=frozenset({"compressor 1"})), "resumed")
    steps = way(resumed, RUNNING)
    assert steps.index("verified-dead") < steps.index("leads-back") < steps.index("lock-off")


def test_undoing_lock_off_does_not_put_the_lock_back_on() -> None:
    ready = replace(DEAD, area_clear=True, doors_open=False)
    powered = after_step(ready, Step("lock-off"), ("switched-on",), PLAIN_UNIT)
    assert powered.power == "on"
    assert allowed(cautious(DEAD, powered), HANDS_IN, None, PLAIN_UNIT)


def test_undoing_a_recovery_leaves_a_circuit_that_is_neither_opened_nor_run() -> None:
    full = WorkState(circuits=(("circuit 1", "gauges-on"),))
    empty = WorkState(circuits=(("circuit 1", "charge-recovered"),))
    either = cautious(full, empty)
    assert either.circuit("circuit 1") == "charge-unsure"
    assert either.circuits_without_charge == ("circuit 1",)


def test_changing_the_state_costs_the_minutes_of_the_rule_base(shipped: Knowledge) -> None:
    needs = needs_of(HANDS_IN, None, PLAIN_UNIT)
    steps = steps_to(WorkState(), needs, PLAIN_UNIT)
    minutes = [shipped.tests[s.id].minutes + shipped.tests[s.id].wait_minutes for s in steps]
    cost = switch_minutes(WorkState(), needs, PLAIN_UNIT, shipped.tests)
    assert cost == pytest.approx(sum(minutes))
    assert switch_minutes(DEAD, needs, PLAIN_UNIT, shipped.tests) == 0
