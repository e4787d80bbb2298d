"""What stands is said first, in the same words everywhere, and nothing it forbids is advised.

Seen from the command line: case files in, text and JSON out.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import pytest

from tests.practice.playing import reasoner_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.cases.assessment import candidates_for
from troubleshoot.visit.cases.file import read_case

Call = Callable[..., tuple[int, str, str]]
Write = Callable[[dict[str, Any]], str]

RUNS = ("running", "running-open")
OF_A_CIRCUIT = ("circuit", "compressor", "contactor")

INLET: dict[str, Any] = {
    "unit": {"heat": "gas"},
    "complaint": "no-heat",
    "readings": [{"test": "gas-inlet-pressure-idle", "text": "16.2 inwc"}],
}
"""Over 14 in w.c. a gas valve may be forced open (from memory: the usual plate of the valve)."""

EMPTY: dict[str, Any] = {
    "unit": {
        "refrigerant": "R-410A", "metering": "txv", "circuits": 2,
        "supply-phase": "three", "compressor-phase": "three",
    },
    "conditions": {"outdoor-temperature": "90 F"},
    "complaint": "no-cooling",
    "readings": [
        {"test": "standing-pressure", "at": "circuit 1", "text": "30 psig"},
        {"test": "safety-string-walk", "at": "circuit 1", "outcome": "low-pressure-open"},
    ],
}  # fmt: skip
"""Saturation of R-410A at 90 F is about 274 psig: 30 psig is vapour alone."""


def assessed(command: Call, path: str) -> tuple[str, dict[str, Any]]:
    code, text, err = command("assess", path)
    assert code == 0, err
    return text, json.loads(command("assess", path, "--json")[1])


def lights_a_burner(knowledge: Knowledge, test: str) -> bool:
    known = knowledge.tests[test]
    return known.area in ("gas", "ignition", "combustion") and known.work_state in RUNS


def test_too_much_gas_pressure_stands_first_and_no_burner_is_lit(
    command: Call, case_file: Write, shipped: Knowledge
) -> None:
    """Regression: the inlet stood at 16.2 in w.c., and assess advised watching the ignition."""
    text, plain = assessed(command, case_file(INLET))
    hazard = shipped.hazards["gas-pressure-too-high"]
    assert text.startswith("DANGER") and hazard.what_to_do in text.splitlines()[0]
    first = plain["cautions"][0]
    assert (first["id"], first["stands"]) == (hazard.id, True)
    advised = [row["test"] for row in plain["would_separate"]]
    assert advised and not any(lights_a_burner(shipped, test) for test in advised)
    for test in shipped.tests.values():
        if lights_a_burner(shipped, test.id):
            assert test.name not in text


def on_circuit(knowledge: Knowledge, row: dict[str, Any], number: int) -> bool:
    """Whether a line of an account has something of this circuit run."""
    known = knowledge.tests[row["test"]]
    at = row["at"] or ""
    return known.per in OF_A_CIRCUIT and known.work_state in RUNS and at.endswith(str(number))


def test_an_empty_circuit_is_not_run_and_its_neighbour_may_be(
    command: Call, case_file: Write, shipped: Knowledge
) -> None:
    text, plain = assessed(command, case_file(EMPTY))
    assert text.startswith("WARNING, circuit 1") and plain["cautions"][0]["at"] == "circuit 1"
    rows = plain["would_separate"]
    assert rows and not any(on_circuit(shipped, row, 1) for row in rows)
    assert rows[0]["test"] == "leak-search"
    found = candidates_for(reasoner_of(shipped).conclude(read_case(shipped, EMPTY)))
    behind = [{"test": each.test.id, "at": str(each.at)} for each in found]
    assert not any(on_circuit(shipped, row, 1) for row in behind)
    assert any(on_circuit(shipped, row, 2) for row in behind)


@pytest.mark.parametrize("circuits", [1, 2])
def test_a_scripted_visit_asks_nothing_that_runs_an_empty_circuit(
    circuits: int, command: Call, case_file: Write, shipped: Knowledge
) -> None:
    """The file holds readings of a running circuit too; nobody could take them there."""
    running = [{"test": "head-pressure", "at": "circuit 1", "text": "300 psig"},
               {"test": "compressor-amps", "at": "compressor 1", "text": "9 A"}]  # fmt: skip
    case = {**EMPTY, "unit": {**EMPTY["unit"], "circuits": circuits}}
    case["readings"] = [*EMPTY["readings"], *running]
    plain = json.loads(command("diagnose", "--answers", case_file(case), "--json")[1])
    asked = [row["test"] for row in plain["asked"]]
    after = plain["asked"][min(asked.index(r["test"]) for r in EMPTY["readings"]
                               if r["test"] in asked) + 1 :]  # fmt: skip
    one = {row["test"] for row in after if row["at"] in (None, "circuit 1", "compressor 1")}
    assert not any(
        shipped.tests[test].per in OF_A_CIRCUIT and shipped.tests[test].work_state in RUNS
        for test in one
    )
    standing = {row["id"] for row in plain["cautions"] if row.get("stands")}
    assert standing & {"low-pressure-switch-open", "empty-circuit-stays-off"}


def test_the_report_of_a_scripted_visit_says_first_what_assess_says(
    command: Call, case_file: Write
) -> None:
    path = case_file(INLET)
    said = assessed(command, path)[0].splitlines()[0]
    report = command("diagnose", "--answers", path)[1].splitlines()
    where = next(i for i, line in enumerate(report) if said in line)
    assert not any(line.startswith("## ") for line in report[:where])


def test_a_tripped_breaker_stays_open_until_the_insulation_is_sound(
    command: Call, case_file: Write, shipped: Knowledge
) -> None:
    tripped = {"test": "breaker-and-disconnect", "outcome": "tripped"}
    motors = ("compressor-insulation", "condenser-fan-windings", "blower-motor-windings")
    sound = [{"test": test, "outcome": "normal"} for test in motors]
    case = {"unit": {"circuits": 1}, "complaint": "trips-breaker-or-fuse", "readings": [tripped]}
    live = ("running", "running-open", "energised-open")

    def advised() -> list[str]:
        rows = assessed(command, case_file(case))[1]["would_separate"]
        return [shipped.tests[row["test"]].work_state for row in rows]

    assert advised() and not any(state in live for state in advised())
    case["readings"] = [tripped, *sound]
    assert any(state in live for state in advised())


LIVE = ("running", "running-open", "energised-open")
GAS = {"heat": "gas", "fuel": "natural-gas", "heat-rise-low": "35 F", "heat-rise-high": "65 F"}
HOT_RISE = [
    {"test": "return-air-temperature", "text": "68 F"},
    {"test": "heating-supply-temperature", "text": "158 F"},
]


def advised(command: Call, path: str, shipped: Knowledge) -> list[tuple[str, str]]:
    """The tests that assess proposes, with their work state."""
    rows = assessed(command, path)[1]["would_separate"]
    return [(row["test"], shipped.tests[row["test"]].work_state) for row in rows]


@pytest.mark.parametrize(
    ("readings", "kept_off"),
    [
        ([{"test": "wiring-burn-marks", "outcome": "scorched"}], LIVE),
        ([{"test": "walk-round", "outcome": "scorch-marks"}], LIVE),
        ([{"test": "capacitor-appearance", "at": "capacitor blower", "outcome": "bulged"}], RUNS),
        ([{"test": "capacitance-out-of-circuit", "at": "capacitor blower", "outcome": "open"}],
         RUNS),
        ([{"test": "capacitance-out-of-circuit", "at": "capacitor compressor 1",
           "outcome": "shorted"}], RUNS),
    ],
)  # fmt: skip
def test_what_is_scorched_or_on_a_bad_capacitor_is_not_switched_on_to_be_read(
    readings: list[dict[str, Any]], kept_off: tuple[str, ...],
    command: Call, case_file: Write, shipped: Knowledge,
) -> None:  # fmt: skip
    """Regression: scorched wiring let live tests through, a bulged can the tests that start it."""
    case = {"unit": {"circuits": 1}, "complaint": "no-cooling", "readings": readings}
    found = advised(command, case_file(case), shipped)
    assert not [test for test, state in found if state in kept_off]


@pytest.mark.parametrize(
    ("readings", "exempt"),
    [
        (HOT_RISE, {"gas-manifold-pressure"}),
        ([{"test": "ignition-trials", "outcome": "delayed-light"}], set()),
        ([{"test": "flue-gas-analysis", "text": "240 ppm"}], set()),
        ([{"test": "flame-picture", "outcome": "moves-with-blower"}],
         {"flue-oxygen-at-blower-start", "supply-air-carbon-monoxide"}),
    ],
)  # fmt: skip
def test_a_burner_that_makes_danger_is_not_kept_running_for_more_tests(
    readings: list[dict[str, Any]], exempt: set[str],
    command: Call, case_file: Write, shipped: Knowledge,
) -> None:  # fmt: skip
    case = {"unit": GAS, "complaint": "no-heat", "readings": readings}
    found = advised(command, case_file(case), shipped)
    assert not [t for t, _ in found if lights_a_burner(shipped, t) and t not in exempt]


def test_the_breaker_of_the_heat_waits_for_its_elements_and_not_for_a_compressor(
    command: Call, case_file: Write, shipped: Knowledge
) -> None:
    tripped = {"test": "heater-fuses", "at": "heat stage 1", "outcome": "breaker-tripped"}
    case = {"unit": {"heat": "electric"}, "complaint": "no-heat", "readings": [tripped]}
    found = advised(command, case_file(case), shipped)
    assert not [t for t, state in found if shipped.tests[t].area == "electric-heat" and
                state in LIVE]  # fmt: skip
    assert "compressor-insulation" not in [t for t, _ in found]


@pytest.mark.parametrize(
    ("test", "outcome"), [("walk-round", "vent-scorched"), ("flue-outlet-and-hood", "sooted")]
)
def test_soot_at_a_vent_of_a_gas_unit_stops_the_job_with_the_cock_shut(
    test: str, outcome: str, command: Call, case_file: Write
) -> None:
    case = {"unit": GAS, "complaint": "no-heat", "readings": [{"test": test, "outcome": outcome}]}
    text = assessed(command, case_file(case))[0]
    assert "STOP" in text and "Shut the gas cock" in " ".join(text.split())


@pytest.mark.parametrize(
    ("unit", "reading", "hazard"),
    [
        ({}, {"test": "breaker-and-disconnect", "text": "22 C-diff"}, "scorched-or-hot-wiring"),
        ({}, {"test": "breaker-and-disconnect", "outcome": "warm-lug"}, "scorched-or-hot-wiring"),
        ({}, {"test": "breaker-and-disconnect", "outcome": "wrong-size"}, "wrong-fuse-or-breaker"),
        ({}, {"test": "control-fuse", "outcome": "oversized"}, "wrong-fuse-or-breaker"),
        ({"heat": "gas"}, {"test": "flame-picture", "outcome": "lazy"}, "flue-or-flame-not-right"),
        ({"heat": "gas"}, {"test": "flue-outlet-and-hood", "outcome": "blocked"},
         "flue-or-flame-not-right"),
        ({}, {"test": "leak-search", "outcome": "found"}, "leaking-joint-that-burns"),
        ({"refrigerant": "R-454B"}, {"test": "leak-search", "outcome": "found"},
         "leaking-joint-that-burns"),
        ({"circuits": 1}, {"test": "circuit-to-zero", "outcome": "not-at-zero"},
         "circuit-holds-pressure"),
        ({"circuits": 1}, {"test": "charge-recovered", "outcome": "holds-pressure"},
         "circuit-holds-pressure"),
        ({}, {"test": "heat-temperature-rise", "text": "95 F"}, "rise-over-the-plate"),
        ({}, {"test": "heat-temperature-rise", "outcome": "high"}, "rise-over-the-plate"),
        ({}, {"test": "high-pressure-switch", "text": "700 psig"}, "safety-does-not-open"),
        ({}, {"test": "ground-and-bond", "outcome": "open-ground"}, "cabinet-not-bonded"),
    ],
)  # fmt: skip
def test_what_was_read_is_said_first_as_the_danger_it_is(
    unit: dict[str, Any], reading: dict[str, Any], hazard: str, command: Call, case_file: Write
) -> None:
    """Regression: each of these was taken without a word of caution, or with another's first.

    What nobody has said of the unit, its plate or its refrigerant counts as the worse.
    """
    case = {"unit": unit, "complaint": "routine-inspection", "readings": [reading]}
    _, plain = assessed(command, case_file(case))
    assert plain["cautions"][0]["id"] == hazard and plain["cautions"][0]["stands"]


def test_after_a_blocked_flue_nobody_is_sent_to_look_at_a_flame(
    command: Call, case_file: Write, shipped: Knowledge
) -> None:
    case = {**INLET, "readings": [{"test": "flue-outlet-and-hood", "outcome": "blocked"}]}
    _, plain = assessed(command, case_file(case))
    advised = [row["test"] for row in plain["would_separate"]]
    assert not any(lights_a_burner(shipped, test) for test in advised)


@pytest.mark.parametrize("refrigerant", ["R-410A", "R-22"])
def test_a_leak_of_what_does_not_burn_is_no_danger_of_fire(
    refrigerant: str, command: Call, case_file: Write
) -> None:
    reading = {"test": "leak-search", "outcome": "found"}
    case = {"unit": {"refrigerant": refrigerant}, "complaint": "no-cooling", "readings": [reading]}
    _, plain = assessed(command, case_file(case))
    cautions = {each["id"] for each in plain["cautions"]}
    assert cautions.isdisjoint({"flammable-refrigerant-found", "leaking-joint-that-burns"})
