"""What stands is said first, in the same words everywhere, and nothing it forbids is advised.

Seen from the command line: case files in, text and JSON out.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import pytest

from troubleshoot.knowledge.model import Knowledge

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
    assert any(on_circuit(shipped, row, 2) for row in rows)


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
    sound = {"test": "compressor-insulation", "outcome": "normal"}
    case = {"unit": {"circuits": 1}, "complaint": "trips-breaker-or-fuse", "readings": [tripped]}
    live = ("running", "running-open", "energised-open")

    def advised() -> list[str]:
        rows = assessed(command, case_file(case))[1]["would_separate"]
        return [shipped.tests[row["test"]].work_state for row in rows]

    assert advised() and not any(state in live for state in advised())
    case["readings"] = [tripped, sound]
    assert any(state in live for state in advised())
