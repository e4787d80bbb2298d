"""An account from a file says of nothing that it was done, unless the file says so."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import pytest

Call = Callable[..., tuple[int, str, str]]
Write = Callable[[dict[str, Any]], str]
UNIT = {"heat": "gas", "refrigerant": "R-410A", "duct-smoke-detector": "not-fitted"}
NOBODY = "not in the file; taken as done for this account"


def case(complaint: str, *readings: dict[str, Any]) -> dict[str, Any]:
    return {"unit": UNIT, "complaint": complaint, "readings": list(readings)}


INSIDE = {"test": "wiring-burn-marks", "outcome": "clean"}
LOCKED = {"test": "lockout", "outcome": "locked"}


def test_a_step_that_no_file_holds_is_shown_as_said_by_nobody(
    command: Call, case_file: Write
) -> None:
    """Regression: verified dead, with "counts: yes", where nobody had tested anything."""
    path = case_file(case("no-cooling", INSIDE, LOCKED))
    account = json.loads(command("diagnose", "--answers", path, "--json")[1])
    rows = {row["test"]: row for row in reversed(account["asked"])}
    assert (rows["verified-dead"]["said_by"], rows["verified-dead"]["valid"]) == ("nobody", None)
    assert (rows["lockout"]["said_by"], rows["lockout"]["valid"]) == ("file", True)
    assert (rows["wiring-burn-marks"]["said_by"]) == "file"
    assert "certifies no safety work that the file does not hold" in account["certifies"]

    out = command("diagnose", "--answers", path)[1]
    assert "certifies no safety work" in out.splitlines()[2]
    table = [line for line in out.splitlines() if "|" in line]
    lines = {line.split("|")[1].strip(): line for line in reversed(table)}
    assert lines["Test for dead at the point of work"].endswith(f"{NOBODY} |")
    assert lines["Switch off, lock, tag and try"].endswith("| yes |")
    assert out.count(NOBODY) == sum(row["said_by"] == "nobody" for row in account["asked"])


@pytest.mark.parametrize("at", [0, 1, 2])
def test_a_meter_that_failed_its_proof_counts_for_nothing_wherever_the_file_says_so(
    at: int, command: Call, case_file: Write
) -> None:
    """Regression: the visit had no need to ask for the proof, and so never heard that it failed."""
    readings = [
        {"test": "line-volts-idle", "text": "228 V"},
        {"test": "condenser-fan-turning", "outcome": "stopped"},
    ]
    readings.insert(at, {"test": "tester-proof", "outcome": "failed"})
    account = json.loads(
        command("diagnose", "--answers", case_file(case("no-cooling", *readings)), "--json")[1]
    )
    rows = {row["test"]: row for row in account["asked"]}
    assert rows["tester-proof"]["outcome"] == "failed"
    assert not rows.get("line-volts-idle", {}).get("valid")
    assert "tester-failed-proof" in [row["id"] for row in account["standing_stops"]]


def test_every_stop_that_stands_is_in_the_object_with_its_scope(
    command: Call, case_file: Write
) -> None:
    """Regression: `stop` was null for one until made safe, which the text called a STOP."""
    path = case_file(case("no-cooling", {"test": "verified-dead", "outcome": "live"}))
    for how in (["assess"], ["diagnose", "--answers"]):
        account = json.loads(command(*how, path, "--json")[1])
        assert account["stop"]["id"] == "second-power-source"
        assert account["stop"]["scope"] == "until-made-safe"
        assert account["stop"] in account["standing_stops"]
        assert "DANGER - STOP" in command(*how, path)[1]


SWEEP = {"test": "combustible-gas-sweep"}


@pytest.mark.parametrize(
    ("complaint", "readings"),
    [
        ("no-heat", [{**SWEEP, "outcome": "leak"}, {**SWEEP, "outcome": "none"}]),
        ("no-heat", [{**SWEEP, "text": "12 % LEL"}, {**SWEEP, "text": "0 % LEL"}]),
        ("gas-smell", [{"test": "all-clear", "outcome": "cleared"}]),
        ("gas-smell", [{**SWEEP, "outcome": "none"}]),
    ],
)
def test_no_file_lifts_a_stop_for_the_whole_job(
    complaint: str, readings: list[dict[str, Any]], command: Call, case_file: Write
) -> None:
    """Regression: a later sound sweep in the same file lifted what a person has to lift."""
    path = case_file(case(complaint, *readings))
    for how in (["assess"], ["diagnose", "--answers"]):
        account = json.loads(command(*how, path, "--json")[1])
        assert account["ending"] == "stopped" and account["stop"]["scope"] == "whole-job"
        assert account["would_separate"] == []
    assert "DANGER - STOP" in command("assess", path)[1]


def test_no_file_lifts_one_until_made_safe_and_says_so(command: Call, case_file: Write) -> None:
    """Regression: "dead" behind "live" took the STOP away, and nobody had said what was done."""
    live, dead = ({"test": "verified-dead", "text": volts} for volts in ("208 V", "0 V"))
    for readings in ((live, dead), (dead, live)):
        path = case_file(case("no-cooling", *readings))
        for how in (["assess"], ["diagnose", "--answers"]):
            assert json.loads(command(*how, path, "--json")[1])["stop"] is not None
            out = command(*how, path)[1]
            assert "208 V" in out and "0 V" in out
            assert "which nothing in a file lifts" in out or "lift a STOP" in out
