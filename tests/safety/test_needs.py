"""What a test needs of the work state, one fact of it at a time."""

from __future__ import annotations

from dataclasses import asdict
from typing import Any

import pytest

from tests.safety.work_state_samples import a_test
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.safety.needs import Needs, for_dead_work, needs_of
from troubleshoot.safety.unit_at_work import called_for, unit_at_work
from troubleshoot.safety.work_state import UnitAtWork

PLAIN = UnitAtWork()
WATCHED = UnitAtWork(("capacitor 1",), ("drive",), ("circuit 1", "circuit 2"), True, True, True)
SWEEP, GAS, CO = "refrigerant-sweep-a2l", "combustible-gas-sweep", "room-carbon-monoxide"
LOOK: dict[str, Any] = {"kind": "look"}


def needs(unit: UnitAtWork = PLAIN, at: str | None = None, **facts: Any) -> dict[str, Any]:
    """What a test with these facts needs, without what needs nothing."""
    found = asdict(needs_of(a_test(facts.pop("id", "some-test"), **facts), at, unit))
    nothing = asdict(Needs())
    return {name: value for name, value in found.items() if value != nothing[name]}


def test_a_look_from_afar_needs_nothing() -> None:
    assert needs(WATCHED, **LOOK) == {}
    assert not Needs().energised


@pytest.mark.parametrize(
    ("work_state", "energised", "opened"),
    [
        ("running", True, False),
        ("running-open", True, True),
        ("energised-open", True, True),
        ("locked-out", False, True),
        ("any", False, False),
    ],
)
def test_a_work_state_needs_the_roof_and_an_open_one_the_occupants(
    work_state: str, energised: bool, opened: bool
) -> None:
    wanted: dict[str, Any] = {} if work_state == "any" else {"energy": work_state, "roof": True}
    assert needs(work_state=work_state, **LOOK) == wanted | ({"occupants": True} if opened else {})
    found = needs(WATCHED, work_state=work_state, **LOOK)
    assert found.get("fire_panel", False) is opened
    assert found.get("sweeps", ()) == (() if work_state == "any" else (SWEEP,))
    assert needs_of(a_test("t", work_state=work_state), None, PLAIN).energised is energised


@pytest.mark.parametrize("state", ["capacitors-discharged", "charge-recovered"])
def test_what_is_only_had_dead_is_done_locked_out_whatever_the_file_says(state: str) -> None:
    assert needs(work_state="running", needs_state=(state,), **LOOK)["energy"] == "locked-out"


def test_hands_go_in_with_every_charge_of_the_unit_gone() -> None:
    stored = ("capacitor 1", "drive")
    assert needs(WATCHED, work_state="locked-out", **LOOK)["stored"] == stored
    assert "stored" not in needs(WATCHED, work_state="running-open", **LOOK)


@pytest.mark.parametrize(
    ("facts", "roof"),
    [
        ({"needs_state": ("meter-proved",)}, True),
        ({"id": GAS}, True),
        ({"id": SWEEP}, True),
        ({"id": "made-safe"}, True),
        ({"id": CO}, False),
        ({"hazards": ("roof-edge-under-6-ft",)}, True),
        ({"hazards": ("roof-edge-6-to-15-ft",)}, True),
        ({"hazards": ("wet-roof",)}, False),
        ({"id": "roof-conditions", "hazards": ("roof-edge-under-6-ft",)}, False),
    ],
)
def test_what_is_done_on_the_roof_needs_it_safe(facts: dict[str, Any], roof: bool) -> None:
    assert needs(**facts, **LOOK).get("roof", False) is roof


def test_the_fire_panel_is_told_for_what_may_set_it_off_though_no_detector_is_known() -> None:
    assert needs(hazards=("fire-alarm-interlock",), **LOOK) == {"fire_panel": True}


@pytest.mark.parametrize(
    ("work_state", "exposes", "volts_480", "second"),
    [
        ("energised-open", "line", True, True),
        ("running-open", "line", True, True),
        ("energised-open", "line", False, False),
        ("energised-open", "control", True, True),
        ("locked-out", "line", True, False),
        ("running", "line", True, False),
    ],
)
def test_an_open_panel_at_480_volts_wants_a_second_person_and_arc_rated_clothing(
    work_state: str, exposes: str, volts_480: bool, second: bool
) -> None:
    unit = UnitAtWork(volts_480=volts_480)
    found = needs(unit, work_state=work_state, exposes=exposes)
    assert found.get("second_person", False) is second
    assert found.get("arc_clothing", False) is second


