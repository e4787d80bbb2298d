"""What the instruments read: known to the rule base, near the truth, the same by seed."""

from __future__ import annotations

import random

import pytest

pytest.importorskip("scipy", reason="the optional extra physics is not installed")

from tests.physics.units import FIXED, VALVE
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.physics.instruments import (
    METERS,
    cooling_values,
    heating_values,
    typed,
)
from troubleshoot.physics.knobs import AirFaults, CircuitFaults, Day, Faults
from troubleshoot.physics.plate import own_record, plate_facts
from troubleshoot.physics.sizing import Nameplate
from troubleshoot.reasoning.readings.readings import take_readings
from troubleshoot.visit.cases.file import read_case

PLATES = (FIXED, VALVE, Nameplate("R-454B", 15.0, 2, gas_input=345000.0))
COOLING_DAY, HEATING_DAY = Day(90, 76, 64, 0.2), Day(35, 70, 55)


def case(plate: Nameplate, rows: list[dict[str, str]], day: Day) -> dict[str, object]:
    conditions = {"outdoor-temperature": f"{day.outdoor} F", "minutes-running": 25}
    return {
        "unit": plate_facts(plate),
        "own-record": own_record(),
        "conditions": conditions,
        "readings": rows,
    }


@pytest.mark.parametrize("plate", PLATES, ids=["fixed", "valve", "two-circuits"])
def test_the_program_takes_every_reading_and_finds_a_sound_unit_sound(
    plate: Nameplate, shipped: Knowledge
) -> None:
    """Bands of the rules against physics; suction is judged by the air over it, where an efficient
    coil reads on its high side, so that test is left to the measurement of the rules. So is liquid
    over ambient: the rules set it aside where the subcooling is known, as it is here."""
    cooling = [typed(v) for v in cooling_values(plate, Faults(), COOLING_DAY)]
    heating = [typed(v) for v in heating_values(plate, Faults(), HEATING_DAY)]
    for rows, day in ((cooling, COOLING_DAY), (heating, HEATING_DAY)):
        readings, _ = take_readings(shipped, read_case(shipped, case(plate, rows, day)))
        assert {r.test for r in readings} >= {row["test"] for row in rows}
        wrong = {
            (r.test, r.seen)
            for r in readings
            if r.seen and not set(r.seen) & set(shipped.tests[r.test].healthy)
        }
        left = {"suction-pressure", "condenser-air-rise", "liquid-over-ambient"}
        assert {test for test, _ in wrong} <= left, wrong


def test_the_program_works_out_the_superheat_and_subcooling_that_physics_gave(
    shipped: Knowledge,
) -> None:
    """The program's own saturation tables and formulas, on what the instruments read."""
    rows = [typed(v) for v in cooling_values(VALVE, Faults(), Day())]
    _, values = take_readings(shipped, read_case(shipped, case(VALVE, rows, Day())))
    place = read_case(shipped, case(VALVE, rows, Day())).unit.layout.places("circuit")[0]
    superheat, subcooling = (values.get(name, place) for name in ("superheat", "subcooling"))
    assert superheat is not None and superheat.number == pytest.approx(12.7, abs=0.8)
    assert subcooling is not None and subcooling.number == pytest.approx(9.9, abs=0.8)


def test_errors_stay_within_the_meters_limits_and_follow_the_seed() -> None:
    faults = Faults(refrigerant=CircuitFaults(charge=0.8))
    values = list(cooling_values(VALVE, faults, COOLING_DAY))
    one, same, other = ([typed(v, random.Random(seed)) for v in values] for seed in (1, 1, 2))
    assert one == same != other
    for value, row in zip(values, one, strict=True):
        meter = METERS[value.unit]
        shown = [float(part) for part in row["text"].split(" ")[0].split("/")]
        for true, read in zip(value.numbers, shown, strict=True):
            limit = meter.share * abs(true) + meter.fixed + 0.51 * 10.0**-meter.digits
            assert abs(read - true) <= limit, value


def test_a_dead_motor_reads_nothing_at_all() -> None:
    faults = Faults(refrigerant=CircuitFaults(fan_dead=True))
    rows = [typed(v, random.Random(3)) for v in cooling_values(VALVE, faults, COOLING_DAY)]
    amps = {row["test"]: row["text"] for row in rows if row["test"].endswith("amps")}
    assert amps["condenser-fan-amps"] == "0.00 A"
    assert amps["compressor-amps"] == "0.00/0.00/0.00 A", "its high-pressure switch is open"
    assert "suction-pressure" not in {row["test"] for row in rows}


def test_a_call_for_heat_reads_the_air_as_well() -> None:
    """Drops at one filter go with the square of the flow (fan laws, ASHRAE Handbook)."""
    drops = {}
    for filter_ in (1.0, 8.0):
        faults = Faults(air=AirFaults(filter=filter_))
        values = {v.test: v.numbers[0] for v in heating_values(VALVE, faults, HEATING_DAY)}
        drops[filter_] = (values["filter-pressure-drop"], values["external-static"])
    flow_share = (drops[8.0][1] / drops[1.0][1]) ** 0.5
    assert flow_share < 1
    assert drops[8.0][0] / drops[1.0][0] == pytest.approx(8.0 * flow_share**2)
