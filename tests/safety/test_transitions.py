"""What voids states: a step out of turn, a test that leaves things behind, an absence, an hour."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tests.building import fault
from tests.safety.work_state_samples import PLAIN_UNIT, TWO_CIRCUITS, a_test
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import Step
from troubleshoot.safety.transitions import (
    after_repair,
    after_step,
    after_test,
    expire,
    failed,
    refusals,
    resume_voids,
)
from troubleshoot.safety.work_state import UnitAtWork, WorkState

DEAD = WorkState(
    power="locked-out", panels="off", calls="off", dead="proved", meter="proved",
    discharged=frozenset({"capacitor blower"}), occupants_told=True, roof="go", gas="shut",
    second_source="locked", clear=frozenset({"room-carbon-monoxide"}), second_person=True,
    arc_clothing=True,
    fire_panel="on-test", area_clear=True, leads_off=frozenset({"lead"}),
    jumpers=frozenset({"jumper"}), circuits=(("circuit 1", "gauges-on"), ("circuit 2",
    "under-vacuum")),
)  # fmt: skip
NONE: frozenset[str] = frozenset()


@pytest.mark.parametrize("step", sorted(set(CONFIRMED) - {"tools-clear", "lock-off"}))
def test_the_area_is_no_longer_clear_once_work_goes_on(step: str) -> None:
    state = WorkState(roof="go", area_clear=True)
    after = after_step(state, Step(step, "circuit 1"), (CONFIRMED[step],), PLAIN_UNIT)
    assert not after.area_clear


def test_the_area_stays_clear_while_the_lock_comes_off() -> None:
    state = replace(DEAD, leads_off=NONE, jumpers=NONE, circuits=())
    after = after_step(state, Step("lock-off"), ("switched-on",), PLAIN_UNIT)
    assert (after.area_clear, after.power, after.calls) == (True, "on", "off")
    unclear = replace(state, area_clear=False)
    assert after_step(unclear, Step("tools-clear"), ("clear",), PLAIN_UNIT).area_clear


def test_a_step_out_of_turn_takes_away_and_confirms_nothing() -> None:
    unlocked = WorkState(roof="go", meter="proved", panels="off")
    assert refusals(unlocked, Step("verified-dead"), PLAIN_UNIT)
    after = after_step(unlocked, Step("verified-dead"), ("dead",), PLAIN_UNIT)
    assert after.dead == "not-shown"
    after = after_step(replace(DEAD, meter="failed"), Step("verified-dead"), ("live",), PLAIN_UNIT)
    assert (after.dead, after.second_source) == ("not-shown", "found")
    in_turn = after_step(replace(DEAD, jumpers=NONE), Step("verified-dead"), ("dead",), PLAIN_UNIT)
    assert in_turn.dead == "tested-again"


def test_a_step_that_was_none_has_confirmed_nothing_and_taken_away_what_it_would_have() -> None:
    before = replace(DEAD, dead="tested", power="unsure")
    after = failed(before, DEAD, Step("tester-proof"), PLAIN_UNIT)
    assert (after.meter, after.dead, after.power) == ("failed", "not-shown", "unsure")
    back = failed(DEAD, replace(DEAD, power="on"), Step("panels-on"), PLAIN_UNIT)
    assert back.power == "unsure"
    told = failed(DEAD, DEAD, Step("tell-occupants"), PLAIN_UNIT)
    assert not told.occupants_told


@pytest.mark.parametrize("step", sorted(CONFIRMED))
def test_a_sweep_or_step_asked_as_a_test_is_that_step(step: str) -> None:
    test = a_test(step, kind="look", needs_state=("gauges-on",))
    done = after_test(DEAD, test, "circuit 1", (CONFIRMED[step],), TWO_CIRCUITS)
    assert done == after_step(DEAD, Step(step, "circuit 1"), (CONFIRMED[step],), TWO_CIRCUITS)


@pytest.mark.parametrize(
    ("power", "kind", "at", "leads"),
    [
        ("locked-out", "measurement", "motor", {"lead", "motor"}),
        ("locked-out", "measurement", None, {"lead", "unit"}),
        ("locked-out", "look", "motor", {"lead"}),
        ("on", "measurement", "motor", {"lead"}),
        ("unsure", "measurement", "motor", {"lead"}),
    ],
)
def test_a_measurement_in_a_dead_unit_takes_leads_off(
    power: Any, kind: str, at: str | None, leads: set[str]
) -> None:
    test = a_test("t", kind=kind)
    after = after_test(replace(DEAD, power=power), test, at, (), PLAIN_UNIT)
    assert after == replace(DEAD, power=power, leads_off=frozenset(leads), area_clear=False)


@pytest.mark.parametrize("power", ["on", "unsure"])
def test_a_reading_with_leads_lifted_told_of_a_live_unit_may_have_left_them_off(power: Any) -> None:
    """A walk found it: read off as a repair's proof, and a live look came with the leads off."""
    told = a_test("t", kind="measurement", work_state="locked-out")
    after = after_test(replace(DEAD, power=power), told, "motor", (), PLAIN_UNIT)
    assert after.leads_off == {"lead", "motor"}


