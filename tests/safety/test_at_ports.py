"""What is read at the service ports is read with every panel on, and hoses go on dead behind one.

Live parts are worked near only where that cannot be helped (29 CFR 1910.333(a)(1) and NFPA 70E
110.2, from memory), and a hose or a probe can be fastened dead. What is purged of a refrigerant
that burns must meet no contactor that is live. Eyes, hands and the fan at the coil are in danger
on either side of the panel.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.safety import work_state_account as account
from tests.safety.work_state_officer import Officer
from tests.safety.work_state_samples import AT_PORTS, GAUGES, RUNNING_OPEN
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.at_ports import GAUGES_ON, as_read_on
from troubleshoot.safety.cautions import cautions_before
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.guards import allowed
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.route import (
    steps_to,
    steps_to_leave,
    steps_to_leave_cold,
    steps_to_leave_off,
)
from troubleshoot.safety.steps import RESTART, Step
from troubleshoot.safety.transitions import after_step, after_test
from troubleshoot.safety.unit_at_work import unit_at_work
from troubleshoot.safety.work_state import UnitAtWork, WorkState
from troubleshoot.visit.state import VisitState

Leave = Callable[[WorkState, UnitAtWork], tuple[Step, ...]]

INSIDE = UnitAtWork(circuits=("circuit 1",), volts_480=True, burns_gas=True, called_to_cool=True)
OUTSIDE = UnitAtWork(
    circuits=("circuit 1",),
    volts_480=True,
    burns_gas=True,
    called_to_cool=True,
    ports_outside=True,
)
GAUGED = WorkState(roof="go", circuits=(("circuit 1", "gauges-on"),))


def test_gauges_outside_are_read_with_every_panel_on() -> None:
    found = needs_of(AT_PORTS, "circuit 1", OUTSIDE)
    assert found.energy == "running" and found.circuits == (("circuit 1", "gauges-on"),)
    assert not (found.meter or found.second_person or found.arc_clothing or found.sweeps)
    assert not allowed(GAUGED, AT_PORTS, "circuit 1", OUTSIDE)
    assert allowed(GAUGED.with_facts(panels="off"), AT_PORTS, "circuit 1", OUTSIDE)


def test_behind_a_panel_they_are_read_with_it_on_and_hoses_led_out() -> None:
    found = needs_of(AT_PORTS, "circuit 1", INSIDE)
    assert found.energy == "running" and found.circuits == (("circuit 1", "gauges-on"),)
    assert found.occupants and not found.arc_clothing
    open_live = GAUGED.with_facts(panels="off", occupants_told=True)
    assert allowed(open_live, AT_PORTS, "circuit 1", INSIDE) == ("the panels on",)


def test_a_probe_beside_a_port_behind_a_panel_goes_on_with_the_gauges() -> None:
    probe = replace(AT_PORTS, needs_state=("at-ports",))
    assert needs_of(probe, "circuit 1", INSIDE).circuits == (("circuit 1", "gauges-on"),)
    assert not needs_of(probe, "circuit 1", OUTSIDE).circuits


def test_hoses_behind_a_panel_go_on_dead_and_the_panel_back_on_before_the_power() -> None:
    """Regression: `gauges-on` came before the stop and the panel, with the call still on."""
    way = [
        step.id for step in steps_to(WorkState(), needs_of(AT_PORTS, "circuit 1", INSIDE), INSIDE)
    ]
    order = [
        "tester-proof", "stop-by-controls", "lockout", "panels-off", "verified-dead",
        "gauges-on", "panels-on", "lock-off", "restart-and-watch",
    ]  # fmt: skip
    assert [step for step in dict.fromkeys(way) if step in order] == order
    assert way[way.index("gauges-on") - 1] == "tester-proof"
    assert "panels-off-energised" not in way


@pytest.mark.parametrize("leave", [steps_to_leave, steps_to_leave_cold, steps_to_leave_off])
def test_hoses_behind_a_panel_come_off_dead(leave: Leave) -> None:
    for now in ("gauges-on", "gauges-unsure"):
        state = WorkState(roof="go", circuits=(("circuit 1", now),))  # type: ignore[arg-type]
        if leave is steps_to_leave_off:  # only whoever has locked it out closes it up
            state = state.with_facts(power="locked-out", calls="off")
        way = [step.id for step in leave(state, INSIDE)]
        assert way.index("verified-dead") < way.index("gauges-off") < way.index("panels-on")
        assert "verified-dead" not in [step.id for step in leave(state, OUTSIDE)]


@pytest.mark.parametrize("test", [RUNNING_OPEN, GAUGES])
def test_nothing_else_is_read_otherwise_for_it(test: object) -> None:
    assert as_read_on(test, OUTSIDE) is test  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("facts", "outside"),
    [({}, False), ({"service-ports": "inside"}, False), ({"service-ports": "outside"}, True)],
)
def test_where_nobody_knows_they_count_as_behind_a_panel(
    facts: dict[str, str], outside: bool, shipped: Knowledge
) -> None:
    assert unit_at_work(read_unit(shipped, facts)).ports_outside is outside


@cache
def in_any_order() -> tuple[st.SearchStrategy[Test], st.SearchStrategy[Test]]:
    """Any test of the rule base; any that is read with gauges."""
    tests = [test for test in load_shipped().tests.values() if test.kind != "step"]
    return st.sampled_from(tests), st.sampled_from([t for t in tests if GAUGES_ON in t.needs_state])


@settings(max_examples=60, deadline=None)
@given(st.data())
def test_whatever_is_read_after_what_no_hose_is_touched_behind_a_live_panel(
    data: st.DataObject,
) -> None:
    """A visit to any tests of the rule base in any order, told of step by step to an officer."""
    unit, officer = INSIDE, Officer(INSIDE)
    wanted, gauged = in_any_order()
    state, world = WorkState(), frozenset[str]()
    for turn in range(6):
        test = data.draw(gauged if turn % 2 else wanted)
        for step in steps_to(state, needs_of(test, "circuit 1", unit), unit):
            assert not officer.objection_to_step(world, step.id), (test.id, step, world)
            state = after_step(state, step, (CONFIRMED[step.id],), unit)
            world = account.after_step(world, step, (CONFIRMED[step.id],), heat=False)
        state = after_test(state, test, "circuit 1", (), unit)
        world = account.after_test(world, test, "circuit 1", heat=False)
    for step in steps_to_leave(state, unit):
        assert not officer.objection_to_step(world, step.id), (step, world)
        world = account.after_step(world, step, (CONFIRMED[step.id],), heat=False)


def test_of_every_reading_at_the_ports_only_the_caution_of_the_open_panel_goes(
    shipped: Knowledge,
) -> None:
    at_ports = [test for test in shipped.tests.values() if "at-ports" in test.needs_state]
    assert {"suction-pressure", "head-pressure", "suction-line-temperature"} <= {
        test.id for test in at_ports
    }
    for test in at_ports:
        told = {
            unit.ports_outside: {
                hazard.id for hazard in cautions_before(shipped, VisitState(at_work=unit), test)
            }
            for unit in (INSIDE, OUTSIDE)
        }
        assert told[True] >= {*test.hazards} - {"live-work"}
        assert told[True] <= told[False] and "live-work" not in told[True]
        if "gauges-on" in test.needs_state:
            assert {"refrigerant-contact", "rotating-parts"} <= told[True]


def test_the_call_for_what_is_read_at_ports_opens_no_panel_either(shipped: Knowledge) -> None:
    """Behind a panel too it is read with every panel on, the hoses led out."""
    for unit in (INSIDE, OUTSIDE):
        state = VisitState(at_work=unit, aim=("suction-pressure", Place("circuit", "1")))
        hazards = cautions_before(shipped, state, shipped.tests[RESTART])
        assert "live-work" not in {hazard.id for hazard in hazards}