@pytest.mark.parametrize(
    ("facts", "meter"),
    [
        ({"kind": "look", "needs_state": ("meter-proved",)}, True),
        ({"kind": "measurement", "exposes": "control"}, True),
        ({"kind": "measurement", "exposes": "line"}, True),
        ({"kind": "measurement", "exposes": "none"}, False),
        ({"kind": "look", "exposes": "line"}, False),
    ],
)
def test_a_meter_is_proved_where_it_says_what_is_live(facts: dict[str, Any], meter: bool) -> None:
    assert needs(**facts).get("meter", False) is meter


@pytest.mark.parametrize("area", ["gas", "ignition", "combustion"])
@pytest.mark.parametrize(
    ("work_state", "gas"),
    [("running", "on"), ("running-open", "on"), ("energised-open", "any"), ("locked-out", "any")],
)
def test_burners_run_on_gas(area: str, work_state: str, gas: str) -> None:
    burning, electric = UnitAtWork(burns_gas=True), UnitAtWork(burns_gas=False)
    assert needs(burning, area=area, work_state=work_state, **LOOK).get("gas", "any") == gas
    assert "gas" not in needs(burning, area="power", work_state=work_state, **LOOK)
    assert "gas" not in needs(electric, area=area, work_state=work_state, **LOOK)


@pytest.mark.parametrize("area", ["gas", "ignition", "combustion"])
def test_nothing_is_lit_unswept_and_untold_though_the_panels_are_on(area: str) -> None:
    """A mechanic: it watched the ignition trials first, and swept for gas ten minutes later."""
    gas = UnitAtWork(burns_gas=True, fire_panel=True)
    lit = needs(gas, area=area, work_state="running", **LOOK)
    assert {GAS, CO} <= set(lit["sweeps"]) and lit["occupants"] and lit["fire_panel"]
    electric = UnitAtWork(burns_gas=False)
    assert "sweeps" not in needs(electric, area=area, work_state="running", **LOOK)


@pytest.mark.parametrize("work_state", ["running-open", "energised-open"])
def test_the_air_of_a_gas_unit_is_swept_before_a_test_with_its_panel_off_and_power_on(
    work_state: str,
) -> None:
    """Whoever comes back to a panel that stands open passes no step that sweeps."""
    gas, electric = UnitAtWork(burns_gas=True), UnitAtWork(burns_gas=False)
    assert needs(gas, work_state=work_state, **LOOK)["sweeps"] == (GAS,)
    assert "sweeps" not in needs(electric, work_state=work_state, **LOOK)


@pytest.mark.parametrize(
    ("state", "tap"),
    [("manometer-at-inlet", "inlet tap"), ("manometer-at-outlet", "outlet tap")],
)
def test_a_manometer_goes_on_the_tap_on_its_side_of_the_valve(state: str, tap: str) -> None:
    assert needs(needs_state=(state,), **LOOK)["taps"] == (tap,)


def test_no_test_of_the_rules_wants_the_gas_on_without_the_power_but_joints_unlit(
    shipped: Knowledge,
) -> None:
    unit = UnitAtWork(burns_gas=True)
    on = [n for t in shipped.tests.values() if (n := needs_of(t, None, unit)).gas == "on"]
    assert on and all(each.energised or each.unlit for each in on)


def test_joints_are_looked_at_under_gas_with_nothing_called() -> None:
    found = needs(area="gas", needs_state=("gas-open",), **LOOK)
    assert found["gas"] == "on" and found["unlit"] and found["sweeps"] == (GAS,)


@pytest.mark.parametrize("volts_480", [True, False])
def test_what_is_read_in_the_rooms_leaves_no_480_volts_open(volts_480: bool) -> None:
    in_rooms = a_test("thermostat", area="building-side", kind="look")
    assert needs_of(in_rooms, None, UnitAtWork(volts_480=volts_480)).away is volts_480


def test_a_gas_train_is_opened_shut_and_swept() -> None:
    found = needs(area="gas", work_state="running", needs_state=("gas-shut",), **LOOK)
    assert found["gas"] == "shut" and found["sweeps"] == (GAS,)


@pytest.mark.parametrize("hazard", ["carbon-monoxide-in-room", "carbon-monoxide-evacuate"])
def test_near_a_flue_the_room_is_tested_first_but_not_before_that_test_itself(hazard: str) -> None:
    assert needs(hazards=(hazard,), **LOOK) == {"sweeps": (CO,)}
    assert needs(id=CO, hazards=(hazard,), **LOOK) == {}


