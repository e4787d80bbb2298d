"""A file's own word on a safety step counts in a scripted visit, its number as well as its outcome.

Regression: a number at a step was taken for the outcome that confirms it.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import pytest

UNIT = {"heat": "gas", "refrigerant": "R-410A", "duct-smoke-detector": "not-fitted"}
Row = dict[str, Any]


@pytest.fixture
def visit(
    command: Callable[..., tuple[int, str, str]], case_file: Callable[[dict[str, Any]], str]
) -> Callable[..., dict[str, Any]]:
    def play(complaint: str, *readings: Row) -> dict[str, Any]:
        case = {"unit": UNIT, "complaint": complaint, "readings": list(readings)}
        code, out, err = command("diagnose", "--answers", case_file(case), "--json")
        assert code == 0, err
        account: dict[str, Any] = json.loads(out)
        return account

    return play


INSIDE = {"test": "wiring-burn-marks", "outcome": "clean"}
BARE = {"test": "capacitor-discharge", "outcome": "discharged"}
METERED = {"test": "capacitor-discharge", "text": "2 V"}


@pytest.mark.parametrize("step", ["capacitor-discharge", "drive-discharge"])
@pytest.mark.parametrize("key", ["outcome", "text"])
def test_a_discharge_is_confirmed_by_its_number_alone(
    step: str, key: str, visit: Callable[..., dict[str, Any]]
) -> None:
    """Regression: the bare word was taken for a metered charge, though no wait shows in a file."""
    account = visit("no-cooling", {"test": step, key: "discharged"}, INSIDE)
    rows = [row for row in account["asked"] if row["test"] == step]
    assert rows and {(row["said_by"], row["valid"]) for row in rows} == {("nobody", None)}
    assert {(r["test"], r["valid"]) for r in account["unread"]} == {(step, False)}

    account = visit("no-cooling", {"test": step, "text": "2 V"}, INSIDE)
    said = [row["said_by"] for row in account["asked"] if row["test"] == step]
    assert "file" in said and not account["unread"]


def test_no_word_and_no_number_makes_a_charge_safe_that_came_back(
    command: Callable[..., tuple[int, str, str]], case_file: Callable[[dict[str, Any]], str]
) -> None:
    holds = {"test": "capacitor-discharge", "text": "160 V"}
    for last in (BARE, METERED):
        case = {"unit": UNIT, "complaint": "no-cooling", "readings": [holds, last]}
        for how in (["assess"], ["diagnose", "--answers"]):
            account = json.loads(command(*how, case_file(case), "--json")[1])
            standing = [stop["id"] for stop in account["standing_stops"]]
            assert "stored-charge" in standing, (how, last)


def test_why_a_bare_word_does_not_count_is_said(
    command: Callable[..., tuple[int, str, str]], case_file: Callable[[dict[str, Any]], str]
) -> None:
    path = case_file({"unit": UNIT, "complaint": "no-cooling", "readings": [BARE, INSIDE]})
    out = " ".join(command("diagnose", "--answers", path)[1].split())
    assert "does not count: only the number on the meter confirms it in a file" in out


@pytest.mark.parametrize(
    ("complaint", "step", "text", "confirming"),
    [
        ("no-heat", "room-carbon-monoxide", "250 ppm", "normal"),
        ("no-cooling", "verified-dead", "240 V", "dead"),
        ("no-cooling", "capacitor-discharge", "200 V", "discharged"),
        ("no-cooling", "capacitor-discharge", "-300 V", "discharged"),
        ("no-cooling", "roof-conditions", "4 ft", "safe"),
    ],
)
def test_a_number_at_a_step_is_judged(
    complaint: str, step: str, text: str, confirming: str, visit: Callable[..., dict[str, Any]]
) -> None:
    account = visit(complaint, {"test": step, "text": text}, INSIDE)
    rows = [row for row in account["asked"] if row["test"] == step]
    assert rows and confirming not in (row["outcome"] for row in rows)
    if step in ("room-carbon-monoxide", "verified-dead", "capacitor-discharge"):
        assert account["ending"] == "stopped" and account["stop"] is not None


@pytest.mark.parametrize(
    ("step", "outcome", "after"),
    [("tester-proof", "failed", "verified-dead"), ("lockout", "cannot-lock", "verified-dead")],
)
def test_what_has_failed_is_never_taken_as_done_afterwards(
    step: str, outcome: str, after: str, visit: Callable[..., dict[str, Any]]
) -> None:
    account = visit("no-cooling", {"test": step, "outcome": outcome}, INSIDE)
    asked = [row["test"] for row in account["asked"]]
    assert step in asked and after not in asked[asked.index(step) :]
    assert "wiring-burn-marks" not in asked


def test_a_step_that_the_file_calls_invalid_is_a_failed_one(
    visit: Callable[..., dict[str, Any]],
) -> None:
    row = {"test": "verified-dead", "outcome": "dead", "valid": False}
    account = visit("no-cooling", row, INSIDE)
    assert "wiring-burn-marks" not in [each["test"] for each in account["asked"]]


@pytest.mark.parametrize(
    ("row", "said_by", "outcome"),
    [
        ({"text": "20 ft"}, "nobody", "safe"),
        ({"text": "20 ft", "outcome": "safe"}, "file", "safe"),
        ({"outcome": "safe"}, "file", "safe"),
        ({"text": "9 ft", "outcome": "safe"}, "file", "edge-6-to-15-ft"),
        ({"text": "4 ft"}, "file", "edge-under-6-ft"),
    ],
)
def test_a_distance_alone_says_nothing_of_the_rest_of_the_roof(
    row: Row, said_by: str, outcome: str, visit: Callable[..., dict[str, Any]]
) -> None:
    """Regression: a number far enough confirmed all of it, and beside "safe" none counted."""
    account = visit("no-cooling", {"test": "roof-conditions", **row}, INSIDE)
    roof = next(row for row in account["asked"] if row["test"] == "roof-conditions")
    assert (roof["said_by"], roof["outcome"]) == (said_by, outcome)
    assert bool(account["unread"]) is (said_by == "nobody")