@pytest.mark.parametrize("work_state", ["locked-out", "energised-open", "any"])
def test_the_meter_is_proved_right_before_a_test_for_dead_with_no_other_test_between(
    work_state: Any,
) -> None:
    proved = replace(DEAD, only_steps_since_proof=True)
    after = after_test(proved, a_test("t", work_state=work_state), None, (), PLAIN_UNIT)
    assert (after.meter, after.only_steps_since_proof) == ("proved", False)


@pytest.mark.parametrize(("work_state", "stay"), [("locked-out", False), ("any", True)])
def test_for_work_by_hand_gloves_come_off_and_help_may_go(work_state: Any, stay: bool) -> None:
    after = after_test(DEAD, a_test("t", work_state=work_state), None, (), PLAIN_UNIT)
    assert (after.arc_clothing, after.second_person) == (stay, stay)


@pytest.mark.parametrize(("calls", "then"), [("off", "on"), ("on", "on"), ("stuck-on", "stuck-on")])
def test_a_jumper_calls_the_unit_to_run_behind_an_open_panel(calls: Any, then: str) -> None:
    state = replace(DEAD, power="on", panels="on", calls=calls)
    test = a_test("by-jumper", kind="look", hazards=("temporary-jumper",))
    after = after_test(state, test, None, (), PLAIN_UNIT)
    jumpers = frozenset({"jumper", "by-jumper"})
    assert after == replace(state, jumpers=jumpers, calls=then, panels="off", area_clear=False)


@pytest.mark.parametrize(
    ("hazard", "need", "condition"),
    [
        ("nitrogen-pressure", "charge-recovered", "under-nitrogen"),
        ("compressor-in-vacuum", "charge-recovered", "under-vacuum"),
        ("nitrogen-pressure", "gauges-on", "charge-recovered"),
        ("compressor-in-vacuum", "gauges-on", "charge-recovered"),
        ("some-other", "charge-recovered", "charge-recovered"),
    ],
)
def test_a_pressure_or_vacuum_test_leaves_its_circuit_so(
    hazard: str, need: str, condition: str
) -> None:
    state = WorkState(circuits=(("circuit 1", "charge-recovered"),))
    test = a_test("t", kind="look", needs_state=(need,), hazards=(hazard,))
    assert after_test(state, test, "circuit 1", (), TWO_CIRCUITS).circuits == (
        ("circuit 1", condition),
    )


@pytest.mark.parametrize(
    ("outcomes", "condition"),
    [
        (("dry",), "evacuated"),
        (("wet",), "under-vacuum"),
        (("dry", "leaking"), "under-vacuum"),
        ((), "under-vacuum"),
    ],
)
def test_only_a_vacuum_that_was_seen_to_hold_lets_a_charge_in(
    outcomes: tuple[str, ...], condition: str, shipped: Knowledge
) -> None:
    state = WorkState(circuits=(("circuit 1", "charge-recovered"),))
    decay = shipped.tests["vacuum-decay"]
    after = after_test(state, decay, "circuit 1", outcomes, TWO_CIRCUITS)
    assert after.circuit("circuit 1") == condition


def test_a_vacuum_that_nobody_watched_is_drawn_down_once_more() -> None:
    before = (("circuit 1", "evacuated"), ("circuit 2", "charge-recovered"))
    away = expire(WorkState(circuits=before), "resumed")  # type: ignore[arg-type]
    assert away.circuits == (("circuit 1", "under-vacuum"), ("circuit 2", "charge-recovered"))


@pytest.mark.parametrize(
    ("hands", "leads"), [("at-leads", {"lead", "unit"}), ("inside", {"lead"}), ("outside", None)]
)
@pytest.mark.parametrize("power", ["locked-out", "unsure", "on"])
def test_a_repair_done_dead_lays_off_gloves_and_help_and_may_have_taken_leads_off(
    power: Any, hands: str, leads: set[str] | None
) -> None:
    """29 CFR 1910.333(b)(2)(v)(A), from memory: all is looked at before the power is back.

    A repair of more than half an hour is told when the lock is no longer sure, and leads are off.
    """
    worn = fault("worn")
    mended = replace(worn, repair=replace(worn.repair, hands=hands))
    state = replace(DEAD, power=power)
    laid_off = {"arc_clothing": False, "second_person": False}
    dead = power != "on" and leads is not None
    left = {"leads_off": frozenset(leads or ()), "doors_open": True}
    then = replace(state, **laid_off, **left) if dead else state
    then = replace(then, area_clear=leads is None)
    assert after_repair(state, mended, UnitAtWork()) == then