def test_whatever_needs_a_state_of_a_flammable_unit_is_swept_for_first() -> None:
    unit = UnitAtWork(flammable=True)
    assert needs(unit, needs_state=("gauges-on",), **LOOK)["sweeps"] == (SWEEP,)
    assert needs(unit, work_state="running", **LOOK)["sweeps"] == (SWEEP,)
    assert "sweeps" not in needs(unit, **LOOK)
    assert "sweeps" not in needs(UnitAtWork(), needs_state=("gauges-on",), **LOOK)


@pytest.mark.parametrize(
    ("at", "circuits"),
    [
        ("circuit 2", ("circuit 2",)),
        ("compressor 2", ("circuit 2",)),
        ("compressor 3", ("circuit 1", "circuit 2")),
        (None, ("circuit 1", "circuit 2")),
    ],
)
@pytest.mark.parametrize("need", ["gauges-on", "charge-recovered"])
def test_a_circuit_is_made_ready_where_the_test_is(
    need: str, at: str | None, circuits: tuple[str, ...]
) -> None:
    found = needs(WATCHED, at, needs_state=(need,), **LOOK)
    assert found["circuits"] == tuple((circuit, need) for circuit in circuits)


def test_a_unit_without_circuits_by_name_is_one_and_recovered_says_more_than_gauged() -> None:
    found = needs(needs_state=("gauges-on", "charge-recovered"), **LOOK)
    assert found["circuits"] == (("unit", "charge-recovered"),)


def test_a_compressor_in_a_vacuum_is_not_run_unless_it_is_the_vacuum_that_is_tested() -> None:
    hazard = ("compressor-in-vacuum",)
    assert needs(hazards=hazard, **LOOK)["no_vacuum"]
    recovered = needs(hazards=hazard, needs_state=("charge-recovered",), **LOOK)
    assert "no_vacuum" not in recovered


def test_only_a_step_is_a_step() -> None:
    assert needs(kind="step") == {"is_step": True}


def test_hands_inside_need_all_that_dead_work_needs() -> None:
    assert for_dead_work(WATCHED) == Needs(
        energy="locked-out",
        roof=True,
        occupants=True,
        fire_panel=True,
        sweeps=(SWEEP,),
        meter=True,
        stored=("capacitor 1", "drive"),
    )
    assert for_dead_work(PLAIN) == Needs("locked-out", roof=True, occupants=True, meter=True)


@pytest.mark.parametrize(
    ("test", "heat", "read"),
    [
        ("heat-temperature-rise", "gas", True), ("heat-temperature-rise", None, True),
        ("heat-temperature-rise", "electric", False), ("heat-stages", "gas", True),
        ("heating-supply-temperature", "gas", True), ("heating-call", "gas", True),
        ("airflow-by-heat-rise", "gas", True), ("suction-pressure", "gas", False),
        ("heat-exchanger-look", "gas", False),
    ],
)  # fmt: skip
def test_the_air_of_the_rooms_is_read_before_a_burner_runs_for_a_test(
    test: str, heat: str | None, read: bool, shipped: Knowledge
) -> None:
    unit = unit_at_work(read_unit(shipped, {} if heat is None else {"heat": heat}))
    found = needs_of(shipped.tests[test], None, unit)
    assert ("room-carbon-monoxide" in found.sweeps) is read
    assert found.gas == "on" or not read


def test_a_call_for_whatever_is_complained_of_lights_a_burner_unless_it_is_to_cool(
    shipped: Knowledge,
) -> None:
    """Regression: the burner was lit by it with nobody told and no air swept."""
    watched = {"heat": "gas", "duct-smoke-detector": "fitted", "refrigerant-class": "a1"}
    sequence, trials = (shipped.tests[n] for n in ("operating-sequence", "ignition-trials"))

    def found(test: Test, call: str | None, **facts: str) -> Needs:
        called = called_for(shipped, call)
        return needs_of(test, None, unit_at_work(read_unit(shipped, watched | facts), called))

    for call in ("no-heat", "no-air", "routine-inspection", None):
        assert found(sequence, call) == found(trials, call)
        assert found(sequence, call).sweeps == (GAS, CO)
    to_cool = found(sequence, "no-cooling")
    assert not (to_cool.sweeps or to_cool.occupants or to_cool.fire_panel)
    assert not found(sequence, "no-heat", heat="electric").sweeps
    assert found(trials, "no-cooling") == found(trials, "no-heat")


def test_of_two_tests_of_one_name_each_has_its_own_needs() -> None:
    """What a test needs is kept ready by its name, and by all that it says."""
    there, inside = (a_test("look", work_state=state) for state in ("running", "locked-out"))
    assert hash(there) == hash(inside)
    for _ in range(2):
        assert needs_of(there, None, UnitAtWork()).energy == "running"
        assert needs_of(inside, None, UnitAtWork()).energy == "locked-out"
