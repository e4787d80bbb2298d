"""What a mechanic has seen with his own eyes leads the list, and what comes next fits the call.

Seen from the command line: case files in, JSON out. Each reading is the fault itself, not a sign of
it (common practice, no source).
"""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import pytest

Call = Callable[..., tuple[int, str, str]]
Write = Callable[[dict[str, Any]], str]

GAS = {"heat": "gas", "fuel": "natural-gas", "ignition": "hot-surface", "circuits": "one"}
ELECTRIC = {
    "heat": "electric",
    "supply-phase": "three",
    "nameplate-volts": "480 V",
    "circuits": "one",
}
ONE_CIRCUIT = {"refrigerant": "R-410A", "metering": "txv", "circuits": "one"}

Seen = tuple[str, dict[str, str], dict[str, str], str]
SEEN: tuple[Seen, ...] = (
    ("weak-heat", GAS, {"test": "heat-exchanger-look", "outcome": "crack"},
     "heat-exchanger-cracked"),
    ("no-heat", GAS, {"test": "heat-exchanger-look", "outcome": "hole"},
     "heat-exchanger-cracked"),
    ("heat-short-cycles", GAS, {"test": "jumper-search", "outcome": "found-on-safety"},
     "jumper-left-on-safety"),
    ("no-cooling", ONE_CIRCUIT, {"test": "jumper-search", "outcome": "found-on-safety"},
     "jumper-left-on-safety"),
    ("weak-cooling", ONE_CIRCUIT, {"test": "leak-search", "outcome": "found"},
     "low-charge-from-leak"),
    ("no-heat", GAS, {"test": "hot-surface-igniter-ohms", "text": "OL"},
     "hot-surface-igniter-cracked"),
    ("no-heat", GAS, {"test": "gas-inlet-pressure-idle", "text": "18 in wc"},
     "gas-inlet-pressure-too-high"),
    ("no-heat", GAS, {"test": "gas-supply-look", "outcome": "shut"},
     "gas-shut-off-or-tank-empty"),
    ("no-cooling", ELECTRIC, {"test": "line-volts-idle", "text": "480/212/268 V"},
     "one-fuse-open-whole-unit"),
    ("weak-heat", ELECTRIC,
     {"test": "heater-fuses", "at": "heat stage 1", "outcome": "open"}, "heater-fuse-open"),
    ("weak-heat", ELECTRIC,
     {"test": "heater-elements", "at": "heat stage 2", "outcome": "open"}, "heater-element-open"),
)  # fmt: skip


def assessed(
    command: Call, write: Write, complaint: str, unit: dict[str, str], *readings: dict[str, str]
) -> dict[str, Any]:
    case = {"complaint": complaint, "unit": unit, "readings": list(readings)}
    code, out, err = command("assess", write(case), "--json")
    assert code == 0, err
    account: dict[str, Any] = json.loads(out)
    return account


@pytest.mark.parametrize(("complaint", "unit", "reading", "cause"), SEEN)
def test_what_is_the_fault_itself_leads_by_far(
    command: Call,
    case_file: Write,
    complaint: str,
    unit: dict[str, str],
    reading: dict[str, str],
    cause: str,
) -> None:
    account = assessed(command, case_file, complaint, unit, reading)
    first, second = account["causes"][:2]
    assert first["id"] == cause
    assert first["probability"] > 2.5 * second["probability"]
    assert account["unexplained"] == []


def test_a_lost_leg_leads_to_lugs_and_fuses_before_anything_else(
    command: Call, case_file: Write
) -> None:
    volts = {"test": "line-volts-idle", "text": "480/212/268 V"}
    account = assessed(command, case_file, "no-cooling", ELECTRIC, volts)
    advised = [row["test"] for row in account["would_separate"]]
    assert advised[:2] == ["breaker-and-disconnect", "fuse-continuity"]


def test_banks_without_amps_lead_to_what_is_read_locked_out(
    command: Call, case_file: Write
) -> None:
    dead = [
        {"test": "heater-bank-amps", "at": f"heat stage {stage}", "outcome": "none"}
        for stage in (1, 2)
    ]
    account = assessed(command, case_file, "no-heat", ELECTRIC, *dead)
    rows = account["would_separate"][:4]
    assert {row["test"] for row in rows} == {"heater-fuses", "heater-limits"}
    assert {row["work_state"] for row in rows} == {"locked-out"}


def test_a_board_that_is_lit_and_a_contactor_that_is_in_clear_the_supply(
    command: Call, case_file: Write
) -> None:
    account = assessed(
        command,
        case_file,
        "no-cooling",
        ELECTRIC,
        {"test": "operating-sequence", "outcome": "load-dead"},
        {"test": "board-code", "outcome": "normal"},
        {"test": "condenser-fan-turning", "outcome": "stopped"},
        {"test": "compressor-start-attempt", "outcome": "silent"},
    )
    likely = [cause["id"] for cause in account["causes"]]
    assert not {"disconnect-or-breaker-off", "two-or-three-fuses-open"} & set(likely)
