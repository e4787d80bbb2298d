"""The next step from a state towards what is needed: one missing thing at a time."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.needs import Needs
from troubleshoot.safety.route import (
    next_step,
    steps_to,
    steps_to_leave,
    steps_to_leave_cold,
    steps_to_leave_off,
    switch_minutes,
)
from troubleshoot.safety.steps import Step, minutes_of
from troubleshoot.safety.work_state import UnitAtWork, WorkState

PLAIN = UnitAtWork(circuits=("circuit 1", "circuit 2"), ports_outside=True)
INSIDE = replace(PLAIN, ports_outside=False)
WATCHED = replace(PLAIN, flammable=True, fire_panel=True)
A2L = "refrigerant-sweep-a2l"
READY = WorkState(
    roof="go", occupants_told=True, meter="proved", only_steps_since_proof=True, area_clear=True
)
LOCKED = replace(READY, power="locked-out", calls="off", panels="off")
STOPPED = replace(READY, calls="off")
RUN, OPEN, LIVE = Needs("running"), Needs("running-open"), Needs("energised-open")
DEAD = Needs("locked-out")
GAUGED = (("circuit 1", "gauges-on"),)
EMPTIED = (("circuit 1", "charge-recovered"),)
NO_VACUUM = Needs(no_vacuum=True)


def at(state: WorkState, condition: Any, place: str = "circuit 1") -> WorkState:
    return state.with_circuit(place, condition)


def that(state: WorkState, **facts: Any) -> WorkState:
    return replace(state, **facts)


def named(steps: tuple[Step, ...]) -> list[str]:
    return [f"{step.id} {step.place}" if step.place else step.id for step in steps]


JUMPERS = frozenset({"b", "a"})
TAPPED = that(
    LOCKED, dead="proved", gas="shut", clear=frozenset({"combustible-gas-sweep"}),
    taps_open=frozenset({"inlet tap"}), hoses_on=frozenset({"inlet tap"}),
)  # fmt: skip
CASES: list[tuple[str, WorkState, Needs, UnitAtWork, Step | None]] = [
    ("roof looked at", WorkState(), Needs(roof=True), PLAIN, Step("roof-conditions")),
    ("edge near", WorkState(roof="edge-near"), Needs(roof=True), PLAIN, Step("edge-protection")),
    ("roof not needed", WorkState(), Needs(), PLAIN, None),
    ("gas shut", READY, Needs(gas="shut"), PLAIN, Step("gas-cock-shut")),
    ("gas is shut", that(READY, gas="shut"), Needs(gas="shut"), PLAIN, None),
    ("meter", that(READY, meter="failed"), Needs(meter=True), PLAIN, Step("tester-proof")),
    ("meter for dead work", that(LOCKED, meter="failed"), DEAD, PLAIN, Step("tester-proof")),
    ("meter not needed", that(STOPPED, meter="failed", panels="off"), LIVE, PLAIN, None),
    ("gauges", READY, Needs(circuits=GAUGED), PLAIN, Step("gauges-on", "circuit 1")),
    ("gauges inside", READY, Needs(circuits=GAUGED), INSIDE, Step("stop-by-controls")),
    ("gauges inside dead", that(LOCKED, dead="proved"), Needs(circuits=GAUGED), INSIDE,
     Step("gauges-on", "circuit 1")),
    ("gauges inside on", at(READY, "gauges-on"), Needs("running", circuits=GAUGED), INSIDE, None),
    ("gauges unsure", at(READY, "gauges-unsure"), Needs(circuits=GAUGED), PLAIN,
     Step("gauges-on", "circuit 1")),
    ("gauges swept", READY, Needs(circuits=GAUGED), WATCHED, Step(A2L)),
    ("gauges no recovery", at(READY, "gauges-on"), Needs(circuits=GAUGED), PLAIN, None),
    ("gauges evacuated", at(LOCKED, "charge-recovered"), Needs(circuits=GAUGED), PLAIN,
     Step("circuit-evacuated", "circuit 1")),
    ("gauges charged", at(LOCKED, "evacuated"), Needs(circuits=GAUGED), PLAIN,
     Step("charge-put-back", "circuit 1")),
    ("gauges charged locked", at(STOPPED, "charge-recovered"), Needs(circuits=GAUGED), PLAIN,
     Step("lockout")),
    ("gauges not the other", at(at(READY, "gauges-on"), "charge-recovered", "circuit 2"),
     Needs(circuits=GAUGED), PLAIN, None),
    ("stop then lock", READY, DEAD, PLAIN, Step("stop-by-controls")),
    ("tell then lock", that(STOPPED, occupants_told=False), DEAD, PLAIN, Step("tell-occupants")),
    ("tell the panel", STOPPED, DEAD, WATCHED, Step("tell-fire-panel")),
    ("the panel is told", that(STOPPED, fire_panel="on-test"), DEAD, WATCHED, Step("lockout")),
    ("unstoppable", that(READY, calls="stuck-on"), DEAD, PLAIN, Step("lockout")),
    ("unstoppable jumpered", that(READY, calls="stuck-on", jumpers=JUMPERS), DEAD, PLAIN,
     Step("jumper-out", "a")),
    ("second source", that(LOCKED, second_source="found"), DEAD, PLAIN,
     Step("second-source-locked")),
    ("no second source to charge", at(that(LOCKED, second_source="found"), "evacuated"),
     Needs(circuits=GAUGED), PLAIN, Step("charge-put-back", "circuit 1")),
    ("unsure lock", that(STOPPED, power="unsure"), RUN, PLAIN, Step("lockout")),
    ("unsure lock, nothing live", that(STOPPED, power="unsure"), Needs(), PLAIN, None),
    ("panels swept", that(LOCKED, panels="on", fire_panel="on-test"), DEAD, WATCHED, Step(A2L)),
    ("panels off though proved", that(LOCKED, dead="proved", panels="on"), DEAD, PLAIN,
     Step("panels-off")),
    ("meter at once", that(LOCKED, dead="tested"), DEAD, PLAIN, Step("tester-proof", again=True)),
    ("dead again", that(LOCKED, dead="shown"), DEAD, PLAIN, Step("verified-dead", again=True)),
    ("meter after a test", that(LOCKED, only_steps_since_proof=False), DEAD, PLAIN,
     Step("tester-proof")),
    ("meter again", that(LOCKED, dead="tested-again"), DEAD, PLAIN,
     Step("tester-proof", again=True)),
    ("recover", at(that(LOCKED, dead="proved"), "gauges-on"), Needs("locked-out",
     circuits=EMPTIED), PLAIN, Step("charge-recovered", "circuit 1")),
    ("recover swept", at(that(LOCKED, dead="proved"), "gauges-on"), Needs("locked-out",
     circuits=EMPTIED), WATCHED, Step(A2L)),
    ("to zero", at(that(LOCKED, dead="proved"), "under-nitrogen"), Needs("locked-out",
     circuits=EMPTIED), PLAIN, Step("circuit-to-zero", "circuit 1")),
    ("emptied", at(that(LOCKED, dead="proved"), "charge-recovered"), Needs("locked-out",
     circuits=EMPTIED), PLAIN, None),
    ("gauged in dead work", at(that(LOCKED, dead="proved"), "gauges-on"), Needs("locked-out",
     circuits=GAUGED), PLAIN, None),
    ("vacuum gauged", at(that(LOCKED, dead="proved"), "under-vacuum"), Needs("locked-out",
     circuits=GAUGED), PLAIN, Step("circuit-evacuated", "circuit 1")),
    ("vacuum locked", at(STOPPED, "under-vacuum"), NO_VACUUM, PLAIN, Step("lockout")),
    ("vacuum broken", at(LOCKED, "under-vacuum"), NO_VACUUM, PLAIN,
     Step("circuit-to-zero", "circuit 1")),
    ("vacuum unsure", at(LOCKED, "charge-unsure"), NO_VACUUM, PLAIN,
     Step("charge-recovered", "circuit 1")),
    ("first vacuum", at(at(LOCKED, "under-vacuum"), "charge-unsure", "circuit 2"), NO_VACUUM,
     PLAIN, Step("circuit-to-zero", "circuit 1")),
    ("nitrogen is no vacuum", at(LOCKED, "under-nitrogen"), NO_VACUUM, PLAIN, None),
    ("vacuum borne", at(LOCKED, "under-vacuum"), Needs(), PLAIN, None),
    ("leads", that(LOCKED, dead="proved", leads_off=frozenset({"x"})), RUN, PLAIN,
     Step("leads-back")),
    ("leads dead", that(LOCKED, leads_off=frozenset({"x"})), RUN, PLAIN, Step("verified-dead")),
    ("leads may stay", that(LOCKED, dead="proved", leads_off=frozenset({"x"})), DEAD, PLAIN,
     None),
    ("vacuum held broken", at(LOCKED, "evacuated"), NO_VACUUM, PLAIN,
     Step("circuit-to-zero", "circuit 1")),
    ("first charge", at(at(LOCKED, "evacuated"), "under-vacuum", "circuit 2"), RUN, PLAIN,
     Step("charge-put-back", "circuit 1")),
    ("no charge on air", at(LOCKED, "charge-recovered"), RUN, PLAIN,
     Step("circuit-evacuated", "circuit 1")),
    ("drawn down again", at(LOCKED, "under-vacuum"), RUN, PLAIN,
     Step("circuit-evacuated", "circuit 1")),
    ("charge swept", at(LOCKED, "evacuated"), RUN, WATCHED, Step(A2L)),
    ("charge from nitrogen", at(LOCKED, "under-nitrogen"), RUN, PLAIN,
     Step("circuit-to-zero", "circuit 1")),
    ("gas swept", that(LOCKED, gas_swept=False), RUN, PLAIN, Step("combustible-gas-sweep")),
    ("gas not swept dead", that(LOCKED, dead="proved", gas_swept=False), DEAD, PLAIN, None),
    ("gas on", that(LOCKED, gas="shut"), Needs("running", gas="on"), PLAIN,
     Step("gas-cock-open")),
    ("gas on once stopped", that(READY, gas="shut"), Needs("running", gas="on"), PLAIN,
     Step("stop-by-controls")),
    ("gas on once nothing calls", that(LOCKED, calls="on", gas="shut"),
     Needs("running", gas="on"), PLAIN, Step("stop-by-controls")),
    ("gas on with no jumper in", that(STOPPED, panels="off", gas="shut", jumpers=JUMPERS),
     Needs("running-open", gas="on"), PLAIN, Step("jumper-out", "a")),
    ("gas may stay shut", that(STOPPED, gas="shut"), RUN, PLAIN, Step("restart-and-watch")),
    ("panels on", LOCKED, RUN, PLAIN, Step("panels-on")),
    ("panels on jumpered", that(LOCKED, jumpers=JUMPERS), RUN, PLAIN, Step("jumper-out", "a")),
    ("panels on stopped", that(READY, panels="off"), RUN, PLAIN, Step("stop-by-controls")),
    ("panels on callable", that(LOCKED, calls="on"), RUN, PLAIN, Step("panels-on")),
    ("panels off locked", that(LOCKED, panels="on"), OPEN, PLAIN, Step("panels-off")),
    ("panels off live", STOPPED, OPEN, PLAIN, Step("panels-off-energised")),
    ("panels off swept", that(STOPPED, fire_panel="on-test"), OPEN, WATCHED, Step(A2L)),
    ("panels not sure", that(STOPPED, panels="unsure"), LIVE, PLAIN,
     Step("panels-off-energised")),
    ("jumper before a panel not sure", that(LOCKED, panels="unsure", jumpers=JUMPERS), LIVE, PLAIN,
     Step("jumper-out", "a")),
    ("tap plugged", TAPPED, OPEN, PLAIN, Step("manometer-off", "inlet tap")),
    ("tap plugged dead", that(TAPPED, dead="not-shown"), OPEN, PLAIN, Step("verified-dead")),
    ("lock off", LOCKED, LIVE, PLAIN, Step("lock-off")),
    ("clear first", that(LOCKED, area_clear=False), LIVE, PLAIN, Step("tools-clear")),
    ("lock off callable", that(LOCKED, calls="on"), LIVE, PLAIN, Step("stop-by-controls")),
    ("lock off jumpered", that(LOCKED, jumpers=JUMPERS), LIVE, PLAIN, Step("jumper-out", "a")),
    ("live stopped", that(READY, panels="off"), LIVE, PLAIN, Step("stop-by-controls")),
    ("live jumpered", that(STOPPED, panels="off", jumpers=JUMPERS), LIVE, PLAIN,
     Step("jumper-out", "a")),
    ("live tell", that(READY, panels="off", occupants_told=False), LIVE, PLAIN,
     Step("tell-occupants")),
    ("restart clear", that(STOPPED, area_clear=False), RUN, PLAIN, Step("tools-clear")),
    ("runs", READY, RUN, PLAIN, None),
    ("runs open", that(READY, panels="off"), OPEN, PLAIN, None),
]  # fmt: skip


@pytest.mark.parametrize(
    ("state", "needs", "unit", "step"), [c[1:] for c in CASES], ids=[c[0] for c in CASES]
)
def test_the_next_step(state: WorkState, needs: Needs, unit: UnitAtWork, step: Step | None) -> None:
    assert next_step(state, needs, unit) == step


@pytest.mark.parametrize(
    ("state", "unit", "steps"),
    [
        (READY, PLAIN, []),
        (that(READY, roof="not-checked"), PLAIN, ["roof-conditions"]),
        (at(READY, "gauges-on", "circuit 2"), PLAIN, ["gauges-off circuit 2"]),
        (at(that(LOCKED, dead="proved"), "gauges-on"), INSIDE,
         ["gauges-off circuit 1", "panels-on", "tools-clear", "lock-off", "restart-and-watch"]),
        (at(READY, "gauges-on"), INSIDE,
         ["stop-by-controls", "lockout", "panels-off", "verified-dead", "tester-proof",
          "verified-dead", "tester-proof", "gauges-off circuit 1", "panels-on", "tools-clear",
          "lock-off", "restart-and-watch"]),
        (at(READY, "gauges-unsure"), WATCHED, [A2L, "gauges-off circuit 1"]),
        (that(READY, fire_panel="unsure"), PLAIN, ["fire-panel-back"]),
        (that(READY, fire_panel="on-test"), WATCHED, ["fire-panel-back"]),
        (that(STOPPED, gas="shut"), PLAIN,
         ["gas-cock-open", "combustible-gas-sweep", "tools-clear", "restart-and-watch"]),
        (at(LOCKED, "charge-recovered"), PLAIN,
         ["circuit-evacuated circuit 1", "charge-put-back circuit 1", "gauges-off circuit 1",
          "panels-on", "tools-clear", "lock-off", "restart-and-watch"]),
    ],
)  # fmt: skip
def test_a_unit_is_left_with_nothing_of_ours_in_it(
    state: WorkState, unit: UnitAtWork, steps: list[str]
) -> None:
    assert named(steps_to_leave(state, unit)) == steps


def test_a_unit_is_left_with_its_cock_shut_and_nothing_else_of_ours_in_it() -> None:
    state = at(that(READY, gas="shut", fire_panel="on-test"), "gauges-on")
    assert named(steps_to_leave_cold(state, PLAIN)) == ["gauges-off circuit 1", "fire-panel-back"]


def test_whoever_only_locks_a_unit_out_tells_people_and_the_panel_before_a_jumper_stops_it() -> (
    None
):
    found = WorkState(panels="off", jumpers=JUMPERS)
    assert named(steps_to_leave_off(found, replace(PLAIN, fire_panel=True))) == [
        "roof-conditions", "tell-occupants", "tell-fire-panel", "jumper-out a", "jumper-out b",
        "stop-by-controls", "lockout",
    ]  # fmt: skip


def test_a_unit_left_locked_out_is_closed_and_nothing_of_it_is_put_on() -> None:
    state = that(LOCKED, gas="shut", area_clear=False)
    assert named(steps_to_leave_off(state, PLAIN)) == ["panels-on", "tools-clear"]


def test_gauges_and_the_fire_panel_stay_while_the_work_goes_on() -> None:
    state = at(that(READY, fire_panel="on-test"), "gauges-on")
    assert steps_to(state, RUN, PLAIN) == ()


def test_a_way_of_more_than_two_hundred_steps_is_none() -> None:
    def with_capacitors(number: int) -> UnitAtWork:
        return UnitAtWork(tuple(f"capacitor {n}" for n in range(number)))

    state = that(STOPPED, panels="on")  # lock, panels, dead, meter, each of them, dead, meter
    assert len(steps_to(state, DEAD, with_capacitors(194))) == 200
    with pytest.raises(RuntimeError, match="no way to"):
        steps_to(state, DEAD, with_capacitors(195))


def test_power_put_back_on_what_was_proved_dead_costs_the_way_back_too(shipped: Knowledge) -> None:
    """Regression: with the windings read open, 480 V went back on for a reading that told more."""
    dead = replace(LOCKED, dead="proved")
    there = minutes_of(steps_to(dead, LIVE, PLAIN), shipped.tests)
    assert switch_minutes(dead, LIVE, PLAIN, shipped.tests) > there + 5
    assert switch_minutes(dead, DEAD, PLAIN, shipped.tests) == 0
    tested = replace(LOCKED, dead="tested")
    there = minutes_of(steps_to(tested, LIVE, PLAIN), shipped.tests)
    assert switch_minutes(tested, LIVE, PLAIN, shipped.tests) == there
