"""A motor that is not started: grounded, shorted, or humming; and what is read of it locked out."""

from __future__ import annotations

from typing import Any

import pytest

from tests.safety.stops.shipped import (
    KNOWLEDGE,
    REASONER,
    concluded,
    in_a_visit,
    proposed,
    standing,
)
from troubleshoot.dialogue.scripted import ScriptedVisit, start_event
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.stops.standing import Forbidden
from troubleshoot.visit.cases.file import read_case
from troubleshoot.visit.deciding.left_off import left_off

UNIT: dict[str, Any] = {
    "refrigerant": "R-410A",
    "refrigerant-class": "a1",
    "heat": "gas",
    "circuits": 1,
    "condenser-fans": 1,
    "line-volts-class": "208-to-240-volt",
    "supply-phase": "three",
    "compressor-phase": "three",
    "condenser-fan-phase": "single",
    "blower-motor": "three-phase",
}
LIVE = {"running", "running-open", "energised-open"}
GROUNDED = [
    {"test": "compressor-insulation", "text": "0.004 Mohm"},
    {"test": "condenser-fan-windings", "outcome": "shorted-or-grounded"},
    {"test": "blower-motor-windings", "outcome": "grounded"},
]
HUMS = [
    {"test": "compressor-start-attempt", "outcome": "hums-and-trips"},
    {"test": "compressor-amps", "outcome": "locked-rotor"},
]
READ = [
    {"test": "contactor-contacts", "outcome": "clean"},
    {"test": "compressor-windings", "outcome": "normal"},
    {"test": "line-volts-idle", "outcome": "normal"},
]
COMPRESSOR = Place("compressor", 1)


def live(tests: set[str]) -> set[str]:
    return {test for test in tests if KNOWLEDGE.tests[test].work_state in LIVE}


@pytest.mark.parametrize("found", GROUNDED)
def test_a_path_to_ground_keeps_the_unit_off_and_is_told_first(found: dict[str, str]) -> None:
    """Its leads were put back, the unit switched on and called, and blower and heat read next."""
    case = concluded([found], complaint="no-cooling", unit=UNIT)
    assert standing(case)[0] == "winding-grounded"
    assert live(proposed(case)) == set()
    barred = Forbidden(case)
    assert all(
        barred.even_if_chosen(test, None) is not None
        for test in KNOWLEDGE.tests.values()
        if test.kind != "step" and test.work_state in LIVE
    )
    assert "winding-grounded" in [fired.hazard.id for fired in left_off(case).unit]
    orders = KNOWLEDGE.hazards["winding-grounded"].what_to_do
    assert orders.startswith("Leave the unit locked out and tagged: nobody closes")


def test_a_grounded_compressor_is_the_first_cause_on_a_call_for_no_cooling() -> None:
    case = concluded(GROUNDED[:1], complaint="no-cooling", unit=UNIT)
    first, second = case.causes[:2]
    assert first.fault.id == "compressor-winding-grounded"
    assert first.probability > 5 * second.probability


def test_a_winding_read_sound_to_ground_lets_the_unit_be_closed() -> None:
    sound = {"test": "compressor-insulation", "outcome": "normal"}
    case = in_a_visit([GROUNDED[0], sound], complaint="no-cooling", unit=UNIT)
    assert standing(case) == [] and left_off(case).unit == ()


def test_a_visit_that_finds_it_grounded_closes_and_calls_nothing() -> None:
    data = {
        "complaint": "no-cooling",
        "unit": UNIT,
        "readings": [GROUNDED[0], {"test": "compressor-amps", "text": "9 A"}],
    }
    case = read_case(KNOWLEDGE, data)
    account = ScriptedVisit(REASONER, case, start_event(case, data)).run()
    asked = [row["test"] for row in account["asked"]]
    assert "compressor-amps" not in asked


@pytest.mark.parametrize("outcome", ["shorted", "sum-wrong"])
def test_shorted_turns_are_not_called(outcome: str) -> None:
    phase = "three" if outcome == "shorted" else "single"
    unit = {**UNIT, "compressor-phase": phase, "supply-phase": phase}
    case = concluded([{"test": "compressor-windings", "outcome": outcome}], unit=unit)
    assert standing(case) == ["winding-shorted"]
    assert Forbidden(case).even_if_chosen(KNOWLEDGE.tests["compressor-amps"], COMPRESSOR)
    assert {"operating-sequence", "compressor-amps", "cooling-call"}.isdisjoint(proposed(case))


