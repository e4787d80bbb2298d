"""A condenser fan stands still: the compressor is off, and what is locked out goes on."""

from __future__ import annotations

from typing import Any

import pytest

from tests.safety.stops.shipped import KNOWLEDGE, REASONER, concluded, proposed, standing
from troubleshoot.dialogue.scripted import ScriptedVisit, start_event
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.stops.standing import Forbidden
from troubleshoot.visit.cases.file import read_case

STOPPED = {"test": "condenser-fan-turning", "outcome": "stopped", "at": "condenser fan 1"}
ONE_CIRCUIT = {
    "refrigerant": "R-410A",
    "refrigerant-class": "a1",
    "heat": "gas",
    "circuits": 1,
    "condenser-fans": 1,
    "condenser-fan-phase": "single",
    "supply-phase": "three",
    "nameplate-volts": "460 V",
    "compressor-rla": "14 A",
    "capacitor-rated": {"capacitor condenser fan": "5 uF"},
}
TWO_CIRCUITS = {
    **ONE_CIRCUIT,
    "circuits": 2,
    "condenser-fans": 2,
    "fans-serve": "all",
    "capacitor-rated": {},
}
RUNS_THE_CIRCUIT = {
    "operating-sequence",
    "condenser-fan-turning",
    "condenser-fan-hum",
    "condenser-fan-amps",
    "condenser-fan-volts",
    "condenser-air-rise",
    "capacitance-while-running",
    "line-volts-running",
    "infrared-scan",
    "twin-circuit-compare",
}
LOCKED_OUT = (
    ("condenser-fan-hand-spin", Place("condenser-fan", 1)),
    ("condenser-fan-windings", Place("condenser-fan", 1)),
    ("capacitance-out-of-circuit", Place("condenser-fan-capacitor", 1)),
    ("contactor-contacts", Place("contactor", 1)),
)
SIGNS = [
    {"test": "compressor-start-attempt", "outcome": "starts"},
    {"test": "compressor-amps", "text": "13.5/13.6/13.4 A"},
    {"test": "compressor-noise", "outcome": "normal"},
    {"test": "compressor-pumping", "outcome": "pumps"},
]


@pytest.mark.parametrize(("unit", "at"), [(ONE_CIRCUIT, ""), (TWO_CIRCUITS, "compressor 1")])
@pytest.mark.parametrize("sign", SIGNS)
def test_a_compressor_seen_to_run_against_a_stopped_fan_is_off_now(
    unit: dict[str, Any], at: str, sign: dict[str, str]
) -> None:
    """Only a high head or high amps said so, and the stopped fan was called for other readings."""
    fan = STOPPED if at else {k: v for k, v in STOPPED.items() if k != "at"}
    runs = {**sign, "at": at} if at else sign
    found = concluded([fan, runs], complaint="no-cooling", unit=unit)
    assert standing(found)[0] == "compressor-against-dead-fan"
    assert proposed(found).isdisjoint(RUNS_THE_CIRCUIT)
    barred = Forbidden(found)
    assert all(barred.by(KNOWLEDGE.tests[test], at) is None for test, at in LOCKED_OUT)


def test_a_fan_that_stands_still_keeps_its_compressor_off_whatever_else_is_known() -> None:
    """The whole sequence and the start were watched next, with no word on the compressor."""
    found = concluded([STOPPED], complaint="no-cooling", unit=TWO_CIRCUITS)
    assert standing(found) == ["condenser-fan-stands-still"]
    barred = {*RUNS_THE_CIRCUIT, "compressor-amps", "compressor-start-attempt", "head-pressure"}
    assert proposed(found).isdisjoint(barred)
    coil = KNOWLEDGE.tests["contactor-coil-volts"]
    assert Forbidden(found).by(coil, Place("contactor", 1)) is None, "nothing may have started"


def test_a_fan_seen_to_turn_again_takes_the_caution_away() -> None:
    turning = {"test": "condenser-fan-turning", "outcome": "normal"}
    stopped = {**turning, "outcome": "stopped"}
    assert standing(concluded([stopped, turning], unit=ONE_CIRCUIT)) == []


@pytest.mark.parametrize("more", [[], SIGNS[:1]])
def test_a_weak_capacitor_is_found_with_the_compressor_off(more: list[dict[str, str]]) -> None:
    data = {
        "complaint": "no-cooling",
        "unit": ONE_CIRCUIT,
        "readings": [
            {"test": "condenser-fan-turning", "outcome": "stopped"},
            *more,
            {"test": "condenser-fan-hand-spin", "outcome": "free"},
            {"test": "capacitance-out-of-circuit", "at": "capacitor condenser fan", "text": "2 uF"},
            {"test": "condenser-fan-windings", "outcome": "normal"},
            {"test": "condenser-fan-hum", "outcome": "hums"},
        ],
    }
    case = read_case(KNOWLEDGE, data)
    account = ScriptedVisit(REASONER, case, start_event(case, data)).run()
    assert account["causes"][0]["id"] == "condenser-fan-capacitor-weak"
    assert "condenser-fan-hum" not in [row["test"] for row in account["asked"]]
