"""Nothing that a file says later lifts a STOP that it tells of, and both of its lines are told.

Regression: a sound line behind a bad one took the STOP away, and the bad one was told nowhere.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from troubleshoot.dialogue.scripted import ScriptedVisit, start_event
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Finding, Hazard, Test
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.declared import STEPS
from troubleshoot.visit.cases.assessment import assess_case
from troubleshoot.visit.cases.file import read_case

KNOWLEDGE = load_shipped()
REASONER = Reasoner(KNOWLEDGE)
UNIT = {"heat": "gas", "refrigerant": "R-454B", "line-volts-class": "480-volt"}
SOUND_NUMBERS = {"capacitor-discharge": "1 V", "drive-discharge": "1 V", "verified-dead": "0 V"}


def called_up() -> Iterator[Any]:
    """Each finding that calls up a STOP wider than one step."""
    for hazard in KNOWLEDGE.hazards.values():
        if hazard.stop is not None and hazard.stop.scope != "this-step":
            for trigger in hazard.triggers:
                for finding in trigger.findings:
                    for outcome in finding.outcomes:
                        name = f"{hazard.id}-{finding.test}-{outcome}"
                        yield pytest.param(hazard, finding, outcome, id=name)


def sound(test: Test) -> dict[str, Any]:
    """A line that says the test is sound, as far as a file can say it."""
    if test.id in SOUND_NUMBERS:
        return {"test": test.id, "text": SOUND_NUMBERS[test.id]}
    step = STEPS.get(test.id)
    return {"test": test.id, "outcome": step.sound if step is not None else test.healthy[0]}


def both_accounts(readings: list[dict[str, Any]]) -> tuple[dict[str, Any], dict[str, Any]]:
    """What `assess` and what `diagnose --answers` make of a file."""
    plain = {"unit": UNIT, "complaint": "no-cooling", "readings": readings}
    case = read_case(KNOWLEDGE, plain)
    return assess_case(KNOWLEDGE, case)[0], ScriptedVisit(
        REASONER, case, start_event(case, plain)
    ).run()


def halting(account: dict[str, Any]) -> set[str]:
    """The STOPs of an account that are wider than one step."""
    return {stop["id"] for stop in account["standing_stops"] if stop["scope"] != "this-step"}


@pytest.mark.parametrize(("hazard", "finding", "outcome"), [*called_up()])
def test_a_stop_stands_whatever_the_file_says_after_it(
    hazard: Hazard, finding: Finding, outcome: str
) -> None:
    bad = {"test": finding.test, "outcome": outcome}
    readings = [bad, sound(KNOWLEDGE.tests[finding.test])]
    before = halting(both_accounts([bad])[0])
    assert hazard.id in before
    for account in both_accounts(readings):
        assert before <= halting(account)
        assert account["stop"] is not None
        rows = [*account["asked"], *account.get("unread", ())]
        told = [row["outcome"] for row in rows if row["test"] == finding.test]
        assert outcome in told and {*told} - {outcome}


@pytest.mark.parametrize(
    ("test", "at", "bad", "sound"),
    [
        ("verified-dead", None, "208 V", "0 V"),
        ("capacitor-discharge", "capacitor blower", "300 V", "1 V"),
        ("combustible-gas-sweep", None, "12 % LEL", "0 % LEL"),
        ("room-carbon-monoxide", None, "120 ppm", "0 ppm"),
    ],
)
def test_both_numbers_are_told_and_the_stop_stands(
    test: str, at: str | None, bad: str, sound: str
) -> None:
    where = {} if at is None else {"at": at}
    readings = [{"test": test, "text": text, **where} for text in (bad, sound)]
    for account in both_accounts(readings):
        assert account["stop"] is not None and account["standing_stops"]
        rows = [*account["asked"], *account.get("unread", ())]
        assert {bad, sound} <= {row["text"] for row in rows if row["test"] == test}


def test_a_file_that_is_sound_first_and_bad_then_stops_as_well() -> None:
    dead, live = ({"test": "verified-dead", "text": text} for text in ("0 V", "208 V"))
    for readings in ([dead, live], [live, dead, live], [live, dead, dead]):
        for account in both_accounts(readings):
            assert "second-power-source" in [stop["id"] for stop in account["standing_stops"]]


def standing(account: dict[str, Any]) -> set[str]:
    return {stop["id"] for stop in account["standing_stops"]}


@pytest.mark.parametrize(
    ("test", "bad", "stop"),
    [
        ("lockout", "cannot-lock", "switch-cannot-be-locked"),
        ("tester-proof", "failed", "tester-failed-proof"),
        ("second-person", "alone", "working-alone"),
        ("stop-by-controls", "runs-on", "rotating-parts"),
        ("gas-cock-shut", "cannot", ""),
        ("jumper-out", "still-in", ""),
        ("restart-and-watch", "no-steady-flame", ""),
        ("lock-off", "trips", ""),
    ],
)
def test_a_stop_for_one_step_stands_too(test: str, bad: str, stop: str) -> None:
    """Regression: a sound line behind it took it away; in a visit the step done afresh does."""
    failed, well = {"test": test, "outcome": bad}, sound(KNOWLEDGE.tests[test])
    alone = standing(both_accounts([failed])[0])
    assert alone and (not stop or stop in alone)
    for readings in ([failed, well], [well, failed]):
        for account in both_accounts(readings):
            assert alone <= standing(account), readings


def test_a_proof_that_failed_last_is_not_taken_back_by_the_one_before_it() -> None:
    """Regression: the later line was replayed first, so that the meter counted as proved."""
    proved, failed = ({"test": "tester-proof", "outcome": o} for o in ("proved", "failed"))
    account = both_accounts([proved, failed])[1]
    told = [row["outcome"] for row in account["asked"] if row["test"] == "tester-proof"]
    unread = [row["outcome"] for row in account["unread"] if row["test"] == "tester-proof"]
    assert told[-1:] == ["failed"] and unread == ["proved"]


@pytest.mark.parametrize("typed", ["about 5 ppm", "~5 ppm", "roughly 5 ppm"])
def test_about_so_much_of_carbon_monoxide_counts_for_nothing(typed: str) -> None:
    """At the step it proves nothing, and the same reader of hedges sees it in a file."""
    assessed, visited = both_accounts([{"test": "room-carbon-monoxide", "text": typed}])
    (row,) = [each for each in assessed["asked"] if each["test"] == "room-carbon-monoxide"]
    assert row["valid"] is False
    assert [each["text"] for each in visited["unread"]] == [typed]
    told = [each for each in visited["asked"] if each["test"] == "room-carbon-monoxide"]
    assert all(each["valid"] is not True for each in told)