@pytest.mark.parametrize("found", HUMS)
def test_a_compressor_that_hums_is_read_locked_out_before_it_is_tried_again(
    found: dict[str, str],
) -> None:
    """The amps of each leg, the poles, the fan and the fuses were read next, on the call."""
    case = concluded([found], complaint="no-cooling", unit=UNIT)
    assert standing(case)[0] == "compressor-hums"
    offered = proposed(case)
    assert {"contactor-contacts", "fuse-continuity"} <= offered
    assert {
        "compressor-amps", "compressor-start-attempt", "contactor-pole-drop", "fuse-volts-drop",
        "condenser-fan-turning", "operating-sequence",
    }.isdisjoint(offered)  # fmt: skip
    barred = Forbidden(case)
    again = KNOWLEDGE.tests[found["test"]]
    assert barred.even_if_chosen(again, COMPRESSOR) is not None, "no more starts, asked for either"
    assert barred.even_if_chosen(KNOWLEDGE.tests["line-volts-idle"], None) is None
    assert barred.even_if_chosen(KNOWLEDGE.tests["compressor-windings"], COMPRESSOR) is None


@pytest.mark.parametrize("found", HUMS)
@pytest.mark.parametrize("left_out", [None, *range(len(READ))])
def test_one_start_is_the_proof_once_all_of_it_was_read(
    found: dict[str, str], left_out: int | None
) -> None:
    read = [each for number, each in enumerate(READ) if number != left_out]
    barred = Forbidden(concluded([found, *read], complaint="no-cooling", unit=UNIT))
    start = barred.even_if_chosen(KNOWLEDGE.tests["compressor-start-attempt"], COMPRESSOR)
    assert (start is None) == (left_out is None)


def test_a_single_phase_wants_its_own_capacitor_read_too_and_no_other() -> None:
    unit = {**UNIT, "compressor-phase": "single", "supply-phase": "single"}
    capacitor = {"test": "capacitance-out-of-circuit", "outcome": "normal"}
    own = {**capacitor, "at": "capacitor compressor"}
    fan = {**capacitor, "at": "capacitor condenser fan"}
    start = KNOWLEDGE.tests["compressor-start-attempt"]
    for more, free in (([], False), ([fan], False), ([own], True)):
        case = concluded([HUMS[0], *READ, *more], complaint="no-cooling", unit=unit)
        assert (Forbidden(case).even_if_chosen(start, COMPRESSOR) is None) == free, more


def test_of_two_circuits_only_the_one_that_hums_is_read() -> None:
    unit = {**UNIT, "circuits": 2}
    at = {"compressor-start-attempt": "compressor 1", "compressor-windings": "compressor 1",
          "contactor-contacts": "contactor 1"}  # fmt: skip
    rows = [
        {**row, "at": at[row["test"]]} if row["test"] in at else row for row in [HUMS[0], *READ]
    ]
    start = KNOWLEDGE.tests["compressor-start-attempt"]
    hums = Forbidden(concluded(rows[:1], complaint="no-cooling", unit=unit))
    assert hums.even_if_chosen(start, COMPRESSOR) is not None
    assert hums.even_if_chosen(start, Place("compressor", 2)) is None
    read = Forbidden(concluded(rows, complaint="no-cooling", unit=unit))
    assert read.even_if_chosen(start, COMPRESSOR) is None


def test_a_protector_open_inside_is_left_to_cool_locked_out() -> None:
    found = {"test": "compressor-windings", "outcome": "all-open"}
    case = concluded([found], complaint="no-cooling", unit=UNIT)
    assert "protector-open-inside" in standing(case)
    start = KNOWLEDGE.tests["compressor-start-attempt"]
    assert Forbidden(case).by(start, COMPRESSOR) is not None
    cold = {"test": "compressor-cool-down", "outcome": "recloses-cold"}
    case = concluded([found, cold], complaint="no-cooling", unit=UNIT)
    assert Forbidden(case).by(start, COMPRESSOR) is None


def test_a_welded_contactor_is_not_moved_by_hand() -> None:
    """Its caution forbade to push it, and the armature moved by hand was offered next."""
    welded = {"test": "contactor-contacts", "outcome": "welded"}
    case = concluded([welded], complaint="no-cooling", unit=UNIT)
    moved = KNOWLEDGE.tests["contactor-movement"]
    assert Forbidden(case).even_if_chosen(moved, Place("contactor", 1)) is not None
