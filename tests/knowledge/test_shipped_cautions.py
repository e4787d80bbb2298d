"""The cautions of the tests that come with the program, and the volts that make a thing dead."""

from __future__ import annotations

import pytest

from tests.building import case
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.knowledge.trying_limits import lines_here, outcomes_at
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.answers import Answer

RUNNING = ("running", "running-open")


def burner_tests(knowledge: Knowledge) -> list[Test]:
    """What is done with the burner of a gas unit lit, or about to light."""
    areas = ("gas", "ignition", "combustion")
    return [
        test
        for test in knowledge.tests.values()
        if test.area in areas and test.work_state in RUNNING and test.exists_when.get("heat")
    ]


def test_every_test_at_a_burner_cautions_of_carbon_monoxide(shipped: Knowledge) -> None:
    by_test = {
        trigger.test
        for trigger in shipped.hazards["carbon-monoxide-in-room"].triggers
        if trigger.test is not None
    }
    tests = burner_tests(shipped)
    assert len(tests) > 17
    silent = [t.id for t in tests if "carbon-monoxide-in-room" not in t.hazards]
    assert set(silent) == by_test == {"heat-temperature-rise", "heat-stages"}


def test_every_test_of_running_heat_cautions_of_hot_surfaces(shipped: Knowledge) -> None:
    heating = [
        test
        for test in shipped.tests.values()
        if test.area in ("gas", "ignition", "combustion", "electric-heat")
        and test.work_state in RUNNING
    ]
    assert [test.id for test in heating if "hot-surfaces" not in test.hazards] == []


def test_no_hands_go_into_a_unit_without_a_caution_of_their_own(shipped: Knowledge) -> None:
    inside = [test for test in shipped.tests.values() if test.work_state == "locked-out"]
    assert [test.id for test in inside if not test.hazards] == []


def test_what_is_read_cold_is_no_run_of_the_heat(shipped: Knowledge) -> None:
    cold, run = shipped.tests["heater-limits"], shipped.tests["heater-limit-opens"]
    assert (cold.work_state, run.work_state) == ("locked-out", "running")
    assert not any("run with" in how or "in a run" in how for how in cold.how)


@pytest.mark.parametrize(
    ("test", "text", "outcome"),
    [
        # Common practice, no source: under 3 V is dead, under 10 V is discharged.
        ("drive-discharge", "4 V", "discharged"),
        ("drive-discharge", "48 V", "holds-charge"),
        ("capacitor-discharge", "3 V", "discharged"),
        ("capacitor-discharge", "120 V", "holds-charge"),
    ],
)
def test_a_discharge_is_read_in_volts(
    shipped: Knowledge, test: str, text: str, outcome: str
) -> None:
    found = Reasoner(shipped).conclude(case(shipped, Answer(test, text=text)))
    assert {o for reading in found.readings for o in reading.possible} == {outcome}


@pytest.mark.parametrize(
    ("ordinary", "low_impedance", "outcome"),
    [
        # Common practice, no source; a ghost falls away in low-impedance mode.
        (2.0, 0.4, "dead"),
        (12.0, 0.2, "dead"),
        (60.0, 0.5, "ghost-volts"),
        (27.0, 26.0, "live"),
        (4.0, 3.0, "live"),
        (230.0, 1.0, "unexplained"),
    ],
)
def test_dead_is_under_three_volts_in_low_impedance_mode(
    shipped: Knowledge, ordinary: float, low_impedance: float, outcome: str
) -> None:
    lines = lines_here(shipped.tests["verified-dead"], {})
    point = {"volts-high-impedance": ordinary, "volts-low-impedance": low_impedance}
    assert list(outcomes_at(lines, point)) == [outcome]


def test_no_test_that_runs_a_unit_stands_under_a_caution_not_to_energise_it(
    shipped: Knowledge,
) -> None:
    """Regression: "Do not energise the unit" stood over the look at what a compressor starts."""
    for test in shipped.tests.values():
        if test.work_state in ("running", "running-open", "energised-open"):
            told = " ".join(shipped.hazards[name].what_to_do for name in test.hazards)
            assert "Do not energise" not in told, test.id
