"""Before a light: the cock known to be open, the air swept under gas, no unburnt gas left."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tests.safety.work_state_neighbours import ready_for
from tests.safety.work_state_samples import (
    BURNING,
    GAS_SHUT,
    GAS_UNIT,
    LIGHTS,
    PLAIN_UNIT,
    RUNNING,
    SAMPLES,
    a_test,
)
from tests.safety.work_state_ways import done, way
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.guards import allowed
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.route import steps_to_leave, steps_to_leave_cold
from troubleshoot.safety.steps import Step
from troubleshoot.safety.transitions import (
    LIGHTS_BADLY,
    after_step,
    after_stop,
    after_test,
    expire,
)
from troubleshoot.safety.work_state import Gas, UnitAtWork, WorkState

COCK, SWEEP, OPEN = "gas-cock-look", "combustible-gas-sweep", "gas-cock-open"
RESTART = "restart-and-watch"
SEQUENCE = a_test("operating-sequence", area="site", work_state="running")


def test_after_others_worked_on_it_the_cock_is_looked_at_before_the_sweep_and_the_light() -> None:
    reopened = replace(expire(WorkState(), "reopened"), roof="go")
    steps = way(reopened, BURNING, GAS_UNIT)
    assert steps.index(COCK) < steps.index(SWEEP) < steps.index(RESTART)


def test_a_sweep_before_the_cock_is_known_to_be_open_is_made_again() -> None:
    swept = done(replace(expire(WorkState(), "reopened"), roof="go"), SWEEP, unit=GAS_UNIT)
    assert way(swept, BURNING, GAS_UNIT).count(SWEEP) == 1
    found_shut = after_step(swept, Step(COCK), ("shut",), GAS_UNIT)
    steps = way(found_shut, BURNING, GAS_UNIT)
    assert OPEN in steps
    last_sweep = len(steps) - 1 - steps[::-1].index(SWEEP)
    assert steps.index(OPEN) < last_sweep < steps.index(RESTART)


def test_a_cock_that_nobody_can_tell_of_leads_to_no_light_but_to_its_opening() -> None:
    unsure = replace(WorkState(gas="unsure"), roof="go")
    assert after_step(unsure, Step(COCK), ("cannot-tell",), GAS_UNIT).gas == "unsure"
    assert way(unsure, BURNING, GAS_UNIT)[0] != RESTART


def test_what_we_shut_is_looked_at_after_an_absence() -> None:
    shut = ready_for(SAMPLES.index((GAS_SHUT, None)), GAS_UNIT)
    assert COCK in way(expire(shut, "resumed"), BURNING, GAS_UNIT)
    assert COCK not in way(expire(WorkState(), "resumed"), BURNING, GAS_UNIT)


def test_after_a_light_that_failed_the_cock_is_shut_the_purge_waited_out_and_the_air_swept() -> (
    None
):
    lit = done(WorkState(), *way(WorkState(), LIGHTS, GAS_UNIT), unit=GAS_UNIT)
    failed = after_test(lit, LIGHTS, None, ("locks-out",), GAS_UNIT)
    steps = way(failed, LIGHTS, GAS_UNIT)
    order = ["stop-by-controls", "gas-cock-shut", "purge-wait", SWEEP, OPEN, SWEEP, RESTART]
    assert [step for step in steps if step in order] == order
    assert "purge-wait" in way(failed, RUNNING, GAS_UNIT)
    for leave in (steps_to_leave, steps_to_leave_cold):
        assert "purge-wait" in [step.id for step in leave(failed, GAS_UNIT)]


@pytest.mark.parametrize("outcome", ["lights-first-try", "no-trial"])
def test_a_light_that_came_or_was_never_tried_asks_for_no_wait(outcome: str) -> None:
    assert not after_test(WorkState(), LIGHTS, None, (outcome,), GAS_UNIT).unburnt


def test_what_counts_as_a_light_that_failed_is_what_the_rules_call_one(shipped: Knowledge) -> None:
    found = [f for name in LIGHTS_BADLY for t in shipped.hazards[name].triggers for f in t.findings]
    assert found
    for finding in found:
        for outcome in finding.outcomes:
            assert left(shipped, finding.test, outcome).unburnt, (finding.test, outcome)


@pytest.mark.parametrize(
    ("work_state", "shut", "waits"),
    [
        ("running", False, True),
        ("running-open", False, True),
        ("energised-open", False, True),
        ("locked-out", True, True),
        ("locked-out", False, False),
        ("any", False, False),
    ],
)
def test_unburnt_gas_goes_before_power_or_hands_at_the_burner_and_holds_up_nothing_else(
    work_state: str, shut: bool, waits: bool
) -> None:
    needed = ("gas-shut",) if shut else ()
    test = a_test("some-look", kind="look", work_state=work_state, needs_state=needed)
    gathered = replace(WorkState(), unburnt=True)
    for unit, held_up in ((GAS_UNIT, waits), (PLAIN_UNIT, False)):
        missing = allowed(gathered, test, None, unit)
        assert any("unburnt gas" in each for each in missing) is held_up


COOLED = replace(GAS_UNIT, called_to_cool=True)


def left(
    shipped: Knowledge, name: str, outcome: str, unit: UnitAtWork = GAS_UNIT, gas: Gas = "on"
) -> WorkState:
    """What a step or test of the rules leaves of a unit whose call is on."""
    return after_test(WorkState(gas=gas), shipped.tests[name], None, (outcome,), unit)


@pytest.mark.parametrize(
    ("name", "outcome"),
    [
        ("restart-and-watch", "does-not-start"),
        ("restart-and-watch", "no-steady-flame"),
        ("operating-sequence", "short-cycles"),
        ("operating-sequence", "load-dead"),
    ],
)
def test_a_call_that_may_be_for_heat_and_ends_without_a_sound_flame_leaves_gas_unburnt(
    name: str, outcome: str, shipped: Knowledge
) -> None:
    """Regression: after a start and a sequence that failed the air was swept with no wait."""
    assert left(shipped, name, outcome).unburnt
    assert left(shipped, name, outcome, gas="unsure").unburnt
    assert not left(shipped, name, outcome, gas="shut").unburnt
    assert not left(shipped, name, outcome, COOLED).unburnt
    assert not left(shipped, name, outcome, PLAIN_UNIT).unburnt


def test_a_sound_start_or_light_leaves_nothing(shipped: Knowledge) -> None:
    for name in (RESTART, *(t.id for t in shipped.tests.values() if t.leaves_unburnt)):
        for outcome in shipped.tests[name].healthy:
            assert not left(shipped, name, outcome).unburnt


def test_a_burner_test_lights_whatever_is_complained_of(shipped: Knowledge) -> None:
    assert left(shipped, "ignition-trials", "locks-out", COOLED).unburnt
    assert left(shipped, "flame-picture", "no-flame", COOLED).unburnt


def test_a_test_of_somebody_elses_rules_leaves_what_it_says_unless_the_call_is_to_cool() -> None:
    """What lights in it no list of ours knows: the file says that gas may have gathered."""
    start = a_test("our-start", area="site", work_state="running", leaves_unburnt=("dead",))
    assert after_test(WorkState(), start, None, ("dead",), GAS_UNIT).unburnt
    assert not after_test(WorkState(), start, None, ("dead",), COOLED).unburnt


def test_hands_go_in_at_a_burner_once_what_did_not_burn_has_gone() -> None:
    """Regression: the cock was shut and the air swept at once, without the wait."""
    called = WorkState(unburnt=True)
    steps = way(called, GAS_SHUT, GAS_UNIT)
    order = ["stop-by-controls", "gas-cock-shut", "purge-wait", SWEEP, "lockout"]
    assert [step for step in steps if step in order] == order
    stuck = way(replace(called, calls="stuck-on"), GAS_SHUT, GAS_UNIT)
    last_sweep = len(stuck) - 1 - stuck[::-1].index(SWEEP)
    assert stuck.index("lockout") < stuck.index("purge-wait") < last_sweep
    assert "purge-wait" not in way(called, GAS_SHUT, PLAIN_UNIT)


@pytest.mark.parametrize(
    ("hazard", "gas", "unburnt"),
    [
        ("gas-odour", "unsure", False),
        ("gas-trace", "unsure", False),
        ("delayed-light-off", "unsure", True),
        ("failed-lights", "unsure", True),
        ("live-work", "on", False),
    ],
)
def test_a_stop_that_has_the_cock_shut_leaves_it_not_known_to_be_open(
    hazard: str, gas: str, unburnt: bool, shipped: Knowledge
) -> None:
    after = after_stop(WorkState(), shipped.hazards[hazard], GAS_UNIT)
    assert (after.gas, after.unburnt) == (gas, unburnt)
    assert after_stop(WorkState(), shipped.hazards[hazard], UnitAtWork()) == WorkState()


def test_a_call_that_may_be_for_heat_is_not_made_with_the_cock_shut() -> None:
    assert needs_of(SEQUENCE, None, GAS_UNIT).gas == "on"
    assert needs_of(SEQUENCE, None, PLAIN_UNIT).gas == "any"


def test_it_is_said_which_panel_may_be_off_while_a_burner_is_lit(shipped: Knowledge) -> None:
    """Regression: the manifold was read with "the panels off", the blower's and burner's too."""
    on_the_way = ("panels-off", "panels-off-energised", "restart-and-watch")
    read_there = ("gas-manifold-pressure", "gas-inlet-pressure-all-firing", "gas-valve-shut-off")
    for test in (*on_the_way, *read_there):
        assert "over the gas valve and the controls" in " ".join(shipped.tests[test].how), test


def test_the_way_out_after_a_light_that_failed_stops_first_and_sweeps_before_any_call() -> None:
    """Regression: the cock came before the stop, and the unit was called before the sweep."""
    lit = done(WorkState(), *way(WorkState(), LIGHTS, GAS_UNIT), unit=GAS_UNIT)
    for unit in (GAS_UNIT, COOLED):
        failed = after_test(lit, LIGHTS, None, ("locks-out",), GAS_UNIT)
        for leave in (steps_to_leave, steps_to_leave_cold):
            steps = [step.id for step in leave(failed, unit)]
            first = ["stop-by-controls", "gas-cock-shut", "purge-wait", SWEEP]
            assert [step for step in steps if step in first][:4] == first
            assert RESTART not in steps or steps.index(SWEEP) < steps.index(RESTART)


@pytest.mark.parametrize("power", ["on", "locked-out"])
@pytest.mark.parametrize("calls", ["on", "off"])
def test_behind_a_cock_that_stays_shut_only_cooling_is_called(power: Any, calls: Any) -> None:
    """Regression: a unit was called for heat to be left trying to light against a shut cock."""
    state = replace(WorkState(gas="shut", roof="go"), power=power, calls=calls)
    assert RESTART not in [step.id for step in steps_to_leave_cold(state, GAS_UNIT)]
    after = done(state, *[step.id for step in steps_to_leave_cold(state, GAS_UNIT)], unit=GAS_UNIT)
    assert (after.power, after.calls, after.gas) == ("on", "off", "shut")
    cooled = [step.id for step in steps_to_leave_cold(state, COOLED)]
    assert (RESTART in cooled) is (power != "on" or calls == "off")


def test_nothing_of_ours_stays_where_the_heat_is_left_off_behind_its_shut_cock() -> None:
    unit = replace(GAS_UNIT, circuits=("circuit 1",), fire_panel=True)
    state = replace(WorkState(gas="shut", roof="go"), calls="off", fire_panel="on-test")
    left = steps_to_leave_cold(state.with_circuit("circuit 1", "gauges-on"), unit)
    assert {"gauges-off", "fire-panel-back"} <= {step.id for step in left}


def test_a_burner_that_does_not_stop_is_locked_out_behind_its_shut_cock() -> None:
    state = replace(WorkState(roof="go"), calls="stuck-on")
    steps = [step.id for step in steps_to_leave_cold(state, GAS_UNIT)]
    assert steps.index("gas-cock-shut") == 0
    state = after_step(state, Step("gas-cock-shut"), ("shut",), GAS_UNIT)
    left = [step.id for step in steps_to_leave_cold(state, GAS_UNIT)]
    assert "lockout" in left and RESTART not in left and "lock-off" not in left
    for _ in range(9):
        for step in steps_to_leave_cold(state, GAS_UNIT)[:1]:
            state = after_step(state, step, (CONFIRMED[step.id],), GAS_UNIT)
    assert (state.power, state.gas) == ("locked-out", "shut")
    assert steps_to_leave_cold(state, GAS_UNIT) == ()
