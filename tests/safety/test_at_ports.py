"""What is read at the service ports needs no open panel where they are outside; else it does.

Opening a running unit exposes whoever reads to live parts (29 CFR 1910.333(a)(1), from memory: live
parts are worked near only where that cannot be helped). Eyes, hands and the fan at the coil are in
danger on either side of the panel.
"""

from __future__ import annotations

import pytest

from tests.safety.work_state_samples import AT_PORTS, GAUGES, RUNNING_OPEN
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.at_ports import as_read_on
from troubleshoot.safety.cautions import cautions_before
from troubleshoot.safety.guards import allowed
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.steps import RESTART
from troubleshoot.safety.unit_at_work import unit_at_work
from troubleshoot.safety.work_state import UnitAtWork, WorkState
from troubleshoot.visit.state import VisitState

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


def test_behind_a_panel_they_need_all_that_an_open_unit_does() -> None:
    found = needs_of(AT_PORTS, "circuit 1", INSIDE)
    assert found.energy == "running-open" and found.second_person and found.arc_clothing
    assert "the panel off" in allowed(GAUGED, AT_PORTS, "circuit 1", INSIDE)


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


def test_the_call_for_what_is_read_outside_opens_no_panel_either(shipped: Knowledge) -> None:
    """The cautions of a reading come with the run that is called for it."""
    told = {}
    for unit in (INSIDE, OUTSIDE):
        state = VisitState(at_work=unit, aim=("suction-pressure", Place("circuit", "1")))
        hazards = cautions_before(shipped, state, shipped.tests[RESTART])
        told[unit.ports_outside] = {hazard.id for hazard in hazards}
    assert "live-work" in told[False] and "live-work" not in told[True]
