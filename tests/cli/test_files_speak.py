"""What a file of answers holds is said: its dangers before anything is led to, its rest as unread.

Regression: an answer that no visit asks for by itself (not fit, not ready for live work, thunder
again) was dropped without a word, and readings beside a STOP were gone from the account.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from troubleshoot.dialogue.scripted import ScriptedVisit, start_event
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.stops.parts import is_all_clear
from troubleshoot.visit.cases.assessment import assess_case
from troubleshoot.visit.cases.file import read_case

Call = Callable[..., tuple[int, str, str]]
Write = Callable[[dict[str, Any]], str]

UNIT = {"heat": "gas", "refrigerant": "R-410A", "line-volts-class": "480-volt"}
FAN = {"test": "condenser-fan-turning", "outcome": "normal"}
VOLTS = {"test": "line-volts-idle", "text": "480/478/481 V"}


@pytest.mark.parametrize(
    ("test", "outcome", "hazard"),
    [
        ("fit-to-go-on", "not-fit", "roof-heat"),
        ("fit-for-live-work", "not-ready", None),
        ("thunder-waited-out", "thunder-again", None),
        ("call-in", "nobody", "working-alone"),
        ("verified-dead", "live", None),
        ("all-clear", "not-cleared", "danger-reported"),
        ("made-safe", "still-there", "danger-reported"),
        ("capacitor-left-alone", "still-hissing", "capacitor-may-burst"),
        ("capacitor-appearance", "bulged", "capacitor-may-burst"),
    ],
)
def test_a_danger_that_no_visit_asks_for_is_told_before_anything_is_led_to(
    test: str, outcome: str, hazard: str | None, command: Call, case_file: Write
) -> None:
    case = {
        "unit": UNIT,
        "complaint": "no-cooling",
        "readings": [FAN, VOLTS, {"test": test, "outcome": outcome}],
    }
    path = case_file(case)
    assessed = json.loads(command("assess", path, "--json")[1])
    account = json.loads(command("diagnose", "--answers", path, "--json")[1])
    stands = {row["id"] for row in assessed["cautions"] if row.get("stands")}
    assert stands and (hazard is None or hazard in stands)
    assert stands <= {row["id"] for row in account["cautions"] if row.get("stands")}
    if any(stop["scope"] != "this-step" for stop in assessed["standing_stops"]):
        assert account["ending"] == "stopped"
        assert [row["test"] for row in account["asked"]] == [test]
        assert [row["test"] for row in account["unread"]] == [FAN["test"], VOLTS["test"]]


def test_every_all_clear_that_is_not_given_calls_up_a_danger(shipped: Knowledge) -> None:
    """Regression: three of them were dropped without a word."""
    found = [f for h in shipped.hazards.values() for t in h.triggers for f in t.findings]
    called = {(f.test, outcome) for f in found for outcome in f.outcomes}
    refused = {
        (test.id, o.id)
        for test in shipped.tests.values()
        if is_all_clear(test)
        for o in test.outcomes
        if o.id not in test.healthy
    }
    assert len(refused) > 5 and refused <= called


def test_an_all_clear_that_is_not_given_shows_the_danger_it_was_asked_for(
    command: Call, case_file: Write
) -> None:
    refused = {"test": "all-clear", "outcome": "not-cleared"}
    path = case_file({"unit": UNIT, "complaint": "gas-smell", "readings": [refused]})
    for how in (["assess"], ["diagnose", "--answers"]):
        account = json.loads(command(*how, path, "--json")[1])
        assert [stop["id"] for stop in account["standing_stops"]] == ["gas-odour"]
        assert account["ending"] == "stopped"


def test_the_readings_beside_a_stop_are_listed(command: Call, case_file: Write) -> None:
    readings = [FAN, {"test": "supply-air-temperature", "text": "61 F"}]
    path = case_file({"unit": UNIT, "complaint": "gas-smell", "readings": readings})
    for how in (["assess"], ["diagnose", "--answers"]):
        out = command(*how, path)[1]
        assert "Read beside the STOP" in out
        assert "61 F" in out and "normal" in out.split("Read beside the STOP")[1]


def test_a_reading_that_no_test_asked_for_is_listed(command: Call, case_file: Write) -> None:
    case = {"unit": UNIT, "complaint": "no-heat", "readings": [{"test": "all-clear", "outcome":
            "cleared"}]}  # fmt: skip
    path = case_file(case)
    account = json.loads(command("diagnose", "--answers", path, "--json")[1])
    assert [(row["test"], row["outcome"]) for row in account["unread"]] == [
        ("all-clear", "cleared")
    ]
    assert "In the file, and never asked for" in command("diagnose", "--answers", path)[1]


def test_a_reading_taken_twice_has_both_its_rows(command: Call, case_file: Write) -> None:
    twice = [
        {"test": "combustible-gas-sweep", "outcome": "leak"},
        {"test": "combustible-gas-sweep", "outcome": "none"},
    ]
    path = case_file({"unit": UNIT, "complaint": "no-heat", "readings": twice})
    for how in (["assess"], ["diagnose", "--answers"]):
        account = json.loads(command(*how, path, "--json")[1])
        rows = [*account["asked"], *account.get("unread", ())]
        sweeps = [row["outcome"] for row in rows if row["test"] == "combustible-gas-sweep"]
        assert sweeps[:2] == ["leak", "none"]


@pytest.mark.parametrize(
    ("test", "outcomes"),
    [
        ("fuse-continuity", ["several-open"] * 3),
        ("lock-off", ["trips", "switched-on", "still-on", "switched-on", "trips"]),
    ],
)
def test_a_reading_that_stands_there_several_times_has_all_its_rows(
    test: str, outcomes: list[str], command: Call, case_file: Write
) -> None:
    """Regression: of answers alike one was kept for ever, and a step behind them was lost."""
    readings = [{"test": test, "outcome": outcome} for outcome in outcomes]
    path = case_file({"unit": UNIT, "complaint": "no-heat", "readings": readings})
    account = json.loads(command("diagnose", "--answers", path, "--json")[1])
    rows = [*account["asked"], *account["unread"]]
    told = [row for row in rows if row["test"] == test and row["said_by"] == "file"]
    assert len(told) == len(outcomes)


@settings(max_examples=25)
@given(data=st.data())
def test_each_answer_of_a_file_is_asked_or_unread_and_no_stop_is_lost(
    shipped: Knowledge, data: st.DataObject
) -> None:
    tests = sorted(t.id for t in shipped.tests.values() if t.outcomes and t.per is None)
    names = data.draw(st.lists(st.sampled_from(tests), min_size=1, max_size=5))
    readings = []
    for name in names:
        outcomes = [o.id for o in shipped.tests[name].outcomes]
        readings.append({"test": name, "outcome": data.draw(st.sampled_from(outcomes))})
    plain = {"unit": UNIT, "complaint": "no-heat", "readings": readings}
    case = read_case(shipped, plain)
    account = ScriptedVisit(Reasoner(shipped), case, start_event(case, plain)).run()
    rows: Any = [*account["asked"], *account["unread"]]  # type: ignore[misc]
    told = [row["test"] for row in rows if row["said_by"] == "file"]
    for name in set(names):
        assert told.count(name) >= names.count(name)
    stops: Any = assess_case(shipped, case)[0]["standing_stops"]
    met: Any = account["standing_stops"]
    wide = {stop["id"] for stop in stops if stop["scope"] != "this-step"}
    assert not wide or (account["ending"] == "stopped" and {s["id"] for s in met} & wide)