@pytest.mark.parametrize(
    ("who", "rule", "circuit", "opens"),
    [
        (("refrigerant",), "all", None, True),
        (("refrigerant", "electrical"), "all", None, True),
        (("technician", "refrigerant"), "any", None, False),
        (("technician",), "all", None, False),
        (("refrigerant",), "all", "stays-closed", False),
    ],
)
@pytest.mark.parametrize("hands", ["at-leads", "inside", "outside"])
@pytest.mark.parametrize("power", ["locked-out", "on"])
def test_a_repair_of_a_circuit_leaves_it_open_and_empty_as_far_as_anybody_knows(
    power: Any, hands: str, who: Any, rule: str, circuit: str | None, opens: bool
) -> None:
    """What only a certified person does opens a circuit (40 CFR 82.161), or its card denies it."""
    worn = fault("worn")
    repair = replace(worn.repair, who=who, who_rule=rule, hands=hands, circuit=circuit)
    clear = frozenset({"refrigerant-sweep-a2l"})
    state = replace(DEAD, power=power, clear=clear, circuits=())
    state = state.with_circuit("circuit 1", "charge-recovered")
    after = after_repair(state, replace(worn, repair=repair), TWO_CIRCUITS)
    both = (after.circuit("circuit 1"), after.circuit("circuit 2"))
    assert both == (("opened", "opened-unsure") if opens else ("charge-recovered", "closed"))
    assert ("refrigerant-sweep-a2l" in after.clear) is not opens


AWAY: dict[str, Any] = {
    "power": "unsure", "calls": "on", "dead": "not-shown", "discharged": NONE,
    "meter": "not-proved", "second_source": "found", "gas": "unsure", "gas_swept": False,
    "clear": NONE, "occupants_told": False, "fire_panel": "unsure", "roof": "not-checked",
    "second_person": False, "arc_clothing": False, "area_clear": False,
    "circuits": (("circuit 1", "gauges-unsure"), ("circuit 2", "under-vacuum")),
}  # fmt: skip


def test_after_an_absence_all_that_others_could_change_is_open() -> None:
    assert expire(DEAD, "resumed") == replace(DEAD, **AWAY)
    assert expire(DEAD, "reopened") == replace(DEAD, **AWAY, panels="unsure")


def test_after_an_absence_what_was_as_found_is_as_found() -> None:
    found = WorkState(meter="failed")
    assert expire(found, "resumed") == replace(found, meter="not-proved")
    assert expire(replace(found, gas_swept=False), "resumed").gas_swept is False
    others = expire(found, "reopened")
    assert (others.gas_swept, others.panels, others.power) == (False, "unsure", "on")
    assert (expire(found, "resumed").gas, others.gas) == ("on", "unsure")


def test_each_event_voids_its_own() -> None:
    powered = {"power": "on", "calls": "on", "dead": "not-shown", "discharged": NONE}
    assert expire(DEAD, "lock-off") == replace(DEAD, **powered)  # type: ignore[arg-type]
    assert expire(DEAD, "motor-ran") == replace(DEAD, dead="not-shown", discharged=NONE)
    assert expire(DEAD, "hour-passed") == replace(DEAD, roof="not-checked")


@pytest.mark.parametrize(
    ("minutes", "same_day", "voids"),
    [
        (0.0, True, False), (29.99, True, False), (30.0, True, True), (30.5, True, True),
        (-0.1, True, True), (None, True, True), (1.0, False, True),
    ],
)  # fmt: skip
def test_half_an_hour_another_day_or_a_time_that_cannot_be_voids(
    minutes: float | None, same_day: bool, voids: bool
) -> None:
    assert resume_voids(minutes, same_day) is voids


@pytest.mark.parametrize("condition", ["gauges-on", "gauges-unsure", "under-nitrogen", "evacuated"])
def test_a_circuit_step_without_a_place_is_about_the_whole_unit(condition: Any) -> None:
    turn = {
        "gauges-on": ("gauges-off", "charge-recovered"),
        "gauges-unsure": ("gauges-on", "gauges-off"),
        "under-nitrogen": ("circuit-to-zero",),
        "evacuated": ("circuit-to-zero", "charge-put-back"),
    }
    ready = WorkState(roof="go", power="locked-out", circuits=(("unit", condition),))
    steps = ("gauges-on", "gauges-off", "charge-recovered", "circuit-to-zero", "charge-put-back")
    outside = UnitAtWork(ports_outside=True)
    come = {s for s in steps if not refusals(ready, Step(s), outside)}
    assert come == set(turn[condition])
    emptied = replace(ready, circuits=(("unit", "charge-recovered"),))
    assert refusals(emptied, Step("circuit-evacuated"), UnitAtWork()) == ()
    assert refusals(emptied, Step("charge-put-back"), UnitAtWork()) != ()


@pytest.mark.parametrize("step", ["gauges-on", "gauges-off"])
@pytest.mark.parametrize(("power", "stay"), [("locked-out", False), ("on", True)])
def test_for_hoses_that_go_on_dead_gloves_for_an_arc_come_off(
    power: Any, stay: bool, step: str
) -> None:
    """At ports outside nobody who is dressed for the open cabinet undresses."""
    state = replace(DEAD, power=power, arc_clothing=True, second_person=True)
    after = after_step(state, Step(step, "circuit 1"), (CONFIRMED[step],), PLAIN_UNIT)
    assert (after.arc_clothing, after.second_person) == (stay, stay)
